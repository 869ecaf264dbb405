// What may be done with the chosen hole: put in, change, move, take out.
function showHole(container, strip, hole, edit) {
  const at = strip.holes.find((one) => one.hole === hole);
  const screw = strip.screws.get(hole);
  const offered = at.kinds.filter((kind) => kind.cortices.length > 0);
  const refused = at.kinds.filter((kind) => kind.cortices.length === 0 && kind.why);
  const why = refused.length === 0 ?
      undefined :
      element(
          "details", {"data-key": "why"}, element("summary", {class: "quiet"}, "What it does not take, and why"),
          element(
              "ul", {},
              refused.map((kind) => element("li", {class: "quiet"}, `${kindWord(kind.kind)}: ${kind.why}`))));
  if (!screw) {
    const put = (kind, count) => button(
        `put-${kind.kind}-${count}`,
        `Put in ${kindWord(kind.kind)}${kind.cortices.length > 1 ? `, ${corticesWord(count)}` : ""}`,
        () => edit(
            {do: "put_screw", hole, kind: kind.kind, cortices: count},
            `${sentence(kindWord(kind.kind))} put into hole ${hole}`));
    fill(
        container, element("strong", {}, `Hole ${hole}, empty:`),
        offered.flatMap((kind) => [...kind.cortices].sort((a, b) => b - a).map((count) => put(kind, count))), why);
    return;
  }
  const choices = offered.some((kind) => kind.kind === screw.kind) ?
      offered :
      [...offered, {kind: screw.kind, cortices: [screw.cortices]}];
  const select = (id, label, options, value, done) =>
      [element("label", {"for": id, class: "quiet"}, label),
       element(
           "select", {id, "data-key": id, onchange: (event) => done(event.target.value)},
           options.map(
               ([one, text]) => element("option", {value: one, selected: String(one) === String(value)}, text)))];
  const counts = choices.find((kind) => kind.kind === screw.kind).cortices;
  const beside = (sense, text) => {
    const target = strip.freeBeside(hole, sense);
    return button(`beside${sense}`, text, () => strip.move(hole, target), {disabled: target === undefined});
  };
  fill(
      container, element("strong", {}, `Hole ${hole}, ${screw.label}${screw.size ? ` (${screw.size})` : ""}:`),
      select(
          "screw-kind", "kind", choices.map((kind) => [kind.kind, kindWord(kind.kind)]), screw.kind,
          (kind) =>
              edit({do: "change_screw", label: screw.label, kind}, `${screw.label} is now a ${kindWord(kind)}`)),
      select(
          "screw-cortices", "in", counts.map((count) => [count, corticesWord(count)]), screw.cortices,
          (count) => edit(
              {do: "change_screw", label: screw.label, cortices: Number(count)},
              `${screw.label} now holds in ${corticesWord(Number(count))}`)),
      beside(-1, "Move proximal"), beside(1, "Move distal"), button("out", "Take out", () => strip.toggle(hole)),
      why);
}

const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1);
