// How long a frame and a change take, here and with page and worker throttled six times as on a phone; how long
// the page needs to be ready, and how much memory. Printed; held against no target but the page's own, as this
// machine's picture is drawn by its processor and others work on it.
import {statSync} from 'node:fs';

import {openPage, settled} from './opened_page.mjs';

const middle = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const ms = (list) => `${middle(list).toFixed(middle(list) < 10 ? 1 : 0)} ms`;

// Slows page and worker; playwright's sessions are the page's alone, so the worker is told by messages through it.
async function slow(context, page, rate) {
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', {rate});
  const told = new Promise((done) => {
    session.on('Target.receivedMessageFromTarget', ({message}) => done(JSON.parse(message)));
    session.on('Target.attachedToTarget', ({sessionId}) => session.send('Target.sendMessageToTarget', {
      sessionId,
      message: JSON.stringify({id: 1, method: 'Emulation.setCPUThrottlingRate', params: {rate}})
    }));
  });
  await session.send('Target.setAutoAttach', {autoAttach: true, waitForDebuggerOnStart: false, flatten: false});
  return !(await told).error;
}

export async function testFrames(browser, name, html, checks) {
  for (const rate of [1, 6]) {
    const {page, context} = await openPage(browser, html);
    const [shown, ready] = await page.evaluate(
        () => ['shown', 'ready'].map((name) => performance.getEntriesByName(name)[0].startTime.toFixed(0)));
    const free = await page.$eval('.hole[aria-pressed="false"]:not(.none)', (one) => one.dataset.hole);
    await page.click(`[data-hole="${free}"]`);
    await settled(page);
    const both = rate === 1 || await slow(context, page, rate);
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
      const found = {whole: [], core: [], shown: []};
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
        Page.display(answer, true);
        Page.drawNow();
        Page.view.drawing.gl.finish();
        const done = performance.now();
        found.whole.push(done - begun);
        found.core.push(answered - begun);
        found.shown.push(done - answered);
        found.parts = answer.ms;
      }
      return found;
    });
    checks.that(
        turns.length === 40 && changes !== undefined && both,
        `${name}${rate === 1 ? '' : `, ${rate} times slower`}: frame of a turn ${ms(turns)}; change of tissue ` +
            `${
                changes &&
                `${ms(changes.whole)}: core ${ms(changes.core)} (${JSON.stringify(changes.parts)}), ` +
                    `shown and drawn ${ms(changes.shown)}`} (medians)`,
        both ? '' : 'the worker could not be slowed');
    if (rate === 1) {
      const session = await context.newCDPSession(page);
      await session.send('HeapProfiler.collectGarbage');
      const heap = (await session.send('Runtime.getHeapUsage')).usedSize;
      const core = await page.workers()[0].evaluate(() => core.memory());
      const mb = (bytes) => (bytes / 1e6).toFixed(1);
      const size = statSync(html).size;
      checks.that(size < 8e6, `${name}: page ${mb(size)} MB`);
      checks.that(
          true,
          `${name}: shown after ${shown} ms, ready after ${ready} ms; memory of the core ${mb(core)} MB, ` +
              `of the page's scripts ${mb(heap)} MB`);
    }
    await context.close();
  }
}
