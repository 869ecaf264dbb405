// Charts with axes and units.
function axes(area, x, y, xTitle, yTitle) {
  const {left, right, top, bottom} = area;
  return [
    ticksBetween(y.low, y.high, 4)
        .flatMap(
            (tick) =>
                [element(
                     "svg:line",
                     {class: tick === 0 ? "axis" : "grid", x1: left, x2: right, y1: y.at(tick), y2: y.at(tick)}),
                 element("svg:text", {x: left - 6, y: y.at(tick) + 4, "text-anchor": "end"}, tickText(tick))]),
    x.ticks.flatMap(
        ({value, text}) =>
            [element("svg:line", {class: "grid", x1: x.at(value), x2: x.at(value), y1: top, y2: bottom}),
             text ? element("svg:text", {x: x.at(value), y: bottom + 17, "text-anchor": "middle"}, text) :
                    undefined]),
    element("svg:rect", {class: "axis", x: left, y: top, width: right - left, height: bottom - top}),
    element("svg:text", {x: (left + right) / 2, y: bottom + 36, "text-anchor": "middle"}, xTitle),
    element("svg:text", {x: left - 50, y: top - 12}, yTitle)
  ];
}

const scaleBetween = (low, high, from, to) =>
    ({low, high, at: (value) => from + (to - from) * (value - low) / (high - low)});

function pathOf(points) {
  let pen = false, path = "";
  for (const [x, y] of points) {
    if (!Number.isFinite(y)) {
      pen = false;
      continue;
    }
    path += `${pen ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`;
    pen = true;
  }
  return path;
}

// How wide a chart is drawn in this section, in its own units: as its pixels where it has room, so that a phone
// shows its words as large as a desk does.
const chartWidth = (section) => Math.min(Math.max(section.clientWidth - 34, 280), 640);

// Curves: [{name, points: [[x, y]..]}]; `behind` is drawn first, in the same scales.
function chart({width, label, curves, x, y, xTitle, yTitle, behind}) {
  const area = {left: 62, right: width - 38, top: 36, bottom: 290};
  const apart = (area.right - area.left) / Math.max(curves.length, 2);
  x.at = scaleBetween(x.low, x.high, area.left, area.right).at;
  const upright = scaleBetween(y.low, y.high, area.bottom, area.top);
  const line = (k, more) => ({class: `curve${k % 3}`, fill: "none", "stroke-width": 2.5, ...more});
  return element(
      "div", {class: "chart"},
      element(
          "svg:svg", {viewBox: `0 0 ${width} 372`, role: "img", "aria-label": label},
          behind ? behind(area, upright) : [], axes(area, x, upright, xTitle, yTitle),
          curves.map(
              (curve, k) => element(
                  "svg:path", line(k, {d: pathOf(curve.points.map(([a, b]) => [x.at(a), upright.at(b)]))}))),
          curves.map(
              (curve, k) =>
                  [element(
                       "svg:line",
                       line(k, {x1: area.left + apart * k, x2: area.left + apart * k + 34, y1: 356, y2: 356})),
                   element("svg:text", {x: area.left + apart * k + 42, y: 361}, curve.name)])));
}
