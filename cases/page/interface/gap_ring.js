// The fracture's edge as a ring, seen along the bone: which tissue can form where, by Perren's windows
// (healingWindows). Each arc says its window in a word and has a hatch of its own, so that none is told by its
// colour alone.
const ringWindows = [
  ...healingWindows.map((window, k) => ({...window, hatch: [0, 5, 2.5][k]})),
  {name: "above 100 %", upTo: Infinity, colour: "var(--text)", hatch: 0}
];

const ringClosed = {
  name: "closed",
  colour: "var(--metal)",
  hatch: 0
};

const windowOf = (spot) =>
    (Number.isFinite(spot.axial_strain) ?
         ringWindows.find((window) => 100 * Math.abs(spot.axial_strain) <= window.upTo) :
         ringClosed);

// Arcs of one window each: {window, from, to}, degrees; every spot reaches half-way to its neighbours.
function ringArcs(edge) {
  const spots = [...edge].sort((a, b) => a.around_deg - b.around_deg);
  const arcs = spots.map((spot, k) => {
    const before = k > 0 ? spots[k - 1].around_deg : spots.at(-1).around_deg - 360;
    const after = k + 1 < spots.length ? spots[k + 1].around_deg : spots[0].around_deg + 360;
    return {window: windowOf(spot), from: (before + spot.around_deg) / 2, to: (spot.around_deg + after) / 2};
  });
  const joined = [];
  for (const arc of arcs)
    if (joined.at(-1)?.window === arc.window)
      joined.at(-1).to = arc.to;
    else
      joined.push({...arc});
  if (joined.length > 1 && joined[0].window === joined.at(-1).window) joined[0].from = joined.pop().from - 360;
  return joined;
}

function gapRing(gap) {
  if (!(gap.edge?.length > 2)) return undefined;
  const [x, y, inner, outer] = [160, 112, 48, 72];
  const at = (degrees, radius) => {  // from the plate's side, upwards, towards +y
    const angle = Math.PI * degrees / 180;
    return [x + radius * Math.sin(angle), y - radius * Math.cos(angle)];
  };
  const round = (degrees, radius) => at(degrees, radius).map((value) => value.toFixed(2)).join(" ");
  const arcs = ringArcs(gap.edge);
  const shape = ({from, to}) => {
    const middle = (from + to) / 2;  // by way of the middle: an arc from a place to itself is no arc
    const bow = (radius, sense, ends) =>
        ends.map((end) => `A${radius} ${radius} 0 0 ${sense} ${round(end, radius)}`).join("");
    return `M${round(from, outer)}${bow(outer, 1, [middle, to])}L${round(to, inner)}${
        bow(inner, 0, [middle, from])}Z`;
  };
  const hatch = ({window, from, to}) => {
    if (!(window.hatch > 0)) return [];
    const count = Math.floor((to - from) / window.hatch);
    return Array.from({length: count}, (_, k) => {
      const angle = from + (k + 0.5) * (to - from) / count;
      const [[x1, y1], [x2, y2]] = [at(angle, inner), at(angle, outer)];
      return element("svg:line", {class: "hatch", x1, y1, x2, y2});
    });
  };
  const word = ({window, from, to}) => {
    if (to - from < 12) return undefined;
    const whole = arcs.length === 1;
    const [left, top] = whole ? [x, y + 4] : at((from + to) / 2, outer + 9);
    const side = whole || Math.abs(left - x) < 12 ? "middle" : left > x ? "start" : "end";
    const lower = whole ? 0 : 4 + 6 * Math.sign(Math.round((top - y) / outer));
    return element("svg:text", {x: left, y: top + lower, "text-anchor": side}, window.name);
  };
  const words =
      arcs.map((arc) => `${arc.window.name} from ${arc.from.toFixed(0)} to ${arc.to.toFixed(0)} degrees`);
  return element(
      "svg:svg", {
        class: "ring",
        viewBox: "0 0 320 222",
        role: "img",
        "aria-label": `Tissue that can form round the edge, from the plate's side towards +y: ${words.join("; ")}`
      },
      element("svg:rect", {class: "plate", x: x - 34, y: y - outer - 34, width: 68, height: 11, rx: 3}),
      element("svg:text", {x: x + 40, y: y - outer - 24}, "plate"),
      arcs.map(
          (arc) =>
              [element("svg:path", {class: "arc", d: shape(arc), style: {fill: arc.window.colour}}), hatch(arc)]),
      arcs.length === 1 ? undefined :
                          element("svg:text", {x: x + inner - 6, y: y + 4, "text-anchor": "end"}, "+y"),
      arcs.map(word));
}
