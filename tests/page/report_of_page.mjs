// The report of a page as it is read: its cells with what they say of themselves, held against findings.json.
import {readFileSync} from 'node:fs';
import {runInThisContext} from 'node:vm';
import {fileURLToPath} from 'node:url';

export const threeDigits = runInThisContext(
    readFileSync(fileURLToPath(new URL('../../cases/page/worker/page_data.js', import.meta.url)), 'utf8') + '; threeDigits');

export function plainText(html) {
  return html.replace(/<[^>]*>/g, '').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"')
      .replaceAll('&#39;', "'").replaceAll('&amp;', '&');
}

export function stillPart(html) {
  const begin = html.indexOf('<main id="still">');
  return html.slice(begin, html.indexOf('</main>', begin));
}

export const stillCase = (still) => plainText(still.match(/<pre id="still-case"[^>]*>([\s\S]*?)<\/pre>/)[1]);

// [{tag, attributes: {at, scale, figure, load, class}, text}] of paragraphs, list items, headings and cells of tables.
export function piecesOf(still) {
  const pieces = [];
  for (const [, tag, attributes, text] of still.matchAll(/<(p|li|h[1-3]|th|td|caption)((?: [a-z-]+="[^"]*")*)>([\s\S]*?)<\/\1>/g)) {
    const known = {};
    for (const [, name, value] of attributes.matchAll(/ (?:data-)?([a-z]+)="([^"]*)"/g)) known[name] = plainText(value);
    pieces.push({tag, attributes: known, text: plainText(text)});
  }
  return pieces;
}

// A JSON pointer (RFC 6901).
const at = (json, pointer) => pointer.split('/').slice(1)
    .reduce((value, key) => value?.[key.replaceAll('~1', '/').replaceAll('~0', '~')], json);

const most = (values) => Math.max(...values), least = (values) => Math.min(...values);

const yieldOf = (findings, label) => findings.margins.find((one) => one.part === `screw ${label}, yield`)?.basis.yield_mpa;

// What findings.json gives no single number for: how it follows from those that are there.
const followed = {
  gap_strain: (load) => load.gap.axial_strain && Math.max(Math.abs(load.gap.axial_strain.min), Math.abs(load.gap.axial_strain.max)),
  // Von Mises, as the factor to yield is told of it.
  screw_stress: (load, findings) => most(load.screws.map((screw) => yieldOf(findings, screw.label) / screw.factor_to_yield)),
  screw_pull: (load) => Math.max(0, most(load.screws.map((screw) => screw.axial_n))),
  screw_to_yield: (load) => least(load.screws.map((screw) => screw.factor_to_yield ?? Infinity)),
};

const ofMargins = {
  margin_plate_yield: /^plate, yield/, margin_plate_fatigue: /^plate, fatigue/,
  margin_screw_yield: /^screw .*, yield/, margin_screw_fatigue: /^screw .*, fatigue/, margin_pull_out: /^screw .*, pull-out/,
};

function ofConstruct(name, findings) {
  const margins = Object.fromEntries(Object.entries(ofMargins).map(
      ([figure, part]) => [figure, findings.margins.find((one) => part.test(one.part) && !one.indicative)?.factor]));
  if (name in margins) return margins[name];
  const known = Object.values(margins).filter((value) => value !== undefined);
  if (name === 'margin') return least(known);
  if (name === 'margins_failing') return known.filter((value) => value < 1).length;
  if (name === 'screws') return findings.construct.screws_proximal + findings.construct.screws_distal;
  const broken = findings.review.filter((rule) => rule.verdict === 'broken').map((rule) => rule.rule);
  if (name === 'rules_broken') return new Set(broken).size;
  if (name.startsWith('breaks_'))
    return broken.some((rule) => 'breaks_' + rule.replaceAll("'", '').replaceAll(' ', '_') === name) ? 1 : 0;
  return undefined;
}

// The figure of the catalogue in findings.json: of a load by its name, else the construct's or of the worst load.
export function figureIn(findings, name, load) {
  const path = Object.entries(findings.keys).find(([, key]) => key.figure === name)?.[0];
  const ofLoad = (one) => (name in followed ? followed[name](one, findings) :
      path?.startsWith('loads[].') ? at(one, '/' + path.slice('loads[].'.length).replaceAll('.', '/')) : undefined);
  if (load !== undefined) return [ofLoad(findings.loads.find((one) => one.load === load))];
  const own = ofConstruct(name, findings);
  if (own !== undefined) return [own];
  if (path && !path.startsWith('loads[].')) return [at(findings, '/' + path.replaceAll('.', '/'))];
  const values = findings.loads.map(ofLoad).filter((value) => value !== undefined);
  return values.length > 0 ? [most(values), least(values)] : [undefined];  // the worst is one of both ends
}

// As the catalogue shows units: strain in %, stiffness by the degree.
const shownScale = (unit, name) => (unit === '%' ? 100 : unit === 'N m/degree' ? Math.PI / 180 / 1000 :
                                    unit === 'N m' ? 1e-3 : unit === 'kN' ? 1e-3 : 1);

const sameText = (text) => text.replace(/see the margins below|see margins\.txt/g, 'see margins')
    .replace(/see the limits below|see findings\.json/g, 'see limits').replace(/\s+/g, ' ').trim();

// Faults of the report against findings.json, and how many numbers were held against it. `screen`: what analyse said.
export function reportFaults(html, findings, screen) {
  const faults = [];
  let numbers = 0, sentences = 0;
  const still = stillPart(html);
  const pieces = piecesOf(still.replace(/<pre[\s\S]*?<\/pre>/g, ''));
  const said = sameText(screen.replace(/\n/g, ' '));
  const strings = new Set();
  const gather = (value) => {
    if (typeof value === 'string') strings.add(value);
    else if (value && typeof value === 'object') Object.values(value).forEach(gather);
  };
  gather(findings);
  const meanings = new Set();  // of columns that hold no result
  let heads = [], column = 0;
  for (let k = 0; k < pieces.length; ++k) {
    const {tag, attributes, text} = pieces[k];
    if (tag === 'caption') heads = [], column = 0;
    if (tag === 'th' && attributes.scope === 'col') { heads.push(text); continue; }
    if (tag === 'th') column = 0;
    const head = tag === 'th' || tag === 'td' ? heads[column++] : undefined;
    if (attributes.at !== undefined) {
      const value = at(findings, attributes.at);
      const scale = Number(attributes.scale ?? 1);
      if (typeof value === 'number') {
        ++numbers;
        if (text.split(' ')[0] !== threeDigits(scale * value)) faults.push(`${attributes.at}: shown ${text}, found ${scale * value}`);
      } else if (typeof value === 'string') {
        ++sentences;
        if (text !== value) faults.push(`${attributes.at}: shown "${text}", found "${value}"`);
      } else if (typeof value !== 'boolean') {
        faults.push(`${attributes.at} is not in findings.json`);
      }
    } else if (attributes.figure !== undefined) {
      ++numbers;
      const unit = pieces[k + 1].text;
      const values = figureIn(findings, attributes.figure, attributes.load);
      if (!values.some((value) => value !== undefined && text === threeDigits(shownScale(unit) * value)))
        faults.push(`${attributes.figure}${attributes.load ? ` under ${attributes.load}` : ''}: shown ${text} ${unit}, found ${values}`);
    } else if (tag === 'th' || tag === 'td') {
      if (!['Figure', 'Load', 'Unit', 'Meaning', 'Source and trust', 'Notes', 'What', 'Of'].includes(head) && /\d/.test(text))
        faults.push(`a number without its place in findings.json: "${text}" under "${head}"`);
      if (head === 'Meaning') meanings.add(text);
    } else if (/\d/.test(text) && !strings.has(text)) {
      ++sentences;
      const words = sameText(text);
      if (words.startsWith(`gapstrain ${findings.program.version} (commit ${findings.program.commit}), `)) continue;
      // As on the screen, word by word; where that had no room for the sentence, or for all of it (the steps'),
      // number by number.
      const beginning = words.match(/^[^\d]*/)[0];
      if (!said.includes(words) && ((said.includes(beginning) && !beginning.startsWith('Force across')) || !numbersOfSentence(words, findings)))
        faults.push(`a sentence that neither the screen nor findings.json has: "${text}"`);
    }
  }
  return {faults, numbers, sentences};
}

// Whether each number of a sentence is one of findings.json to the digits that it has.
function numbersOfSentence(text, findings) {
  const all = [];
  const gather = (value) => {
    if (typeof value === 'number') all.push(value);
    else if (value && typeof value === 'object') Object.entries(value).forEach(([key, one]) => key !== 'keys' && gather(one));
  };
  gather(findings);
  const named = findings.loads.map((load) => load.load).concat([findings.program.version, findings.program.commit]);
  const rest = named.reduce((left, name) => left.replaceAll(name, ''), text);
  return [...rest.matchAll(/(?<![A-Za-z\d])-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/g)].every(([number]) => {
    const value = Number(number), decimals = (number.split('.')[1] ?? '').length;
    return all.some((one) => [one, 100 * one, -one, -100 * one, Math.PI / 180 / 1000 * one, 100 * (one - 1)].some(
        (shown) => Math.abs(shown - value) <= 0.5 * 10 ** -decimals * (1 + 1e-9)));
  });
}
