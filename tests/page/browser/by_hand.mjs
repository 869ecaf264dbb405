// Each thing that a hand can do, once, with what must follow from it.
import {clickInPicture, dragInPicture, dragTo, holesOf} from './hands.mjs';
import {caseText, openPage, refusal, settled} from './opened_page.mjs';

const labelAt = (page, hole) => page.textContent(`[data-hole="${hole}"]`);
const trail = (page) => page.textContent('#trail');
const freeHoles = async (page) =>
    (await holesOf(page)).filter((one) => !one.filled && one.takes).map((one) => one.hole);
const fullHoles = async (page) => (await holesOf(page)).filter((one) => one.filled).map((one) => one.hole);
const stepTexts = (page) =>
    page.$$eval('.step', (list) => list.map((step) => step.children[1].textContent.replace(/^\d+\. /, '')));

export async function testHands(browser, html, checks) {
  const {page, context, seen} = await openPage(browser, html);
  const entered = await caseText(page);
  const free = await freeHoles(page), full = await fullHoles(page);
  const does = async (act) => {
    await act();
    await settled(page);
  };

  await does(() => page.click(`[data-hole="${free[0]}"]`));
  checks.that(await labelAt(page, free[0]) !== '', 'a click on an empty hole puts a screw in');
  checks.that(
      /gap strain [+−0-9]/.test(await trail(page)) && /plate stress/.test(await trail(page)),
      'the trail says what it did', await trail(page));
  checks.that(/#s=/.test(page.url()), 'the address holds the state');
  const link = page.url().slice(page.url().indexOf('#')), changedText = await caseText(page);

  await does(() => page.keyboard.press('Control+z'));
  checks.equal(await caseText(page), entered, 'Ctrl+Z takes it back');
  await does(() => page.click('#redo'));
  checks.equal(await caseText(page), changedText, 'Redo does it again');
  await does(() => page.click('#as-entered'));
  checks.equal(await caseText(page), entered, '"As entered" is the case as entered');
  await does(async () => {
    await page.click('#undo');
    await page.click('#undo');
  });
  checks.equal(await caseText(page), entered, 'two steps back at once are two steps back');

  await does(() => clickInPicture(page, free[0]));
  checks.that(await labelAt(page, free[0]) !== '', 'a click in the picture puts a screw in');
  const label = await labelAt(page, full[0]);
  await does(() => dragTo(page, `[data-hole="${full[0]}"]`, `[data-hole="${free[1]}"]`));
  checks.equal(await labelAt(page, free[1]), label, 'a screw dragged to an empty hole is there, by its label');
  checks.that(
      (await trail(page)).startsWith(`${label} from hole ${full[0]} to hole ${free[1]}: `),
      'the trail says from where to where', await trail(page));
  await does(() => page.click('#undo'));
  await does(() => dragInPicture(page, full[0], free[1]));
  checks.equal(await labelAt(page, free[1]), label, 'likewise dragged in the picture');
  await does(() => page.click('#as-entered'));

  await does(() => page.evaluate(([one, other]) => {  // within one moment, before the core can have answered
    document.querySelector(`[data-hole="${one}"]`).click();
    document.querySelector(`[data-hole="${other}"]`).click();
  }, free));
  checks.that(
      await labelAt(page, free[0]) !== '' && await labelAt(page, free[1]) !== '',
      'of two clicks while the core works both are done');
  await does(() => page.evaluate((hole) => {
    document.querySelector(`[data-hole="${hole}"]`).click();
    document.querySelector('#see-1').click();
  }, free[0]));
  checks.equal(await labelAt(page, free[0]), '', 'nor does another load take a click away');
  checks.that(
      (await page.textContent('.view .factor')).startsWith(await page.evaluate(() => Page.answer.loads[1].load)),
      'which is then seen');
  await does(() => page.click('#see-0'));
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
  await does(() => page.click('[data-key="keep-loads"]'));
  checks.equal(await page.locator('.load').count(), 2, 'only the chosen loads are kept');
  await does(() => page.click('[data-key="all-loads"]'));
  checks.equal(await page.locator('.load').count(), loads, 'and all are back');

  const steps = await stepTexts(page);
  await does(() => dragTo(page, '.step:nth-child(1) .grip', '.step:nth-child(3) .grip'));
  checks.equal((await stepTexts(page))[2], steps[0], 'a step that is dragged stands at its new place');
  await does(() => page.click('.step:nth-child(2) [aria-pressed]'));
  checks.that(
      (await page.textContent('.view .factor')).startsWith('after step 2'), 'the construct after a step is seen');
  await does(() => page.click(`[data-hole="${full[0]}"]`));
  checks.equal(await refusal(page), '', 'and a screw can be taken out meanwhile');
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
}

// Sliders: tissue and loads, by keys and by a hand that comes back to where it began.
export async function testSliders(browser, html, checks) {
  const {page, context, seen} = await openPage(browser, html);
  const entered = await caseText(page);
  const does = async (act) => {
    await act();
    await settled(page);
  };
  const strain = async () => Number(await page.textContent('[data-figure="gap_strain"] .value'));
  const open = await strain();
  await does(async () => {
    await page.locator('#tissue-place').focus();
    await page.keyboard.press('End');
  });
  checks.that(await strain() < open, 'bone in the gap strains it less', `${open} to ${await strain()}`);
  checks.that(!/^nothing/.test(await page.textContent('#tissue-says')), 'the slider says what fills the gap');
  await does(() => page.click('#as-entered'));

  await page.locator('#tissue-place').scrollIntoViewIfNeeded();
  const box = await page.locator('#tissue-place').boundingBox();
  const at = (share) => [box.x + 9 + share * (box.width - 18), box.y + box.height / 2];
  await page.mouse.move(...at(0));
  await page.mouse.down();
  await page.mouse.move(...at(0.5), {steps: 5});
  await page.waitForFunction(
      (before) =>
          Number(document.querySelector('[data-figure="gap_strain"] .value').textContent) !== before || Page.stale,
      open);
  checks.that(true, 'what a slider would do is shown while it is held');
  await page.mouse.move(...at(0), {steps: 3});
  await does(() => page.mouse.up());
  checks.equal(
      await caseText(page), entered, 'let go where it began, it has changed nothing, and the verdict is there');

  await does(async () => {
    await page.locator('#times-0').focus();
    for (let k = 0; k < 4; ++k) await page.keyboard.press('ArrowRight');
  });
  checks.equal(await page.inputValue('#times-0'), '1.2', 'the slider of a load keeps its place');
  checks.that(/factor = 1.2\b/.test(await caseText(page)), 'and the case has its factor');
  checks.that(
      /, 1\.2 times as large as entered/.test(await page.textContent('#work')), 'what is under that load says so');
  await does(() => page.keyboard.press('End'));
  checks.equal(
      await page.textContent('#margins tbody tr:first-child td'), 'fails', 'a part that fails says so in a word');
  await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
  const band = await page.locator('#band').boundingBox();
  checks.that(
      band.y >= 0 && band.y < 5 && /FAILS/.test(await page.textContent('#state')),
      'and so does the band, on top at the end of the page', JSON.stringify(band));
  checks.none(seen, 'nothing on the console, no request');
  await context.close();
}

// Constructs side by side, their pictures, and what is taken along.
export async function testBeside(browser, html, checks) {
  const {page, context, seen} = await openPage(browser, html, {acceptDownloads: true});
  const free = await freeHoles(page), full = await fullHoles(page);
  const does = async (act) => {
    await act();
    await settled(page);
  };
  await does(() => page.click('#keep'));
  await does(() => page.click(`[data-hole="${full[2]}"]`));
  const keptText = await caseText(page);
  await does(() => page.click('#keep'));
  await does(() => page.click(`[data-hole="${free[0]}"]`));
  checks.equal(await page.locator('.view').count(), 3, 'two constructs stand beside the one at hand');
  const views = () => page.evaluate(
      () => [Page.view, ...Page.kept.kept.map((one) => one.view)].map(
          (view) => ({yaw: view.camera.yaw, stress: Math.max(...view.field.stress), load: view.field.load})));
  await page.locator('.view canvas').first().focus();
  await page.keyboard.press('ArrowLeft');
  const turned = await views();
  checks.that(
      turned.every((one) => one.yaw === turned[0].yaw) && turned[0].yaw !== 0, 'all turn as one',
      JSON.stringify(turned));
  checks.that(
      new Set(turned.map((one) => one.stress)).size === 3 && await page.locator('#scale svg').count() === 1,
      'three fields have one scale of colours', JSON.stringify(turned));
  await does(() => page.click('#see-1'));
  checks.that((await views()).every((one) => one.load === 1), 'all are seen under the same load');
  const heads = await page.$$eval('.view .factor', (list) => list.map((one) => one.textContent));
  checks.that(
      heads.every((text) => /deformed ×\s\d/.test(text)) && new Set(heads).size === 1,
      'how much they are deformed stands in each picture', heads.join('; '));
  await page.selectOption('#factor', '20');
  await settled(page);
  checks.that(/deformed ×\s20$/.test(await page.textContent('.view .factor')), 'and follows what is chosen');
  checks.that(/\(now [+−]/.test(await page.textContent('#kept')), 'a table has by how much they differ');

  const yaw = () => page.evaluate(() => Page.camera.yaw);
  const before = await yaw();
  await page.locator('.view canvas').first().scrollIntoViewIfNeeded();
  const box = await page.locator('.view canvas').first().boundingBox();
  await page.mouse.move(box.x + 20, box.y + box.height - 20);
  await page.mouse.down();
  await page.mouse.move(box.x + 120, box.y + box.height - 20, {steps: 4});
  await page.mouse.up();
  checks.that(await yaw() !== before, 'a drag beside the plate turns the picture');

  await does(() => page.click('[data-key="recall-Kept 2"]'));
  checks.equal(await caseText(page), keptText, 'what was kept is at hand again');
  await does(() => page.click('[data-key="drop-Kept 1"]'));
  checks.equal(await page.locator('.view').count(), 2, 'and is put away');

  const [download] = await Promise.all([page.waitForEvent('download'), page.click('[data-key="save-case"]')]);
  const chunks = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk);
  checks.equal(
      Buffer.concat(chunks).toString('utf8'), await caseText(page),
      'the case that is saved is the case of the state');
  await page.click('[data-key="copy-case"]');
  await page.waitForFunction(() => /cop/.test(document.querySelector('#case [role=status]').textContent));
  checks.that(true, 'and copied, or a sentence says what to do', await page.textContent('#case [role=status]'));
  checks.none(seen, 'nothing on the console, no request');
  await context.close();
}

// What cannot be is refused in a sentence, and the state stands as it was, with its verdict; and rules newly
// broken.
export async function testRefused(browser, html, checks) {
  const {page, context, seen} = await openPage(browser, html);
  const distal = (await fullHoles(page)).slice(-3);
  for (const hole of distal.slice(0, 2)) {
    await page.click(`[data-hole="${hole}"]`);
    await settled(page);
  }
  checks.that(
      (await page.textContent('#rules')).includes('broken'), 'rules that are broken are said',
      await page.textContent('#rules h2'));
  const before = await caseText(page);
  await page.click('#undo');
  await page.click('#undo');
  await page.click('#redo');
  await page.click('#redo');
  await settled(page);
  await page.evaluate(
      (holes) => {  // the second while the first is under way: refused, and the first keeps its verdict
        document.querySelector('[data-key="tissue-cartilage"]').click();
        document.querySelector(`[data-hole="${holes[2]}"]`).click();
      },
      distal);
  await settled(page);
  const said = await refusal(page);
  checks.that(
      /^Not done: No screw holds the distal fragment/.test(said),
      'taking out the last screw of a fragment is refused', said);
  checks.that(
      await caseText(page) !== before && /HOLDS|FAILS|NOT TO BE TRUSTED/.test(await page.textContent('#state')),
      'what was done before it stands, judged', await page.textContent('#state'));
  checks.that(await labelAt(page, distal[2]) !== '', 'and the screw is there');
  await page.click('#as-entered');
  await settled(page);
  checks.equal(await refusal(page), '', 'the sentence goes with the next change');
  await page.click(`[data-hole="${distal[0]}"]`);
  await settled(page);
  checks.that(
      /now breaks the rules? "/.test(await trail(page)) &&
          (await page.textContent('#rules')).includes('broken by the last change'),
      'a rule that is broken anew is named, above and among the rules', await trail(page));
  checks.none(seen, 'nothing on the console, no request');
  await context.close();
}

// A phone: taps, and a screen that nothing is too wide for.
export async function testPhone(browser, html, checks) {
  const {page, context, seen} = await openPage(
      browser, html, {viewport: {width: 360, height: 740}, hasTouch: true, isMobile: true, deviceScaleFactor: 2});
  const [hole] = await freeHoles(page);
  await page.tap(`[data-hole="${hole}"]`);
  await settled(page);
  checks.that(await labelAt(page, hole) !== '', 'a tap on a phone puts a screw in');
  await page.tap('#keep');
  await settled(page);
  await page.evaluate(() => document.querySelectorAll('details').forEach((one) => {
    one.open = true;
  }));
  const wide = await page.evaluate(
      () => [...document.querySelectorAll('#live *')]
                .filter((one) => one.getBoundingClientRect().right > innerWidth + 1)
                .filter((one) => !one.closest('pre, .views, svg'))
                .map((one) => one.outerHTML.slice(0, 80)));
  checks.none(wide, 'nothing is wider than a phone of 360 px');
  const words = await page.$$eval(
      '.chart svg, #scale svg',
      (list) => list.map((svg) => svg.querySelector('text').getBoundingClientRect().height));
  checks.that(
      words.length >= 3 && words.every((height) => height >= 11), 'words in charts can be read', words.join(', '));
  await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
  const brief = await page.locator('#brief').boundingBox();
  checks.that(
      brief.y >= 0 && brief.y < 5 && brief.height < 60 &&
          /Not a medical device/.test(await page.textContent('#brief')),
      'state and caution stay on top in few lines', JSON.stringify(brief));
  checks.none(seen, 'nothing on the console, no request');
  await context.close();
}
