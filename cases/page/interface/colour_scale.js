// The scale of stress: control points of viridis (S. van der Walt and N. Smith 2015, CC0), linear between.
// Lightness rises evenly, so the order survives any colour blindness and a print in grey.
const scalePoints = [
  [0x44, 0x01, 0x54], [0x48, 0x28, 0x78], [0x3e, 0x49, 0x89], [0x31, 0x68, 0x8e], [0x26, 0x82, 0x8e],
  [0x1f, 0x9e, 0x89], [0x35, 0xb7, 0x79], [0x6e, 0xce, 0x58], [0xb5, 0xde, 0x2b], [0xfd, 0xe7, 0x25]
];

// The next of 1, 2, 2.5, 5 times a power of ten.
function roundUp(value) {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  return [1, 2, 2.5, 5, 10].find((step) => step * power >= value * (1 - 1e-12)) * power;
}

// Places of ticks from `low` to `high`, some `count` of them.
function ticksBetween(low, high, count) {
  const step = roundUp((high - low) / count);
  const ticks = [];
  for (let k = Math.ceil(low / step - 1e-9); k * step <= high + 1e-9 * step; ++k) ticks.push(k * step);
  return ticks;
}

const tickText = (value) => String(Number(value.toPrecision(6)));

// `mark`: the plate's largest stress as it is printed, {value, shown}, if the scale reaches so far.
function drawScale(container, highest, mark) {
  const width = chartWidth(container), left = 20, right = width - 20, y = 24;
  const at = (value) => left + (right - left) * (value / highest);
  const text = (x, high, words, anchor = "middle") =>
      element("svg:text", {x, y: high, "text-anchor": anchor, fill: "currentColor", "font-size": 13}, words);
  const stops = scalePoints.map(
      (rgb, k) =>
          element("svg:stop", {offset: k / (scalePoints.length - 1), "stop-color": `rgb(${rgb.join(",")})`}));
  const peakMark = mark && mark.value <= highest ?
      [
        element("svg:path", {d: `M${at(mark.value)} ${y} l-6 -8 l12 0 z`, fill: "currentColor"}),
        text(Math.min(Math.max(at(mark.value), 110), width - 110), 12, `largest of the plate: ${mark.shown} MPa`)
      ] :
      [];
  fill(
      container,
      element(
          "svg:svg", {
            viewBox: `0 0 ${width} 54`,
            role: "img",
            "aria-label": `Colours: von Mises stress from 0 to ${tickText(highest)} MPa`
          },
          element("svg:defs", {}, element("svg:linearGradient", {id: "stress-colours"}, stops)),
          element(
              "svg:rect",
              {x: left, y, width: right - left, height: 13, fill: "url(#stress-colours)", stroke: "currentColor"}),
          peakMark, ticksBetween(0, highest, 5).map((tick) => text(at(tick), y + 28, tickText(tick)))),
      element(
          "p", {class: "quiet"},
          "Von Mises stress, MPa, larger of both faces (screws: in the core); above the scale as its end."));
}
