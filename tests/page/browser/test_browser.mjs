// node test_browser.mjs PROGRAM SOURCES: pages of three cases in a real Chromium and a real Firefox, by real
// clicks, drags, taps and keys. PAGE_PARTS: which of its parts, by their names below (default: all but friction,
// which is hands once more); PAGE_STATES: random states in all (default 6; DEVELOPERS.md has the command for 50);
// PAGE_SEED: their seed; PAGE_FILES: a folder with ready pages (NAME.html), which are then not written anew.
import {execFileSync} from 'node:child_process';
import {existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';

import {testAccess} from './access.mjs';
import {testBeside, testHands, testPhone, testRefused, testSliders} from './by_hand.mjs';
import {Checks} from './checks.mjs';
import {testFirefox} from './firefox.mjs';
import {testFrames} from './frames.mjs';
import {changed, generator} from './hands.mjs';
import {testHostile} from './hostile.mjs';
import {testKeyboard} from './keyboard.mjs';
import {testLesson} from './lesson.mjs';
import {caseText, launch, openPage, settled} from './opened_page.mjs';
import {testPolicy} from './policy.mjs';
import {testPrint} from './print.mjs';
import {analysed, differences} from './shown.mjs';
import {testVariants} from './variants.mjs';

const [program, source] = process.argv.slice(2);
const states = Number(process.env.PAGE_STATES || 6), seed = Number(process.env.PAGE_SEED || 20240607);
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

function lessonOf(name) {
  const html = join(folder, name + '.html');
  const lesson = join(source, 'cases/examples/lessons', name + '.toml');
  execFileSync(program, ['lesson', lesson, '--out', html, '--no-pictures', '--quiet'], {stdio: 'inherit'});
  return html;
}

function pageOf(name, text, ...more) {
  const ready = process.env.PAGE_FILES && join(process.env.PAGE_FILES, name + '.html');
  if (ready && existsSync(ready)) return ready;
  const file = join(folder, name + '.toml'), html = join(folder, name + '.html');
  writeFileSync(file, text);
  try {
    execFileSync(program, ['page', file, '--out', html, '--quiet', '--force', ...more], {stdio: 'inherit'});
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

const textOf = (example) => readFileSync(join(source, 'cases/examples', example + '.toml'), 'utf8');
const pages = new Map();
const page = (name) => {
  const [, example, more] = cases.find((one) => one[0] === name);
  if (!pages.has(name)) pages.set(name, pageOf(name, textOf(example) + coarse + more));
  return pages.get(name);
};

const random = generator(seed);
const parts = {
  hands: (browser) => testHands(browser, page('open'), checks),
  friction: (browser) => testHands(browser, page('friction'), checks),
  sliders: (browser) => testSliders(browser, page('open'), checks),
  beside: (browser) => testBeside(browser, page('open'), checks),
  refused: (browser) => testRefused(browser, page('open'), checks),
  phone: (browser) => testPhone(browser, page('open'), checks),
  keyboard: (browser) => testKeyboard(browser, page('open'), checks),
  variants: (browser) => testVariants(
      browser, pageOf('variants', textOf('comminuted_radius') + coarse, '--vary', 'plate.standoff=2 mm'), checks),
  lesson: (browser) => testLesson(browser, lessonOf('gap'), 4, checks),
  access: (browser) => testAccess(browser, page('open'), checks),
  print: (browser) => testPrint(browser, page('open'), folder, checks),
  policy: (browser) => testPolicy(browser, page('open'), checks),
  hostile: (browser) => testHostile(browser, pageOf, source, checks),
  frames: async (browser) => {
    for (const [name] of cases) await testFrames(browser, name, page(name), checks);
  },
  demo: (browser) => testFrames(browser, 'demo', pageOf('demo', textOf('comminuted_radius')), checks, [1]),
  states: async (browser) => {
    for (const [k, [name]] of cases.entries())
      await randomStates(browser, name, page(name), Math.floor(states / 3) + (k < states % 3 ? 1 : 0), random);
  },
  firefox: () => testFirefox(page('open'), (text) => analysed(program, folder, text), checks),
};
const wanted = process.env.PAGE_PARTS ? process.env.PAGE_PARTS.split(',') :
                                        Object.keys(parts).filter((one) => one !== 'friction');
console.log(`seed ${seed}, ${states} states; parts: ${wanted.join(', ')}`);
const browser = await launch();
try {
  for (const part of wanted) {
    const begun = Date.now();
    try {
      await parts[part](browser);
    } catch (fault) {
      checks.that(false, `${part} runs to its end`, fault.stack);
    }
    console.log(`   ${part}: ${((Date.now() - begun) / 1000).toFixed(0)} s`);
  }
} finally {
  await browser.close();
  rmSync(folder, {recursive: true, force: true});
}
process.exit(checks.report());
