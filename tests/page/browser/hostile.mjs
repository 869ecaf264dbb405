// A case whose names would be markup or script if anything took them for it: its own, its file's, a load's, a
// note's.
import {readFileSync} from 'node:fs';
import {join} from 'node:path';

import {openPage, settled} from './opened_page.mjs';

const markup = `</script><script>document.title='x'</script><img src=x onerror="document.title='x'">'`;
const fileName = `<img src=x onerror="document.title='x'">&lt;`;

export async function testHostile(browser, pageOf, source, checks) {
  const quoted = JSON.stringify(markup);
  const text = readFileSync(join(source, 'cases/examples/comminuted_radius.toml'), 'utf8')
                   .replace(/^name = "Comminuted.*$/m, `name = ${quoted}`)
                   .replace(/^name = "axial 130 N"/m, `name = ${quoted}`);
  checks.equal(text.split(quoted).length, 3, 'the case has hostile names');
  const html = pageOf(fileName, text + '\n[mesh]\nrefinement = 0.5\n');
  const {page, context, seen} = await openPage(browser, html);
  checks.equal(await page.textContent('#name'), markup, 'a hostile name is shown as it is');
  checks.that((await page.textContent('#loads')).includes(markup), 'and that of a load');
  checks.that(
      (await page.textContent('#origin')).includes(fileName), 'and that of the file',
      await page.textContent('#origin'));
  const free = await page.$eval('.hole[aria-pressed="false"]:not(.none)', (one) => one.dataset.hole);
  await page.click('#keep');
  await page.click(`[data-hole="${free}"]`);
  await settled(page);
  await page.click('.step [aria-pressed]');
  await settled(page);
  checks.that((await page.textContent('#margins')).includes(markup), 'and in what is said of a changed state');
  checks.that((await page.textContent('#case-text')).includes(quoted), 'and in its case');
  checks.equal(await page.title(), markup, 'the title is the name and no script changed it');
  checks.equal(await page.locator('[onerror], #live img, #still script').count(), 0, 'no element was made of it');
  checks.none(seen, 'nothing on the console, no request');
  await context.close();
}
