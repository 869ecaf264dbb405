// What a hand does, by real clicks, drags and keys, at random.
import {settled} from './opened_page.mjs';

// A linear congruential generator (D. H. Lehmer 1951; modulus 2^31 - 1, multiplier 48271): the same states in each
// run.
export function generator(seed) {
  let state = seed % 2147483647;
  return (count) => {
    state = Number((BigInt(state) * 48271n) % 2147483647n);
    return state % count;
  };
}

export const holesOf = (page) =>
    page.$$eval('.hole', (list) => list.map((hole) => ({
                                              hole: Number(hole.dataset.hole),
                                              filled: hole.getAttribute('aria-pressed') === 'true',
                                              takes: !hole.classList.contains('none')
                                            })));

const centre = async (page, selector) => {
  const box = await page.locator(selector).first().boundingBox();
  return [box.x + box.width / 2, box.y + box.height / 2];
};

export async function dragTo(page, from, to) {
  await page.locator(from).first().scrollIntoViewIfNeeded();
  const [a, b] = [await centre(page, from), await centre(page, to)];
  await page.mouse.move(...a);
  await page.mouse.down();
  await page.mouse.move((a[0] + b[0]) / 2, (a[1] + b[1]) / 2, {steps: 4});
  await page.mouse.move(...b, {steps: 4});
  await page.mouse.up();
}

// In the picture, where a hole is seen.
export async function clickInPicture(page, hole) {
  await page.locator('.view canvas').first().scrollIntoViewIfNeeded();
  const box = await page.locator('.view canvas').first().boundingBox();
  const place = await page.evaluate((wanted) => Page.view.places.find((one) => one.hole === wanted), hole);
  await page.mouse.click(box.x + place.x, box.y + place.y);
}

export async function dragInPicture(page, from, to) {
  await page.locator('.view canvas').first().scrollIntoViewIfNeeded();
  const box = await page.locator('.view canvas').first().boundingBox();
  const at = await page.evaluate(
      (holes) => holes.map((hole) => Page.view.places.find((one) => one.hole === hole)), [from, to]);
  await page.mouse.move(box.x + at[0].x, box.y + at[0].y);
  await page.mouse.down();
  await page.mouse.move(box.x + at[1].x, box.y + at[1].y, {steps: 6});
  await page.mouse.up();
}

// One change; what was done, in words.
export async function change(page, random) {
  const all = await holesOf(page);
  const filled = all.filter((one) => one.filled), free = all.filter((one) => !one.filled && one.takes);
  const pick = (list) => list[random(list.length)];
  const kind = random(9);
  if (kind === 0 && free.length > 0) {
    const {hole} = pick(free);
    await page.click(`[data-hole="${hole}"]`);
    return `click on empty hole ${hole}`;
  }
  if (kind === 1 && free.length > 0) {
    const {hole} = pick(free);
    await clickInPicture(page, hole);
    return `click in the picture on hole ${hole}`;
  }
  if (kind === 2 && filled.length > 5) {
    const {hole} = pick(filled);
    await page.click(`[data-hole="${hole}"]`);
    return `click on filled hole ${hole}`;
  }
  if (kind === 3 && free.length > 0) {
    const [a, b] = [pick(filled).hole, pick(free).hole];
    await dragTo(page, `[data-hole="${a}"]`, `[data-hole="${b}"]`);
    return `drag from hole ${a} to ${b}`;
  }
  if (kind === 4) {
    const {hole} = pick(filled);
    await page.locator(`[data-hole="${hole}"]`).focus();
    await page.keyboard.press(random(2) ? 'Shift+ArrowRight' : 'Shift+ArrowLeft');
    return `Shift and an arrow at hole ${hole}`;
  }
  if (kind === 5) {
    const slider = page.locator('#tissue-place');
    await slider.focus();
    const presses = 4 + random(20);
    for (let k = 0; k < presses; ++k) await page.keyboard.press(random(4) ? 'ArrowRight' : 'ArrowLeft');
    return 'the slider of tissue by keys';
  }
  if (kind === 6) {
    const load = random(await page.locator('.load').count());
    await page.locator(`#times-${load}`).focus();
    for (let k = 0; k < 1 + random(6); ++k) await page.keyboard.press('ArrowRight');
    return `load ${load + 1} larger by keys`;
  }
  if (kind === 7) {
    const {hole} = pick(filled);
    await page.locator(`[data-hole="${hole}"]`).focus();
    const list = random(2) ? '#screw-kind' : '#screw-cortices';
    const values = await page.$$eval(`${list} option`, (all) => all.map((one) => one.value));
    const value = pick(values);
    await page.selectOption(list, value);
    return `hole ${hole}: ${list.slice(7)} ${value}`;
  }
  const steps = await page.locator('.step').count();
  if (steps < 2) return 'nothing';
  const [from, to] = [random(steps), random(steps)];
  await page.locator('#steps').scrollIntoViewIfNeeded();
  await dragTo(page, `.step:nth-child(${from + 1}) .grip`, `.step:nth-child(${to + 1}) .grip`);
  return `step ${from + 1} dragged to ${to + 1}`;
}

export async function changed(page, random) {
  const said = await change(page, random);
  await settled(page);
  return said;
}
