// A page in a real browser, watched: what it prints, asks of the net and what its policy forbids is a fault.
import {installed} from './modules.mjs';

const {chromium} = installed('playwright-core');

export const launch = () => chromium.launch({
  executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
  args: ['--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
});

export async function openPage(browser, file, options = {}, hash = '') {
  const {ready = true, ...more} = options;
  const context = await browser.newContext({viewport: {width: 1400, height: 1000}, ...more});
  const page = await context.newPage();
  const seen = [];
  page.on('console', (line) => {
    if (['error', 'warning'].includes(line.type())) seen.push(`console ${line.type()}: ${line.text()}`);
  });
  page.on('pageerror', (fault) => seen.push(`fault: ${fault.stack || fault.message}`));
  page.on('request', (request) => {
    if (!/^(file|blob|data):/.test(request.url())) seen.push(`request: ${request.url()}`);
  });
  await page.goto('file://' + file + hash);
  if (ready) await page.waitForSelector('html[data-ready]', {timeout: 120000});
  return {page, context, seen};
}

// Until all that was asked for is done, judged and drawn. What a hand does is noted by the page within the event
// itself, so that nobody has to wait for it to begin.
export async function settled(page) {
  await page.waitForFunction(() => Page.isIdle(), undefined, {timeout: 180000});
}

export const caseText = (page) => page.textContent('#case-text');

export const refusal = (page) => page.textContent('#refused');
