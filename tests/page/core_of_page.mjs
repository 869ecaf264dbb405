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

// Paths of what differs: numbers by more than `tolerance` of the larger one, or of `least`; stresses of 1 MPa, as those
// of a hole that bears nothing are what is left of larger ones.
export function differences(one, other, tolerance, least, path = '', found = []) {
  if (typeof one === 'number' && typeof other === 'number') {
    const scale = Math.max(Math.abs(one), Math.abs(other), ofSizeOne.test(path) || path.endsWith('_mpa') ? 1 : least);
    if (!(Math.abs(one - other) <= tolerance * scale)) found.push(`${path}: ${one} against ${other}`);
  } else if (one !== null && other !== null && typeof one === 'object' && typeof other === 'object') {
    for (const key of new Set([...Object.keys(one), ...Object.keys(other)]))
      differences(one[key], other[key], tolerance, least, path + '/' + key, found);
  } else if (one !== other) {
    found.push(`${path}: ${JSON.stringify(one)} against ${JSON.stringify(other)}`);
  }
  return found;
}
