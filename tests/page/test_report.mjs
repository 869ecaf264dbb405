// node test_report.mjs PROGRAM SOURCES: the report of `analyse --page`, every number of it held against findings.json;
// and that a spoiled one is found.
import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {reportFaults, stillCase, stillPart} from './report_of_page.mjs';
import {coarse, run as runProgram, told} from './run_program.mjs';

const [program, source] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'gapstrain-report-'));
const {that} = told, run = (options) => runProgram(program, options);
const findingsOf = (name) => JSON.parse(readFileSync(join(folder, name, 'findings.json'), 'utf8'));

for (const example of ['comminuted_radius', 'transverse_radius', 'simple_tibia']) {
  const file = join(folder, example + '.toml'), out = join(folder, example);
  writeFileSync(file, readFileSync(join(source, 'cases/examples', example + '.toml'), 'utf8') + coarse);
  const screen = run(['analyse', file, '--page', '--no-pictures', '--out', out]);
  const findings = findingsOf(example);
  that(findings.files.includes('page.html'), `${example}: page.html is among the files of findings.json`);
  const html = readFileSync(join(out, 'page.html'), 'utf8');
  const own = reportFaults(html, findings, screen);
  that(own.faults.length === 0 && own.numbers > 100 && own.sentences > 100,
       `${example}: ${own.numbers} numbers and ${own.sentences} sentences are those of the run`);
  own.faults.slice(0, 8).forEach((fault) => console.log('       ' + fault));

  // The case that the report ends with, run again.
  const again = join(folder, example + '_again.toml');
  writeFileSync(again, stillCase(stillPart(html)));
  const screenAgain = run(['analyse', again, '--no-pictures', '--out', join(folder, example + '_again')]);
  const repeated = reportFaults(html, findingsOf(example + '_again'), screenAgain);
  that(repeated.faults.length === 0, `${example}: and of the case in the page, run again`);
  repeated.faults.slice(0, 8).forEach((fault) => console.log('       ' + fault));

  // Each number spoiled on its own, one after another through the report: all are found.
  const places = [...html.matchAll(/ (?:data-at|data-figure)="[^"]*"[^>]*>-?\d[^<]*</g)];
  const step = Math.max(1, Math.floor(places.length / 25));
  let missed = 0, tried = 0;
  for (let k = 0; k < places.length; k += step) {
    const [cell] = places[k];
    const spoiled = cell.replace(/>(-?\d*)(\d)([^<]*)</, (_, before, digit, after) => `>${before}${(Number(digit) + 1) % 10}${after}<`);
    const other = html.slice(0, places[k].index) + spoiled + html.slice(places[k].index + cell.length);
    ++tried;
    if (reportFaults(other, findings, screen).faults.length === 0) {
      ++missed;
      console.log('       not found: ' + spoiled);
    }
  }
  that(tried >= 20 && missed === 0, `${example}: ${tried} spoiled numbers are found, one at a time`);
  const sentence = html.replace(/(<p class="lead">[^<]*?)(\d)([^<]*<)/, (_, before, digit, after) => `${before}${(Number(digit) + 3) % 10}7${after}`);
  that(sentence !== html && reportFaults(sentence, findings, screen).faults.length > 0, `${example}: and one in the first sentence`);
  that(!/margins\.txt|review\.txt|plan\.txt|findings\.json/.test(stillPart(html).replace(/<pre[\s\S]*?<\/pre>/g, '')),
       `${example}: the report names no file that a page does not have`);
}

rmSync(folder, {recursive: true});
const {faults} = told;
console.log(faults === 0 ? 'all hold' : `${faults} do not hold`);
process.exit(faults === 0 ? 0 : 1);
