// node test_core.mjs PROGRAM SOURCES: pages of three cases, whose core answers random states as `gapstrain analyse`
// does.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runInThisContext } from 'node:vm';
import { openPage, differences, exactly, withFriction } from './core_of_page.mjs';

const [program, source] = process.argv.slice(2);
const states = Number(process.env.PAGE_STATES || 6);
const folder = mkdtempSync(join(tmpdir(), 'gapstrain-page-'));
let faults = 0;
const fail = (text) => { ++faults; console.log('FAILED ' + text); };

// As tests/cases/outputs/test_digits.cpp, and numbers half-way.
const threeDigits = runInThisContext(readFileSync(join(source, 'cases/page/worker/page_data.js'), 'utf8') + '; threeDigits');
for (const [value, text] of [[0, '0'], [0.000123, '0.00012'], [999.6, '1000'], [123456.7, '123457'], [1.2345e7, '1.23e+07'],
  [0.0625, '0.0625'], [1.125, '1.12'], [1.375, '1.38'], [2610.5, '2610'], [2611.5, '2612'], [-0.5, '-0.5'], [1.225e9, '1.22e+09'],
  [0.00099951, '0.001'], [1e-7, '1e-07'], [99.951, '100'], [236.04, '236']])
  if (threeDigits(value) !== text) fail(`threeDigits(${value}) is ${threeDigits(value)}, not ${text}`);

// A linear congruential generator (D. H. Lehmer 1951; modulus 2^31 - 1, multiplier 48271): the same states in each run.
let seed = 20240607;
const random = (count) => { seed = Number((BigInt(seed) * 48271n) % 2147483647n); return seed % count; };

function randomEdit(page, answer) {
  const holes = page.facts.opened.plate.holes;
  const screws = answer.screws.filter((screw) => screw.hole > 0);
  const free = holes.filter((hole) => !screws.some((screw) => screw.hole === hole.hole) &&
                                        hole.kinds.some((one) => one.cortices.length > 0));
  const kind = (hole) => {
    const offered = hole.kinds.filter((one) => one.cortices.length > 0);
    return offered[random(offered.length)];
  };
  switch (random(6)) {
    case 0: {
      if (free.length === 0) return { do: 'fill_gap', tissue: 'none' };
      const hole = free[random(free.length)], one = kind(hole);
      return { do: 'put_screw', hole: hole.hole, kind: one.kind, cortices: one.cortices[random(one.cortices.length)] };
    }
    case 1: return { do: 'remove_screw', label: screws[random(screws.length)].label };
    case 2: {
      if (free.length === 0) return { do: 'fill_gap', tissue: 'none' };
      return { do: 'move_screw', label: screws[random(screws.length)].label, hole: free[random(free.length)].hole };
    }
    case 3: return { do: 'fill_gap', modulus_mpa: [0.2, 3, 50, 1000][random(4)] };
    case 4: return { do: 'scale_load', load: random(answer.loads.length), factor: [0.5, 1.3, 2][random(3)] };
    default: {
      const order = answer.steps.map((step, k) => k);
      const [a, b] = [random(order.length), random(order.length)];
      [order[a], order[b]] = [order[b], order[a]];
      return { do: 'order_steps', order };
    }
  }
}

// Status 1 is a page too: of a construct that is not to be trusted, such as with a coarse mesh.
function writePage(program, options) {
  const { status } = spawnSync(program, options, { stdio: 'inherit' });
  if (status !== 0 && status !== 1) throw new Error(`gapstrain ${options.join(' ')}: exit status ${status}`);
}

function analysed(text) {
  const file = join(folder, 'state.toml'), out = join(folder, 'state');
  writeFileSync(file, text);
  try {
    execFileSync(program, ['analyse', file, '--no-pictures', '--quiet', '--out', out], { stdio: 'pipe' });
  } catch (fault) {
    if (fault.status !== 1) return { error: String(fault.stderr) };
  }
  try {
    return JSON.parse(readFileSync(join(out, 'findings.json'), 'utf8'));
  } catch {
    return { error: 'the model does not hold' };
  }
}

for (const [example, tolerance] of Object.entries(
         { comminuted_radius: exactly, transverse_radius: withFriction, simple_tibia: exactly })) {
  const file = join(folder, example + '.toml'), html = join(folder, example + '.html');
  const coarse = process.env.PAGE_FULL ? '' : '\n[mesh]\nrefinement = 0.5\nrim_elements = 32\n';
  writeFileSync(file, readFileSync(join(source, 'cases/examples', example + '.toml'), 'utf8') + coarse);
  writePage(program, ['page', file, '--out', html, '--no-pictures', '--quiet', '--force']);
  const page = await openPage(html, source);
  const size = readFileSync(html).length;
  const first = page.core.ask({ detail: 'whole', fields: [{ load: 0 }] });
  console.log(`${example}: ${(size / 1e6).toFixed(2)} MB, ` + JSON.stringify(page.times) + ' ' + JSON.stringify(first.ms));
  const parted = differences(first.findings, page.facts.first.findings, tolerance).filter((d) => !d.startsWith('/no_race'));
  if (parted.length > 0) fail(`${example} as entered: ${parted.length}, ${parted.slice(0, 5).join('; ')}`);

  let changes = {}, answer = first, done = 0, refused = 0;
  const times = { quick: [], whole: [] };
  for (let tries = 0; done < states && tries < 20 * states; ++tries) {
    const edit = randomEdit(page, answer);
    const quick = page.core.ask({ changes, edit, detail: 'quick' });
    if (quick.error) { ++refused; continue; }  // such as the last screw of a fragment
    const next = page.core.ask({ changes: quick.changes, detail: 'whole' });
    if (next.error) { fail(`${example}: ${JSON.stringify(edit)}: ${next.error.text}`); continue; }
    ({ changes } = quick);
    answer = next;
    ++done;
    times.quick.push(quick.ms.read + quick.ms.assemble + quick.ms.solve);
    times.whole.push(next.ms.findings);
    const native = analysed(answer.case_text);
    for (const key of ['files', 'keys', 'case', 'program', 'race', 'no_race']) {
      delete native[key];
      delete answer.findings[key];
    }
    const found = differences(answer.findings, native, tolerance);
    if (found.length > 0)
      fail(`${example} state ${done} (${JSON.stringify(edit)}): ${found.length} differ, ${found.slice(0, 4).join('; ')}`);
  }
  const median = (list) => list.sort((a, b) => a - b)[list.length >> 1].toFixed(1);
  console.log(`${example}: ${done} states, ${refused} refused; ms quick ${median(times.quick)}, whole ${median(times.whole)}, ` +
              `memory ${(page.core.memory() / 1e6).toFixed(0)} MB`);
  if (done < states) fail(`${example}: only ${done} states`);
}
rmSync(folder, { recursive: true });
console.log(faults === 0 ? 'all passed' : faults + ' failed');
process.exit(faults === 0 ? 0 : 1);
