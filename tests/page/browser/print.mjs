// Print to PDF: A4, as many pages as there should be, none of them empty, the plan and the case on pages of their
// own, and everything that was folded away on the screen.
import {execFileSync} from 'node:child_process';
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';

import {openPage} from './opened_page.mjs';

export async function testPrint(browser, html, folder, checks) {
  for (const colorScheme of ['light', 'dark']) {
    const {page, context, seen} = await openPage(browser, html, {colorScheme});
    const file = join(folder, `${colorScheme}.pdf`);
    writeFileSync(file, await page.pdf({preferCSSPageSize: true, printBackground: true}));
    const told = execFileSync('pdfinfo', [file], {encoding: 'utf8'});
    const count = Number(told.match(/^Pages:\s+(\d+)/m)[1]);
    checks.that(count >= 6 && count <= 16, `printed on ${count} pages (${colorScheme})`);
    checks.that(/Page size:\s+59\d\S* x 84\d\S* pts/.test(told), 'of A4', told);
    const pages =
        execFileSync('pdftotext', ['-layout', file, '-'], {encoding: 'utf8'}).split('\f').slice(0, count);
    checks.none(
        pages.flatMap((text, k) => text.trim().length < 60 ? [`page ${k + 1}: ${text.trim()}`] : []),
        'none of them empty');
    const state = await page.textContent('#state p');
    const plain = (text) => text.replace(/\s+/g, ' ');
    checks.that(
        plain(pages[0]).includes(state.slice(0, 40)) && /not a medical device/.test(plain(pages[0])),
        'state and caution on the first', pages[0].slice(0, 300));
    for (const [heading, what] of [['Plan', 'the plan'], ['The case of this state', 'the case']])
      checks.that(pages.some((text) => text.trimStart().startsWith(heading)), `${what} begins a page`);
    const missing = await page.$$eval(
        '#live details:not(#details details) summary + *',
        (list) => list.map((one) => one.textContent.trim().slice(0, 25)).filter(Boolean));
    const whole = pages.map(plain).join(' ').replace(/\s/g, '');
    checks.none(
        missing.filter((text) => !whole.includes(text.replace(/\s/g, ''))), 'what was folded away is printed');
    // The darkest page as grey pixels (a portable grey map: three lines, then a byte each).
    const dark = Array.from({length: count}, (_, k) => {
      const map = execFileSync(
          'pdftoppm', ['-gray', '-r', '20', '-f', String(k + 1), '-l', String(k + 1), file], {maxBuffer: 1e8});
      const [, width, height] = map.subarray(0, 20).toString('latin1').match(/^P5\s(\d+)\s(\d+)/);
      const pixels = map.subarray(map.length - width * height);
      return pixels.filter((grey) => grey < 90).length / pixels.length;
    });
    checks.that(
        Math.max(...dark) < 0.06, 'on white, pictures too', dark.map((share) => share.toFixed(2)).join(', '));
    checks.none(seen, 'printing prints nothing on the console');
    await context.close();
  }
}
