// Each thing that a hand can do, once, with what must follow from it.
import {clickInPicture, dragTo, holesOf} from './hands.mjs';
import {caseText, openPage, refusal, settled} from './opened_page.mjs';

const labelAt = (page, hole) => page.textContent(`[data-hole="${hole}"]`);
const trail = (page) => page.textContent('#trail');

export async function testHands(browser, html, checks) {
  const {page, context, seen, started} = await openPage(browser, html);
  checks.that(true, `ready ${started} ms after the page was asked for`);
  const entered = await caseText(page);
  const holes = await holesOf(page);
  const free = holes.filter((one) => !one.filled && one.takes).map((one) => one.hole),
        full = holes.filter((one) => one.filled).map((one) => one.hole);
  const does = async (act) => {
    await act();
    await page.waitForTimeout(100);
    await settled(page);
  };

  await does(() => page.click(`[data-hole="${free[0]}"]`));
  checks.that(await labelAt(page, free[0]) !== '', 'a click on an empty hole puts a screw in');
  checks.that(
      /gap strain|plate stress|stiffness/.test(await trail(page)), 'the trail says what it did',
      await trail(page));
  checks.that(/#s=/.test(page.url()), 'the address holds the state');
  const link = page.url().slice(page.url().indexOf('#')), changedText = await caseText(page);

  await does(() => page.keyboard.press('Control+z'));
  checks.equal(await caseText(page), entered, 'Ctrl+Z takes it back');
  await does(() => page.click('#redo'));
  checks.equal(await caseText(page), changedText, 'Redo does it again');
  await does(() => page.click('#as-entered'));
  checks.equal(await caseText(page), entered, '"As entered" is the case as entered');

  await does(() => clickInPicture(page, free[0]));
  checks.that(await labelAt(page, free[0]) !== '', 'a click in the picture puts a screw in');
  const label = await labelAt(page, full[0]);
  await does(() => dragTo(page, `[data-hole="${full[0]}"]`, `[data-hole="${free[1]}"]`));
  checks.equal(await labelAt(page, free[1]), label, 'a screw dragged to an empty hole is there, by its label');
  await does(() => page.click('#undo'));
  await does(async () => {
    const box = await page.locator('.view canvas').first().boundingBox();
    const places = await page.evaluate(() => Page.view.places);
    const at = (hole) => {
      const one = places.find((place) => place.hole === hole);
      return [box.x + one.x, box.y + one.y];
    };
    await page.mouse.move(...at(full[0]));
    await page.mouse.down();
    await page.mouse.move(...at(free[1]), {steps: 6});
    await page.mouse.up();
  });
  checks.equal(await labelAt(page, free[1]), label, 'likewise dragged in the picture');
  await does(() => page.click('#as-entered'));

  await does(async () => {
    await page.locator(`[data-hole="${full[0]}"]`).focus();
    await page.keyboard.press('Enter');
  });
  checks.equal(await labelAt(page, full[0]), '', 'Enter on a filled hole takes the screw out');
  checks.equal(
      await page.evaluate(() => document.activeElement.dataset.hole), String(full[0]),
      'the keyboard stays at its hole');
  await does(() => page.click('#undo'));

  await does(async () => {
    await page.locator(`[data-hole="${full[1]}"]`).focus();
    await page.selectOption('#screw-cortices', '1').catch(() => {});
  });
  const one = await page.getAttribute(`[data-hole="${full[1]}"]`, 'aria-label');
  checks.that(/one cortex/.test(one) || await refusal(page) !== '', 'the cortices of a screw are changed', one);
  await does(() => page.click('#as-entered'));

  const strain = () => page.textContent('[data-figure="gap_strain"] .value');
  const open = await strain();
  await does(async () => {
    await page.locator('#tissue-place').focus();
    await page.keyboard.press('End');
  });
  checks.that(
      Number(await strain()) < Number(open), 'bone in the gap strains it less', `${open} to ${await strain()}`);
  checks.that(!/^nothing/.test(await page.textContent('#tissue-says')), 'the slider says what fills the gap');
  await does(() => page.click('#as-entered'));

  const loads = await page.locator('.load').count();
  await does(async () => {
    await page.check('#with-0');
    await page.check('#with-1');
    await page.click('[data-key="combine"]');
  });
  const more = await page.locator('.load').count() - loads;
  checks.that(
      more === 1 || /held in different ways/.test(await refusal(page)),
      'two loads together are one more, or a sentence says why they cannot act at once', await refusal(page));
  if (more === 1) await does(() => page.click('#as-entered'));
  await page.click('#see-1');
  await page.waitForTimeout(200);
  await settled(page);
  checks.that(
      (await page.textContent('#picture p')).includes(await page.evaluate(() => Page.answer.loads[1].load)),
      'another load is seen');

  await does(() => page.click(`[data-hole="${free[0]}"]`));
  await page.click('#keep');
  await does(() => page.click(`[data-hole="${free[0]}"]`));
  checks.equal(await page.locator('.view').count(), 2, 'a construct stands beside the one at hand');
  const yaws = async () =>
      page.evaluate(() => [Page.view, ...Page.kept.kept.map((kept) => kept.view)].map((view) => view.camera.yaw));
  await page.locator('.view canvas').first().focus();
  await page.keyboard.press('ArrowLeft');
  const [mine, other] = await yaws();
  checks.that(mine === other && mine !== 0, 'both turn as one', `${mine}, ${other}`);
  checks.that(
      /deformed × \d/.test(await page.textContent('.view .factor')),
      'the deformation factor stands in the picture');

  const steps = await page.$$eval(
      '.step', (list) => list.map((step) => step.children[1].textContent.replace(/^\d+\. /, '')));
  await does(() => dragTo(page, '.step:nth-child(1) .grip', '.step:nth-child(3) .grip'));
  const after = await page.$$eval(
      '.step', (list) => list.map((step) => step.children[1].textContent.replace(/^\d+\. /, '')));
  checks.equal(after[2], steps[0], 'a step that is dragged stands at its new place');
  checks.none(seen, 'nothing on the console, no request');
  await context.close();

  const linked = await openPage(browser, html, {}, link);
  await settled(linked.page);
  checks.equal(await caseText(linked.page), changedText, 'a link opens its state');
  await linked.context.close();
  const nonsense = await openPage(browser, html, {}, '#s=e30');
  checks.equal(await caseText(nonsense.page), entered, 'a link that is no state opens the case as entered');
  checks.none(nonsense.seen, 'and prints nothing on the console');
  await nonsense.context.close();

  const phone = await openPage(
      browser, html, {viewport: {width: 360, height: 740}, hasTouch: true, isMobile: true, deviceScaleFactor: 2});
  await phone.page.tap(`[data-hole="${free[0]}"]`);
  await phone.page.waitForTimeout(200);
  await settled(phone.page);
  checks.that(await labelAt(phone.page, free[0]) !== '', 'a tap on a phone puts a screw in');
  const wide =
      await phone.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  checks.that(wide <= 0, 'nothing is wider than a phone of 360 px', `${wide} px too wide`);
  await phone.context.close();
}
