// The core of a page under Node: what the worker does, without one.
import { readFileSync } from 'node:fs';
import { inflateRawSync } from 'node:zlib';
import { runInThisContext } from 'node:vm';

export function elementOf(html, id) {
  const begin = html.indexOf(' id="' + id + '">');
  const from = html.indexOf('>', begin) + 1;
  return html.slice(from, html.indexOf('</script>', from));
}

export const bytesOf = (html, id) => inflateRawSync(Buffer.from(elementOf(html, id), 'base64'));

export async function openPage(file, source) {
  const html = readFileSync(file, 'utf8');
  const startCore = runInThisContext(readFileSync(source + '/cases/page/worker/core_host.js', 'utf8') + '; startCore');
  const times = {};
  let last = performance.now();
  const lap = (name) => { const now = performance.now(); times[name] = now - last; last = now; };
  const wasm = bytesOf(html, 'core-wasm'), pack = bytesOf(html, 'core-pack');
  lap('inflate');
  const core = await startCore(wasm);
  lap('compile');
  const opened = core.open(pack);
  lap('open');
  if (opened.error) throw new Error(opened.error.text);
  return { core, html, times, facts: JSON.parse(elementOf(html, 'page-facts')), lap };
}

// What is a difference of figures, told as a share of one of them, or what is left of an equation that holds: noise of
// figures of size one.
const ofSizeOne = /\/change_of_[^/]*$|^\/trust\/checks\/\d+\/value$/;

// By how much a figure may differ, by its path and size. Without friction: by what sums in another order make of it;
// stresses of 1 MPa, as those of a hole that bears nothing are what is left of larger ones.
export const exactly = (path, size) =>
    1e-9 * Math.max(size, ofSizeOne.test(path) || path.endsWith('_mpa') ? 1 : 1e-3);

// With friction, slips are as the steps before have left them, and remember their rounding: 2e-5 of what is large in a
// construct (measured: 1e-5 at most; 2e-4 N, 2e-8 mm). Where little presses, the share of friction that is used is a ratio of noise;
// the factor to buckling is iterated to 1e-3.
const largeSizes = [['_n_mm', 1000], ['_n_mm_per_rad', 1000], ['_n', 100], ['_mm', 0.1], ['_mpa', 100]];
export const withFriction = (path, size) => {
  if (path.endsWith('buckling_factor')) return 2e-3 * size;
  if (path.endsWith('friction_use')) return 1e-4;
  const [, large] = largeSizes.find(([unit]) => path.endsWith(unit)) ?? ['', 1];
  return 2e-5 * Math.max(size, large);
};

// Paths of what differs: numbers by more than `tolerance(path, size)`. The check of buckling is told by its factor.
export function differences(one, other, tolerance, path = '', found = []) {
  if (one?.name === 'load factor to buckling' && other?.name === one.name) return found;
  if (typeof one === 'number' && typeof other === 'number') {
    if (!(Math.abs(one - other) <= tolerance(path, Math.max(Math.abs(one), Math.abs(other)))))
      found.push(`${path}: ${one} against ${other}`);
  } else if (one !== null && other !== null && typeof one === 'object' && typeof other === 'object') {
    for (const key of new Set([...Object.keys(one), ...Object.keys(other)]))
      differences(one[key], other[key], tolerance, path + '/' + key, found);
  } else if (one !== other) {
    found.push(`${path}: ${JSON.stringify(one)} against ${JSON.stringify(other)}`);
  }
  return found;
}
