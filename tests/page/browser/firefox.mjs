// The page in Firefox, driven by WebDriver BiDi: opened, a hole clicked, the same figures as analyse gives.
import {installed} from './modules.mjs';
import {differences} from './shown.mjs';

export async function testFirefox(html, analysed, checks) {
  const {default: puppeteer} = await import(installed.resolve('puppeteer-core'));
  const browser = await puppeteer.launch({
    browser: 'firefox',
    executablePath: process.env.FIREFOX || '/usr/bin/firefox-esr',
    headless: false,  // without a display it draws no WebGL: xvfb-run gives it one
    extraPrefsFirefox: {'webgl.force-enabled': true}
  });
  try {
    const page = await browser.newPage();
    const seen = [];
    page.on('console', (line) => {
      if (['error', 'warn'].includes(line.type())) seen.push(`console ${line.type()}: ${line.text()}`);
    });
    page.on('pageerror', (fault) => seen.push(`fault: ${fault.message}`));
    page.on('request', (request) => {
      if (!/^(file|blob|data):/.test(request.url())) seen.push(`request: ${request.url()}`);
    });
    await page.setViewport({width: 1400, height: 1000});
    const idle = () => page.waitForFunction(() => Page.isIdle(), {timeout: 180000});
    await page.goto('file://' + html);
    await page.waitForSelector('html[data-ready]', {timeout: 120000});
    checks.that(await page.$('.view canvas') !== null, `Firefox draws the construct (${await browser.version()})`);
    const drawn = await page.evaluate(() => {
      Page.drawNow();
      const gl = Page.view.drawing.gl, pixels = new Uint8Array(4 * gl.drawingBufferWidth * gl.drawingBufferHeight);
      gl.readPixels(0, 0, gl.drawingBufferWidth, gl.drawingBufferHeight, gl.RGBA, gl.UNSIGNED_BYTE, pixels);
      return new Set(new Uint32Array(pixels.buffer)).size;
    });
    checks.that(drawn > 100, 'in its colours', `${drawn} colours`);
    const free = await page.$eval('.hole[aria-pressed="false"]:not(.none)', (one) => one.dataset.hole);
    await page.click(`[data-hole="${free}"]`);
    await idle();
    checks.that(
        await page.$eval(`[data-hole="${free}"]`, (one) => one.textContent) !== '', 'a click puts a screw in');
    const {found, count} =
        await differences(page, analysed(await page.$eval('#case-text', (one) => one.textContent)));
    checks.that(
        found.length === 0, `Firefox: ${count} figures as analyse gives them`, found.slice(0, 4).join('; '));
    await page.keyboard.down('Control');
    await page.keyboard.press('z');
    await page.keyboard.up('Control');
    await idle();
    checks.equal(await page.$eval(`[data-hole="${free}"]`, (one) => one.textContent), '', 'Ctrl+Z takes it back');
    checks.none(seen, 'Firefox: nothing on the console, no request');
  } finally {
    await browser.close();
  }
}
