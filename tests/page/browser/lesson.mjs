// A lesson: from scene to scene by keys, each in its own state; a choice is judged, and the answer opens.
import {openPage, settled} from './opened_page.mjs';

// Rows of the scene's table: what a figure is now, and in this scene.
const figures = (page) => page.$$eval(
    '#lesson tbody tr', (rows) => rows.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent)));

export async function testLesson(browser, html, scenes, checks) {
  const {page, context, seen} = await openPage(browser, html);
  await settled(page);
  for (let scene = 1; scene <= scenes; ++scene) {
    checks.equal(await page.textContent('#lesson-progress'), `Scene ${scene} of ${scenes}`, `scene ${scene} is told`);
    const rows = await figures(page);
    checks.that(
        rows.length > 0 && rows.every(([now, own]) => now === own), `scene ${scene} is in the state that it tells of`,
        JSON.stringify(rows));
    if (scene === scenes) break;
    await page.focus('[data-key="lesson-next"]');
    await page.keyboard.press('Enter');
    checks.equal(
        await page.evaluate(() => document.activeElement.id), 'lesson-heading', 'the keyboard is at the next scene');
    await settled(page);
  }
  const hole = '.hole[aria-pressed="false"]:not(.none)';
  await page.click(hole);
  await settled(page);
  checks.that((await figures(page)).some(([now, own]) => now !== own), 'what is changed is told beside the scene');
  await page.click('[data-key="lesson-back"]');
  await settled(page);
  checks.that((await figures(page)).every(([now, own]) => now === own), 'and a button goes back to the scene');
  checks.that(await page.isHidden('.scene-answer'), 'the answer is closed');
  await page.click('[data-key="lesson-reveal"]');
  checks.that(await page.isVisible('.scene-answer'), 'until it is asked for');
  checks.none(seen, 'nothing on the console, no request');
  await context.close();
}
