// node test_browser.mjs PROGRAM SOURCES: pages of three cases in a real Chromium, by real clicks, drags, taps and
// keys. PAGE_STATES: random states in all (default 50); PAGE_SEED: their seed; PAGE_FILES: a folder with ready
// pages (NAME.html), which are then not written anew.
import {execFileSync} from 'node:child_process';
import {existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';

import {testAccess} from './access.mjs';
import {testHands} from './by_hand.mjs';
import {Checks} from './checks.mjs';
import {testFrames} from './frames.mjs';
import {changed, generator} from './hands.mjs';
import {testHostile} from './hostile.mjs';
import {caseText, launch, openPage, settled} from './opened_page.mjs';
import {testPrint} from './print.mjs';
import {analysed, differences} from './shown.mjs';

const [program, source] = process.argv.slice(2);
const states = Number(process.env.PAGE_STATES || 50), seed = Number(process.env.PAGE_SEED || 20240607);
const folder = mkdtempSync(join(tmpdir(), 'gapstrain-browser-'));
const checks = new Checks();

// Open gap, contact without friction, contact with friction; coarse meshes, of which page and program have the
// same.
const coarse = '\n[mesh]\nrefinement = 0.5\nrim_elements = 32\n';
const frictionless = '\n[contact]\nfriction = "none"\n';
const cases = [
  ['open', 'comminuted_radius', ''], ['contact', 'transverse_radius', frictionless],
  ['friction', 'transverse_radius', '']
];

function pageOf(name, text) {
  const ready = process.env.PAGE_FILES && join(process.env.PAGE_FILES, name + '.html');
  if (ready && existsSync(ready)) return ready;
  const file = join(folder, name + '.toml'), html = join(folder, name + '.html');
  writeFileSync(file, text);
  try {
    execFileSync(program, ['page', file, '--out', html, '--quiet', '--force'], {stdio: 'inherit'});
  } catch (fault) {
    if (fault.status !== 1) throw fault;  // 1: written, and a part fails
  }
  return html;
}

async function randomStates(browser, name, html, count, random) {
  const {page, context, seen} = await openPage(browser, html);
  const compare = async (what) => {
    const {found, count: figures} = await differences(page, analysed(program, folder, await caseText(page)));
    checks.that(
        found.length === 0, `${name}, ${what}: ${figures} figures as analyse gives them`,
        found.slice(0, 4).join('; '));
  };
  await compare('as entered');
  for (let done = 0, tries = 0; done < count && tries < 6 * count; ++tries) {
    const before = await caseText(page);
    const said = await changed(page, random);
    if (await page.evaluate(() => Boolean(Page.answer.unsolved))) {
      await page.click('#undo');
      await settled(page);
      continue;
    }
    if (await caseText(page) === before) continue;
    ++done;
    await compare(`state ${done} (${said})`);
  }
  checks.none(seen, `${name}: nothing on the console, no request`);
  await context.close();
}

console.log(`seed ${seed}, ${states} states`);
const browser = await launch();
try {
  const random = generator(seed);
  const pages = cases.map(([name, example, more]) => {
    const text = readFileSync(join(source, 'cases/examples', example + '.toml'), 'utf8');
    return [name, pageOf(name, text + coarse + more)];
  });
  await testHands(browser, pages[0][1], checks);
  await testAccess(browser, pages[0][1], checks);
  await testPrint(browser, pages[0][1], checks);
  await testHostile(browser, pageOf, source, checks);
  for (const [name, html] of pages) await testFrames(browser, name, html, checks);
  for (const [k, [name, html]] of pages.entries())
    await randomStates(browser, name, html, Math.floor(states / 3) + (k < states % 3 ? 1 : 0), random);
} finally {
  await browser.close();
  rmSync(folder, {recursive: true, force: true});
}
process.exit(checks.report());
