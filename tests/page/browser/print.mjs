// Print to PDF: A4, as many pages as there should be, none of them empty.
import {openPage} from './opened_page.mjs';

export async function testPrint(browser, html, checks) {
  const {page, context, seen} = await openPage(browser, html);
  const pdf = await page.pdf({preferCSSPageSize: true, printBackground: true});
  const text = pdf.toString('latin1');
  const pages = (text.match(/\/Type\s*\/Page[^s]/g) || []).length;
  const box = text.match(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/);
  checks.that(pages >= 6 && pages <= 16, `printed on ${pages} pages`);
  checks.that(box && Math.abs(box[1] - 595) < 2 && Math.abs(box[2] - 842) < 2, 'of A4', box && box[0]);
  checks.none(seen, 'printing prints nothing on the console');
  await context.close();
}
