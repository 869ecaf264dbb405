// All that a hand can do, done by keys alone; the keyboard never loses its place.
import {holesOf} from './hands.mjs';
import {caseText, openPage, settled} from './opened_page.mjs';

export async function testKeyboard(browser, html, checks) {
  const {page, context, seen} = await openPage(browser, html);
  const does = async (...keys) => {
    for (const key of keys) await page.keyboard.press(key);
    await settled(page);
  };
  const place = () => page.evaluate(() => document.activeElement.dataset.key ?? document.activeElement.id);
  const lost = [];
  const keeps = async (what) => {
    if (await page.evaluate(() => document.activeElement === document.body)) lost.push(what);
  };
  // Tab from the top of the page until the place is reached: what no Tab reaches, no keyboard does.
  const tabTo = async (selector) => {
    await page.evaluate(() => document.activeElement.blur());
    await page.evaluate(() => getSelection().removeAllRanges());
    for (let k = 0; k < 150; ++k) {
      await page.keyboard.press('Tab');
      if (await page.evaluate((wanted) => document.activeElement.matches(wanted), selector)) return true;
    }
    return false;
  };
  const at = (hole) => page.getAttribute(`[data-hole="${hole}"]`, 'aria-pressed');
  const holes = await holesOf(page);
  const full = holes.filter((one) => one.filled).map((one) => one.hole);

  checks.that(await tabTo('.hole'), 'Tab reaches the holes');
  const ring = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle);
  checks.that(ring !== 'none', 'and a ring shows where the keyboard is', ring);
  await does('Enter');
  checks.equal(await at(full[0]), 'false', 'Enter takes the screw out');
  checks.equal(await place(), `hole${full[0]}`, 'the keyboard stays at its hole');
  await does('Space');
  checks.equal(await at(full[0]), 'true', 'Space puts one in');
  const [last] = full.slice(-1);
  await does('End', ...(holes.at(-1).hole === last ? [] : ['ArrowLeft']));
  const from = (await place()).replace('hole', '');
  await does('Shift+ArrowLeft');
  const to = (await place()).replace('hole', '');
  checks.that(
      to !== from && await at(to) === 'true' && await at(from) === 'false', 'Shift with an arrow moves a screw',
      `${from} to ${to}`);

  checks.that(await tabTo('[data-key="out"]'), 'Tab reaches what may be done with the hole');
  await does('Enter');
  await keeps('after "Take out"');
  checks.that(await tabTo('#details button[data-key^="put-"]'), 'and what may be put into it');
  await does('Enter');
  await keeps('after "Put in"');
  checks.that(await tabTo('#screw-cortices'), 'and the cortices of a screw');
  const others = await page.$$eval('#screw-cortices option', (list) => list.map((one) => one.value));
  const held = await page.inputValue('#screw-cortices');
  await does(others.indexOf(held) > 0 ? 'ArrowUp' : 'ArrowDown');
  if (others.length > 1)
    checks.that(await page.inputValue('#screw-cortices') !== held, 'a list is chosen from by keys');
  await keeps('after a choice of cortices');

  checks.that(await tabTo('.view canvas'), 'Tab reaches the picture');
  const camera = () => page.evaluate(() => JSON.stringify(Page.camera));
  const looks = [await camera()];
  for (const key of ['ArrowLeft', 'ArrowUp', '+', '-', 'Shift+ArrowRight', 'Home']) {
    await does(key);
    looks.push(await camera());
  }
  checks.that(
      looks.slice(1, -1).every((one, k) => one !== looks[k]) && looks.at(-1) === looks[0],
      'keys turn it, bring it nearer, move it and set it back', looks.join('; '));

  checks.that(await tabTo('#keep'), 'Tab reaches "Keep beside"');
  await does('Enter');
  checks.equal(await page.locator('.view').count(), 2, 'which keeps the construct');
  checks.that(await tabTo('[data-key^="drop-"]'), 'and what puts it away');
  await does('Enter');
  checks.equal(await page.locator('.view').count(), 1, 'which does');

  const order = () =>
      page.$$eval('.step', (list) => list.map((one) => one.children[1].textContent.replace(/^\d+\. /, '')));
  const before = await order();
  checks.that(await tabTo('.step [data-key^="down-"]'), 'Tab reaches the order of steps');
  await does('Enter');
  checks.equal((await order())[1], before[0], 'a step comes later');
  checks.that((await place()).startsWith('down-'), 'and the keyboard stays with it', await place());
  checks.that(await tabTo('[data-key^="see-"][aria-pressed]'), 'Tab reaches what shows a step');
  await does('Enter');
  await keeps('after "Show"');

  checks.that(await tabTo('#tissue-place'), 'Tab reaches what fills the gap');
  await does('ArrowRight', 'ArrowRight');
  checks.equal(await page.inputValue('#tissue-place'), '2', 'the slider is moved by keys');
  checks.equal(await place(), 'tissue', 'and the keyboard stays with it');
  checks.that(await tabTo('#times-0'), 'Tab reaches how large a load is');
  await does('ArrowRight');
  checks.equal(await place(), 'times-0', 'and stays there');
  checks.that(await tabTo('[name="seen"]'), 'Tab reaches which load is seen');
  await does('ArrowDown');
  checks.equal(await page.evaluate(() => Page.seenLoad), 1, 'an arrow shows another');
  const text = await caseText(page);
  checks.that(await tabTo('#undo'), 'Tab reaches Undo');
  await does('Enter');
  checks.that(await caseText(page) !== text, 'which takes back');
  await does('Control+y');
  checks.equal(await caseText(page), text, 'and Ctrl+Y does it again');
  checks.none(lost, 'the keyboard never loses its place');
  checks.none(seen, 'nothing on the console, no request');
  await context.close();
}
