// How long a frame and a change take, here and throttled six times as on a phone. Printed; held against no target,
// as this machine's picture is drawn by its processor.
import {openPage, settled} from './opened_page.mjs';

const middle = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

export async function testFrames(browser, name, html, checks) {
  for (const throttle of [1, 6]) {
    const {page, context} = await openPage(browser, html);
    const free = await page.$eval('.hole[aria-pressed="false"]:not(.none)', (one) => one.dataset.hole);
    await page.click(`[data-hole="${free}"]`);
    await page.waitForTimeout(200);
    await settled(page);
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', {rate: throttle});
    const frames = await page.evaluate(async () => {
      const times = [];
      for (let k = 0; k < 40; ++k) {
        Page.camera.turn(0.05, 0.01);
        const begun = performance.now();
        Page.drawNow();
        Page.view.drawing.gl.finish();
        times.push(performance.now() - begun);
        await new Promise((done) => requestAnimationFrame(done));
      }
      return times;
    });
    const solves = await page.evaluate(async () => {
      const times = [];
      for (let k = 0; k < 6; ++k) {
        const begun = performance.now();
        const answer = await Page.core.ask({
          ...History.present,
          edit: {do: 'fill_gap', modulus_mpa: 1 + k},
          detail: 'quick',
          fields: Page.wanted()
        });
        if (answer.error) return undefined;
        times.push(performance.now() - begun);
      }
      return times;
    });
    checks.that(
        frames.length === 40 && solves !== undefined,
        `${name}, processor ${throttle} times slower: frame ${middle(frames).toFixed(1)} ms (median), ` +
            `change of tissue with its field ${solves && middle(solves).toFixed(0)} ms`);
    await context.close();
  }
}
