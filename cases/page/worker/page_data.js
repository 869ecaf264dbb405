// What the page holds in its data elements, and the program's way to print a number.
const PageData = {
  text: (id) => document.getElementById(id).textContent,
  json: (id) => JSON.parse(PageData.text(id)),
  async bytes(id) {
    const letters = atob(PageData.text(id)), packed = new Uint8Array(letters.length);
    for (let k = 0; k < letters.length; ++k) packed[k] = letters.charCodeAt(k);
    const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
    return new Uint8Array(await new Response(stream).arrayBuffer());
  },
};

// Three digits or the whole number, as cases/text/digits.h: what lies half-way goes to the even digit.
function threeDigits(value) {
  const more = 40;  // further digits than a number half-way can have
  const rounded = (text, long) => {
    const [head, tail = ''] = long.split('e');
    const cut = head.length - more;
    if (!/^50*$/.test(head.slice(cut)) || Number(head[cut - 1] === '.' ? head[cut - 2] : head[cut - 1]) % 2 === 1) return text;
    return head.slice(0, cut).replace(/\.$/, '') + (tail && 'e' + tail);
  };
  const fixed = (decimals) => rounded(value.toFixed(decimals), value.toFixed(decimals + more));
  const size = Math.abs(value);
  if (size >= 999.5 && size < 999999.5) return fixed(0);
  if (size === 0) return '0';
  const digits = size >= 1e-3 ? 3 : 2;
  const short = (text) => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);
  const [head, power] = rounded(value.toExponential(digits - 1), value.toExponential(digits - 1 + more)).split('e');
  if (power >= -4 && power < digits) return short(fixed(Math.max(0, digits - 1 - power)));
  return short(head) + 'e' + power[0] + power.slice(1).padStart(2, '0');
}
