// A case whose names would be markup or script if anything took them for it.
import {readFileSync} from 'node:fs';
import {join} from 'node:path';

import {openPage, settled} from './opened_page.mjs';

const markup = `</script><script>document.title='x'</script><img src=x onerror="document.title='x'">'`;

export async function testHostile(browser, pageOf, source, checks) {
  const quoted = JSON.stringify(markup);
  const text = readFileSync(join(source, 'cases/examples/comminuted_radius.toml'), 'utf8')
                   .replace(/^name = "Comminuted.*$/m, `name = ${quoted}`)
                   .replace(/^name = "axial 130 N"/m, `name = ${quoted}`);
  const {page, context, seen} = await openPage(browser, pageOf('hostile', text + '\n[mesh]\nrefinement = 0.5\n'));
  checks.equal(await page.textContent('#name'), markup, 'a hostile name is shown as it is');
  checks.that((await page.textContent('#loads')).includes(markup), 'and that of a load');
  const free = await page.$eval('.hole[aria-pressed="false"]:not(.none)', (one) => one.dataset.hole);
  await page.click(`[data-hole="${free}"]`);
  await page.waitForTimeout(200);
  await settled(page);
  checks.equal(await page.title(), markup, 'the title is the name and no script changed it');
  checks.equal(await page.locator('img[src="x"]').count(), 0, 'no element was made of it');
  checks.none(seen, 'nothing on the console, no request');
  await context.close();
}
