// Prepared variants: other bodies, chosen from a list, kept in the link and taken back.
import {caseText, openPage, settled} from './opened_page.mjs';

export async function testVariants(browser, html, checks) {
  const {page, context, seen} = await openPage(browser, html);
  const names = await page.$$eval('#variant option', (list) => list.map((one) => one.textContent));
  checks.that(
      names.length === 2 && names.every((one) => one.trim() !== ''), 'a list has the prepared variants',
      names.join('; '));
  const entered = await caseText(page);
  const free = await page.$eval('.hole[aria-pressed="false"]:not(.none)', (one) => one.dataset.hole);
  await page.click(`[data-hole="${free}"]`);
  await settled(page);
  const stiffness = () => page.textContent('[data-figure="axial_stiffness"] .value');
  const before = await stiffness();
  await page.selectOption('#variant', '1');
  await settled(page);
  checks.that(
      await stiffness() !== before, 'another variant has other figures', `${before}, ${await stiffness()}`);
  checks.that(
      /standoff = ['"]2 mm/.test(await caseText(page)), 'its case is that variant',
      (await caseText(page)).slice(0, 400));
  checks.equal(
      await page.getAttribute(`[data-hole="${free}"]`, 'aria-pressed'), 'true', 'with the change that was made');
  const text = await caseText(page), link = page.url().slice(page.url().indexOf('#'));
  await page.click('#undo');
  await page.click('#undo');
  await settled(page);
  checks.equal(await caseText(page), entered, 'both are taken back');
  checks.equal(await page.inputValue('#variant'), '0', 'and the list says so');
  checks.none(seen, 'nothing on the console, no request');
  await context.close();
  const linked = await openPage(browser, html, {}, link);
  await settled(linked.page);
  checks.equal(await caseText(linked.page), text, 'a link opens the variant');
  await linked.context.close();
}
