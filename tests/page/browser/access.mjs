// An audit by axe-core, light and dark, on a phone and a desk; and the page with scripts off.
import {readFileSync} from 'node:fs';

import {installed} from './modules.mjs';
import {openPage, settled} from './opened_page.mjs';

const axe = readFileSync(installed.resolve('axe-core/axe.min.js'), 'utf8');

export async function testAccess(browser, html, checks) {
  const audit = async (page, where) => {
    await page.evaluate(axe);
    const {violations, passes} = await page.evaluate(() => globalThis.axe.run(document));
    checks.that(passes.length > 15, `axe-core looked (${passes.length} rules passed), ${where}`);
    checks.none(
        violations.map((one) => `${one.id} (${one.nodes.length}): ${one.nodes[0].html.slice(0, 100)}`),
        `axe-core finds nothing, ${where}`);
  };
  for (const colorScheme of ['light', 'dark'])
    for (const width of [360, 1400]) {
      const {page, context} =
          await openPage(browser, html, {colorScheme, viewport: {width, height: 1000}, bypassCSP: true});
      await page.evaluate(() => document.querySelectorAll('details').forEach((one) => {
        one.open = true;
      }));
      await audit(page, `as entered, ${colorScheme}, ${width} px`);
      // A state that has more to show: one kept beside, a load that breaks it, a step that is seen.
      await page.click('#keep');
      await page.locator('#times-0').focus();
      await page.keyboard.press('End');
      await page.click('.step [aria-pressed]');
      await settled(page);
      await audit(page, `changed and failing, ${colorScheme}, ${width} px`);
      checks.equal(
          await page.evaluate(() => document.getAnimations().length), 0,
          'nothing moves by itself, with or without a wish for rest');
      if (width === 1400) {
        await page.evaluate(() => {
          document.getElementById('live').hidden = true;
          document.getElementById('still').hidden = false;
        });
        await audit(page, `the still part, ${colorScheme}`);
      }
      await context.close();
    }
  const still = await openPage(browser, html, {javaScriptEnabled: false, ready: false});
  checks.that(await still.page.isVisible('#still'), 'with scripts off the still part is seen');
  checks.that(!(await still.page.isVisible('#live')), 'and the live one is not');
  checks.that(await still.page.locator('#still table').count() >= 3, 'with margins, rules and figures as tables');
  const pictures = await still.page.$$eval(
      '#still img', (list) => list.map((one) => one.complete && one.naturalWidth > 0 && one.alt !== ''));
  checks.that(
      pictures.length > 0 && pictures.every(Boolean), 'and pictures with words for them',
      JSON.stringify(pictures));
  await still.context.close();
}
