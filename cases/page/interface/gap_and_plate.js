// Round the gap and along the plate, under the load that is seen.
// Windows of strain after Perren (S. M. Perren, J. Bone Joint Surg. Br. 84 (2002) 1093): below 2 % bone, below 10
// % cartilage, below 100 % granulation tissue.
const healingWindows = [
  {name: "bone", upTo: 2, colour: "var(--band1)"}, {name: "cartilage", upTo: 10, colour: "var(--band2)"},
  {name: "granulation", upTo: 100, colour: "var(--band3)"}
];

function bands(area, upright) {
  let from = 0;
  return healingWindows.flatMap((window) => {
    const parts = [];
    for (const sign of [1, -1]) {
      const [a, b] = [sign * from, sign * window.upTo];
      const low = Math.max(Math.min(a, b), upright.low), high = Math.min(Math.max(a, b), upright.high);
      if (high <= low) continue;
      const tall = upright.at(low) - upright.at(high);
      parts.push(element("svg:rect", {
        x: area.left,
        width: area.right - area.left,
        y: upright.at(high),
        height: tall,
        style: {fill: window.colour}
      }));
      if (tall > 16)
        parts.push(element(
            "svg:text",
            {x: area.right - 6, y: 0.5 * (upright.at(low) + upright.at(high)) + 4, "text-anchor": "end"},
            window.name));
    }
    from = window.upTo;
    return parts;
  });
}

// The end of an axis: the value itself leaves a tenth free.
const endOf = (value) => 1.1 * value;

function gapChart(gap, width) {
  const points = (key) => {
    const list = gap.edge.map((spot) => [spot.around_deg, 100 * (spot[key] ?? NaN)]).sort((a, b) => a[0] - b[0]);
    if (list.length === 0) return list;
    const [[from, before], [to, after]] = [list.at(-1), list[0]];  // where the ring is cut open for the chart
    const cut = before + (after - before) * (360 - from) / (to + 360 - from);
    return [[0, cut], ...list, [360, cut]];
  };
  const curves = [
    {name: "axial strain", points: points("axial_strain")}, {name: "shear strain", points: points("shear_strain")}
  ];
  const values = curves.flatMap((curve) => curve.points.map((point) => point[1])).filter(Number.isFinite);
  if (values.length === 0)
    return element("p", {}, "The fracture is closed all round: change over gap has no meaning.");
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const low = least < 0 ? -endOf(Math.max(-least, 2)) : 0,
        high = most > 0.05 * -low ? endOf(Math.max(most, 2)) : 0.1 * -low || 2.2;
  const axial = curves[0].points.map((point) => point[1]).filter(Number.isFinite);
  const sides = [["plate's side", 0], ["+y", 90], ["far side", 180], ["\u2212y", 270], ["plate's side", 360]];
  const range = axial.length === 0 ?
      "closed" :
      `from ${threeDigits(Math.min(...axial))} to ${threeDigits(Math.max(...axial))} per cent`;
  return chart({
    width,
    label: `Strain of the gap round the bone, axial ${range}`,
    curves,
    x: {low: 0, high: 360, ticks: sides.map(([text, value]) => ({value, text}))},
    y: {low, high},
    xTitle: "round the fracture's edge; negative closes it",
    yTitle: "strain, % of the gap",
    behind: bands
  });
}

function plateChart(plate, opened, filled, width) {
  const curves = [["top face", "top_mpa"], ["bone's face", "bottom_mpa"]].map(
      ([name, key]) => ({name, points: plate.along_mm.map((x, k) => [x, plate[key][k]])}));
  const values = curves.flatMap((curve) => curve.points.map((point) => point[1])).filter(Number.isFinite);
  if (values.length === 0) return element("p", {}, "No stress is known along the plate.");
  const least = Math.min(0, ...values), most = Math.max(0, ...values);
  const holes = opened.plate.holes;
  const everyHole = Math.ceil(22 * holes.length / (width - 100));
  const behind = (area) => {
    const at = scaleBetween(0, opened.plate.length_mm, area.left, area.right).at;
    const middle = alongPlate(holes, opened.fracture.position_mm);
    const wide = Math.max(opened.fracture.gap_mm, 0.004 * opened.plate.length_mm);
    return [
      element("svg:rect", {
        x: at(middle - 0.5 * wide),
        width: at(wide) - at(0),
        y: area.top,
        height: area.bottom - area.top,
        style: {fill: "var(--band3)"}
      }),
      element("svg:text", {x: at(middle), y: area.top + 14, "text-anchor": "middle"}, "fracture"),
      holes.map((hole) => element("svg:circle", {
                  class: filled.has(hole.hole) ? "filled" : "empty-hole",
                  cx: at(hole.along_mm),
                  cy: area.bottom - 7,
                  r: 4
                }))
    ];
  };
  return chart({
    width,
    label: `Stress along the plate, from ${threeDigits(Math.min(...values))} to ${
        threeDigits(Math.max(...values))} MPa`,
    curves,
    x: {
      low: 0,
      high: opened.plate.length_mm,
      ticks: holes.map((hole, k) => ({value: hole.along_mm, text: k % everyHole === 0 ? String(hole.hole) : ""}))
    },
    y: {low: least < 0 ? endOf(least) : 0, high: most > 0 ? endOf(most) : 0.1 * -least || 1},
    xTitle: "holes, proximal to distal (dark: filled)",
    yTitle: "stress along the plate, MPa",
    behind
  });
}

// A load by its name, and how many times as large as entered.
const loadWords = (load) =>
    `"${load.load}"${(load.factor ?? 1) === 1 ? "" : `, ${threeDigits(load.factor)} times as large as entered`}`;

function showGapAndPlate(opened, answer, seen, stale) {
  const name = answer.loads[seen]?.load;
  const load = (answer.findings?.loads ?? answer.quick?.loads ?? []).find((one) => one.load === name);
  const share = load?.gap?.share_of_edge;
  const part = (key) => `${digits(100 * share[key])} %`;
  const under = element("p", {class: "quiet"}, name ? `Under ${loadWords(answer.loads[seen])}.` : "");
  fill(
      byId("gap"), element("h2", {id: "gap-heading"}, "Strain of the gap"), under,
      load?.gap?.edge ? [gapRing(load.gap), gapChart(load.gap, chartWidth(byId("gap")))] : undefined,
      share ? element(
                  "p", {},
                  `Of the edge ${part("bone")} is strained by up to 2 % (bone can form), ${
                      part("cartilage")} by 2 to 10 % (cartilage), ${
                      part("granulation")} by 10 to 100 % (granulation tissue), ${part("none")} by more; ${
                      part("closed")} is closed.`) :
              undefined,
      element("p", {class: "quiet"}, "Windows: S. M. Perren, J. Bone Joint Surg. Br. 84 (2002) 1093."));
  const plate = (answer.along_plate ?? []).find((one) => one.load === name);
  fill(
      byId("plate"), element("h2", {id: "plate-heading"}, "Stress along the plate"), under.cloneNode(true),
      plate ?
          element(
              "div", {class: stale ? "stale" : ""},
              plateChart(
                  plate, opened, new Set(answer.screws.map((screw) => screw.hole)), chartWidth(byId("plate")))) :
          undefined,
      element(
          "p", {class: "quiet"},
          stale || !plate ?
              "Being worked out for the present state." :
              "Of the section as a beam; at holes' rims it is higher, as the largest plate stress says."));
}
