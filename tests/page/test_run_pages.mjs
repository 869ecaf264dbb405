// node test_run_pages.mjs PROGRAM SOURCES: pages of compare, layouts and sweep: what they hold is what the run found,
// and the core in them solves a point to the same printed digits.
import {mkdtempSync, readFileSync, rmSync, statSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {runInThisContext} from 'node:vm';
import {bytesOf, differences, exactly, openPage} from './core_of_page.mjs';
import {threeDigits} from './report_of_page.mjs';
import {coarse, run as runProgram, told} from './run_program.mjs';

const [program, source] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'gapstrain-pages-'));
const {that} = told, run = (options) => runProgram(program, options);
const interfaceFile = (name) => readFileSync(join(source, 'cases/page/interface', name), 'utf8');
// What the page itself makes of a point.
const {changesOf} = runInThisContext(
    `(() => { ${interfaceFile('cloud_chart.js')}\n${interfaceFile('cloud_panel.js')}
      return {changesOf: (data, row) => CloudPanel.prototype.changesOf.call({data}, row)}; })()`);
const example = (name, more = '') => {
  const file = join(folder, name + '.toml');
  writeFileSync(file, readFileSync(join(source, 'cases/examples', name + '.toml'), 'utf8') + coarse + more);
  return file;
};
const megabytes = (file) => (statSync(file).size / 1e6).toFixed(2);

// Figures of a row that the core's answer does not print alike.
function otherFigures(data, row, answer) {
  let count = 0;
  const other = [];
  data.columns.forEach((column, c) => {
    if (column.varied || data.values[c][row] === null) return;
    const figure = answer.figures.find((one) => one.name === column.name && one.load === column.load);
    if (!figure) return;
    ++count;
    const shown = threeDigits(data.values[c][row]);
    if (figure.shown !== shown) other.push(`${column.name}${column.load ? ` under ${column.load}` : ''} ${shown}, solved ${figure.shown}`);
  });
  return {count, other};
}

{
  const first = example('comminuted_radius');
  const second = join(folder, 'second.toml');
  writeFileSync(second, 'base = "comminuted_radius.toml"\nname = "Gap of 8 mm, plate nearer"\n[fracture]\ngap = "8 mm"\n[plate]\nstandoff = "0.6 mm"\n');
  const out = join(folder, 'comparison');
  run(['compare', first, second, '--page', '--no-pictures', '--quiet', '--out', out]);
  const findings = JSON.parse(readFileSync(join(out, 'findings.json'), 'utf8'));
  that(findings.files.includes('page.html'), 'compare: page.html is among the files of findings.json');
  const page = await openPage(join(out, 'page.html'), source);
  const {facts} = page;
  console.log(`       ${megabytes(join(out, 'page.html'))} MB`);
  that(facts.comparison.preference.verdict === findings.preference.verdict && findings.preference.verdict.length > 0,
       'compare: the page says which to prefer as the run does');
  that(facts.opened.variants.length === 2 && facts.beside.length === 1, 'compare: both constructs are prepared, and stand side by side');
  that(facts.opened.parts[1].fracture.gap_mm === 8 && facts.opened.parts[0].fracture.gap_mm === 12, 'compare: each with its own fracture');
  const states = [facts.first, facts.beside[0].answer];
  let held = 0;
  const other = [];
  for (const figure of findings.figures)
    figure.values.forEach((value, k) => {
      const shown = states[k].figures.find((one) => one.name === figure.name && one.load === undefined);
      if (value === null || !shown) return;
      ++held;
      if (Math.abs(Number(threeDigits(value)) - Number(shown.shown)) > 1e-9 * Math.abs(value)) other.push(`${figure.name} ${k}: ${value} against ${shown.shown}`);
    });
  that(held > 20 && other.length === 0, `compare: ${held} figures of the comparison are those of the constructs in the page ${other.slice(0, 4)}`);
  const solved = page.core.ask({changes: {}, variant: 1, detail: 'whole'});
  const parted = solved.error ? [solved.error.text] : differences(solved.findings, states[1].findings, exactly).filter((d) => !d.startsWith('/no_race'));
  that(parted.length === 0, `compare: the core solves the second construct to the same figures ${parted.slice(0, 3)}`);
}

// Of a case without steps of its own: where a layout empties one, a point may part from its row (DEVELOPERS.md, "The page").
for (const [name, more] of [['simple_tibia', '']]) {
  const out = join(folder, name + '_layouts');
  run(['layouts', example(name, more), '--page', '--no-pictures', '--quiet', '--out', out]);
  const file = join(out, 'page.html');
  const page = await openPage(file, source);
  const data = JSON.parse(bytesOf(page.html, 'cloud').toString('utf8'));
  console.log(`       ${name}: ${data.rows} layouts, ${data.columns.length} columns, ${megabytes(file)} MB, of which ${
      (page.html.length - page.html.replace(/id="cloud">[^<]*/, '').length) / 1e6} MB cloud`);
  const rows = readFileSync(join(out, 'rows.csv'), 'utf8').trim().split('\n').length - 1;
  that(data.rows === rows && data.state.length === rows, `layouts of ${name}: all ${rows} are in the page`);
  const front = readFileSync(join(out, 'front.csv'), 'utf8').trim().split('\n').slice(1).map((line) => Number(line.split(',')[0]) - 1);
  that(JSON.stringify(front) === JSON.stringify(data.front), `layouts of ${name}: its ${front.length} on the front are front.csv's`);
  let count = 0, solved = 0;
  const other = [];
  for (let k = 0; k < 10; ++k) {
    const row = k === 0 && data.own !== undefined ? data.own : Math.floor((k + 0.5) * rows / 10);
    const answer = page.core.ask({changes: changesOf(data, row), detail: 'verdict'});
    if (answer.error) { other.push(`layout ${row + 1}: ${answer.error.text}`); continue; }
    ++solved;
    const held = otherFigures(data, row, answer);
    count += held.count;
    held.other.forEach((text) => other.push(`layout ${row + 1}: ${text}`));
  }
  that(solved === 10 && other.length === 0, `layouts of ${name}: ${count} figures of ${solved} points are solved to the same printed digits`);
  other.slice(0, 8).forEach((text) => console.log('       ' + text));
}

{
  example('simple_tibia');
  const study = join(folder, 'study.toml'), out = join(folder, 'sweep');
  writeFileSync(study, `case = "simple_tibia.toml"
[[vary]]
key = "fracture.gap"
values = ["5 mm", "3 mm"]
[[vary]]
key = "load[0].axial"
values = ["150 N", "200 N", "250 N"]
`);
  run(['sweep', study, '--page', '--no-pictures', '--quiet', '--out', out]);
  const file = join(out, 'page.html'), page = await openPage(file, source);
  const data = JSON.parse(bytesOf(page.html, 'cloud').toString('utf8'));
  console.log(`       sweep: ${data.rows} rows, ${megabytes(file)} MB, touch ${data.touch}`);
  const gaps = data.settings[0].map(([text]) => Number(text));
  const own = page.facts.opened.fracture.gap_mm;
  that(gaps.every((gap, row) => (gap === own) === (data.touch[row] > 0)) && gaps.includes(own), 'sweep: rows with the gap of the case can be touched, the others cannot');
  that(gaps.every((gap, row) => gap === own || /no bodies for another/.test(data.why[data.whys[row]])), 'sweep: and they say why');
  let count = 0;
  const other = [];
  data.touch.forEach((touch, row) => {
    const answer = page.core.ask({changes: changesOf(data, row), detail: 'verdict'});
    if (touch === 0) {
      if (answer.error?.kind !== 'not_prepared') other.push(`row ${row}: solved although it cannot be`);
      return;
    }
    if (answer.error) { other.push(answer.error.text); return; }
    const held = otherFigures(data, row, answer);
    count += held.count;
    held.other.forEach((text) => other.push(`row ${row + 1}: ${text}`));
  });
  that(count > 60 && other.length === 0, `sweep: ${count} figures of rows are solved to the same printed digits`);
  other.slice(0, 8).forEach((text) => console.log('       ' + text));
}

rmSync(folder, {recursive: true});
const {faults} = told;
console.log(faults === 0 ? 'all hold' : `${faults} do not hold`);
process.exit(faults === 0 ? 0 : 1);
