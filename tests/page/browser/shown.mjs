// What the page shows, read from its tables, against what `gapstrain analyse` writes for the same case.
import {execFileSync} from 'node:child_process';
import {readFileSync, rmSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';

export function analysed(program, folder, text) {
  const file = join(folder, 'state.toml'), out = join(folder, 'out');
  rmSync(out, {recursive: true, force: true});
  writeFileSync(file, text);
  try {
    execFileSync(program, ['analyse', file, '--no-pictures', '--quiet', '--out', out], {stdio: 'pipe'});
  } catch (fault) {
    if (fault.status !== 1) throw new Error(`analyse: ${fault.stderr}`);
  }
  return JSON.parse(readFileSync(join(out, 'findings.json'), 'utf8'));
}

// Of a section: each table's rows as texts.
const tables = (page, section) => page.evaluate(
    (id) => [...document.querySelectorAll(`#${id} table`)].map(
        (table) => ({
          caption: table.caption.textContent,
          rows: [...table.tBodies[0].rows].map((row) => [...row.cells].map((cell) => cell.textContent))
        })),
    section);

const printed = (page, values) => page.evaluate((list) => list.map((value) => threeDigits(value)), values);

// Texts that differ, each as a sentence; and how many figures were held against each other.
export async function differences(page, findings) {
  const found = [];
  let count = 0;
  const same = (what, shown, expected) => {
    ++count;
    if (shown !== expected) found.push(`${what}: the page shows "${shown}", analyse gives "${expected}"`);
  };
  const one = async (what, shown, value) => same(what, shown, (await printed(page, [value]))[0]);

  const margins = (await tables(page, 'margins')).flatMap((table) => table.rows);
  same('number of margins', String(margins.length), String(findings.margins.length));
  for (const [k, margin] of findings.margins.entries()) {
    if (!margins[k]) break;
    const [part, word, factor, load, from] = margins[k];
    same(`margin ${k + 1}, part`, part, margin.part);
    same(`margin ${k + 1}, load`, load, margin.load);
    await one(`margin ${k + 1}, ${margin.part}`, factor, margin.factor);
    if (!margin.indicative) same(`margin ${k + 1}, word`, word, margin.factor >= 1 ? 'holds' : 'fails');
    if (!from.startsWith(margin.sentence)) found.push(`margin ${k + 1}: "${from}" against "${margin.sentence}"`);
  }

  const figures = await tables(page, 'figures');
  const valueOf = (table, label) => table?.rows.find((row) => row[0] === label)?.[1];
  const all = figures[0];
  await one('axial stiffness', valueOf(all, 'stiffness, axial'), findings.stiffness.axial_n_per_mm);
  await one('working length', valueOf(all, 'working length'), findings.construct.working_length_mm);
  for (const load of findings.loads) {
    const table = figures.find((other) => other.caption === `Under "${load.load}".`);
    await one(
        `${load.load}, plate stress`, valueOf(table, 'plate stress, largest'), load.plate.peak_von_mises_mpa);
    if (load.gap.axial_strain) {
      const {min, max} = load.gap.axial_strain;
      await one(`${load.load}, gap strain`, valueOf(table, 'gap strain, largest'), 100 * Math.max(-min, max));
    }
    await one(`${load.load}, gap motion`, valueOf(table, 'gap motion, largest'), load.gap.largest_motion_mm);
    await one(`${load.load}, force across`, valueOf(table, 'force across'), load.face.force_n);
    await one(
        `${load.load}, screw pull`, valueOf(table, 'screw pull'),
        Math.max(0, ...load.screws.map((screw) => screw.axial_n)));
  }

  const rules = (await tables(page, 'rules')).flatMap((table) => table.rows);
  for (const rule of findings.review) {
    const row = rules.find((other) => other[0] === rule.rule);
    same(`rule ${rule.rule}`, row?.[1].replace(' by the last change', ''), rule.verdict);
    same(`rule ${rule.rule}, here`, row?.[2], rule.figure);
    same(`rule ${rule.rule}, asked for`, row?.[3], rule.bound);
  }

  const forces = await page.$$eval('.step .forces', (list) => list.map((one) => one.textContent));
  same('number of steps', String(forces.length), String(findings.compression.steps.length));
  for (const [k, step] of findings.compression.steps.entries())
    await one(`force after step ${k + 1}`, forces[k]?.replace(' N', ''), step.face.force_n);

  const plan = (await tables(page, 'plan'))[0].rows;
  for (const [k, screw] of findings.plan.screws.entries()) {
    same(`plan, screw ${k + 1}`, plan[k]?.[0], screw.label);
    await one(`plan, ${screw.label} measured`, plan[k]?.[6], screw.measured_mm);
  }

  const said = await page.$$eval('#plan p', (list) => list.map((line) => line.textContent));
  for (const note of findings.plan.notes)
    if (!said.includes(note.sentence)) found.push(`the plan lacks "${note.sentence}"`);
  const text = await page.$eval('#live', (live) => live.textContent);
  const slip = text.match(/.{0,30}(\[object|undefined|\bNaN\b).{0,30}/);
  if (slip) found.push(`the page shows "${slip[0]}"`);

  const band = await page.$$eval('#state p', (lines) => lines.map((line) => line.textContent).join(' '));
  const word = {holds: 'HOLDS', fails: 'FAILS', 'not to be trusted': 'NOT TO BE TRUSTED'}[findings.state.standing];
  if (word !== undefined && !band.includes(word))
    found.push(`the band says "${band}", analyse: ${findings.state.standing}`);
  return {found, count};
}
