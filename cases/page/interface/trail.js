// What the last change did: the few figures that a change is made for, before and after, by the catalogue's names.
const keyFigures =
    ["margin", "gap_strain", "peak_stress", "screw_stress", "axial_stiffness", "force_across", "working_length"];

function figureOf(answer, name, load) {
  return answer?.figures?.find((figure) => figure.name === name && figure.load === load);
}

const shownOf = (figure) => withUnit(figure.shown ?? digits(figure.value), figure.shown_unit ?? figure.unit);

// By how much, for people; undefined where there is no such thing.
function changeText(before, after) {
  if (!Number.isFinite(before) || !Number.isFinite(after)) return undefined;
  if (before === after) return "0 %";
  if (before === 0 || (before < 0) !== (after < 0)) return undefined;
  const change = 100 * (after / before - 1);
  const size = Math.abs(change);
  if (size >= 900) return `${threeDigits(after / before)} times`;
  const text = size < 0.05 ? "0" : size < 1 ? size.toFixed(1) : size.toFixed(0);
  return `${text === "0" ? "" : change > 0 ? "+" : "\u2212"}${text} %`;
}

function rulesText(before, after) {
  const [was, now] = [before.rules_broken ?? [], after.rules_broken ?? []];
  const anew = now.filter((rule) => !was.includes(rule)), mended = was.filter((rule) => !now.includes(rule));
  const list = (rules) => rules.map((rule) => `"${rule}"`).join(", ");
  return [
    anew.length > 0 ? `now breaks the rule${anew.length > 1 ? "s" : ""} ${list(anew)}` : "",
    mended.length > 0 ? `no longer breaks ${list(mended)}` : ""
  ].filter(Boolean);
}

const shortLabel = (figure) => figure.label.replace(", largest", "");

function trailOf(saying, before, after) {
  const parts = keyFigures.flatMap((name) => {
    const [old, now] = [figureOf(before, name), figureOf(after, name)];
    if (!now || !old || (old.value === 0 && now.value === 0)) return [];
    const change = changeText(old.value, now.value);
    return [
      change === undefined ? `${shortLabel(now)} ${shownOf(now)} (was ${shownOf(old)})` :
                             `${shortLabel(now)} ${change}`
    ];
  });
  const all = [...parts, ...rulesText(before, after)];
  return all.length > 0 ? `${saying}: ${all.join("; ")}.` : `${saying}.`;
}

function showTiles(container, answer, before) {
  fill(container, keyFigures.flatMap((name) => {
    const figure = figureOf(answer, name);
    if (!figure || (figure.value === 0 && !(figureOf(before, name)?.value > 0))) return [];
    const fails = name === "margin" && !(figure.value >= 1);
    const change = before ? changeText(figureOf(before, name)?.value, figure.value) : undefined;
    const unit = figure.shown_unit ?? figure.unit;
    return [element(
        "div", {class: fails ? "tile fails" : "tile", title: figure.meaning, "data-figure": name},
        element(
            "span", {class: "label"}, name === "margin" ? "least margin (below 1 a part fails)" : figure.label),
        element("span", {class: "value"}, figure.shown),
        unit ? element("span", {class: "unit"}, ` ${unit}`) : undefined, element("span", {class: "change"}, [
          fails ? "fails" : "", change ? (change === "0 %" ? "unchanged" : change) : ""
        ].filter(Boolean).join(", ")))];
  }));
}
