// How long a frame and a change take, here and slowed six times as on a phone; how long the page needs to be
// ready, and how much memory. Printed; held against no target but the page's size, as this machine's picture is
// drawn by its processor and others work on it. Chromium slows the page alone, not its worker (measured each time
// by a known piece of work): what the core takes on a phone is reckoned, and said to be.
import {statSync} from 'node:fs';

import {openPage, settled} from './opened_page.mjs';

const middle = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const ms = (list) => `${middle(list).toFixed(middle(list) < 10 ? 1 : 0)} ms`;

// How long a known piece of work takes, ms; in a page or a worker.
const known = () => {
  const begun = performance.now();
  let sum = 0;
  for (let k = 0; k < 3e7; ++k) sum += Math.sqrt(k);
  return sum > 0 ? performance.now() - begun : NaN;
};

export async function testFrames(browser, name, html, checks, rates = [1, 6]) {
  for (const rate of rates) {
    const {page, context} = await openPage(browser, html);
    const [shown, ready] = await page.evaluate(
        () => ['shown', 'ready'].map((name) => performance.getEntriesByName(name)[0].startTime.toFixed(0)));
    const free = await page.$eval('.hole[aria-pressed="false"]:not(.none)', (one) => one.dataset.hole);
    await page.click(`[data-hole="${free}"]`);
    await settled(page);
    const session = await context.newCDPSession(page), worker = page.workers()[0];
    const before = [await page.evaluate(known), await worker.evaluate(known)];
    await session.send('Emulation.setCPUThrottlingRate', {rate});
    const slower = [await page.evaluate(known), await worker.evaluate(known)].map((time, k) => time / before[k]);
    const ofCore = rate / Math.min(Math.max(slower[1], 1), rate);  // what the browser left out
    const turns = await page.evaluate(async () => {
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
    // A change as a slider makes it: asked, answered, shown and drawn.
    const changes = await page.evaluate(async () => {
      const found = {core: [], shown: []};
      for (let k = 0; k < 8; ++k) {
        const begun = performance.now();
        const answer = await Page.core.ask({
          ...History.present,
          edit: {do: 'fill_gap', modulus_mpa: 1 + k},
          detail: 'quick',
          fields: Page.wanted()
        });
        if (answer.error) return undefined;
        const answered = performance.now();
        Page.previewing = true;
        Page.display(answer, true);
        Page.drawNow();
        Page.view.drawing.gl.finish();
        const done = performance.now();
        found.core.push(answered - begun);
        found.shown.push(done - answered);
        found.parts = answer.ms;
      }
      return found;
    });
    checks.that(turns.length === 40 && changes !== undefined, `${name}: turned and changed`);
    if (rate > 1)
      checks.that(
          slower[0] > 1.5, `page slowed ${slower[0].toFixed(1)} times, worker ${slower[1].toFixed(1)} times`);
    const core = middle(changes.core) * (rate > 1 ? ofCore : 1), drawn = middle(changes.shown);
    console.log(
        `   ${name}${rate > 1 ? `, ${rate} times slower` : ''}: frame of a turn ${
            ms(turns)}; a change of tissue ` +
        `${(core + drawn).toFixed(0)} ms: core ${core.toFixed(0)} ms${
            rate > 1 && ofCore > 1.5 ? ' (reckoned)' : ''}, shown and ` +
        `drawn ${drawn.toFixed(0)} ms (medians); of the core ${JSON.stringify(changes.parts)}`);
    if (rate === 1) {
      await session.send('HeapProfiler.collectGarbage');
      const heap = (await session.send('Runtime.getHeapUsage')).usedSize;
      const memory = await worker.evaluate(() => core.memory());
      const mb = (bytes) => (bytes / 1e6).toFixed(1);
      const size = statSync(html).size;
      checks.that(size < 8e6, `${name}: page ${mb(size)} MB`);
      console.log(
          `   ${name}: shown after ${shown} ms, ready after ${ready} ms; memory of the core ${mb(memory)} MB, ` +
          `of the page's scripts ${mb(heap)} MB`);
    }
    await context.close();
  }
}
