// How many times as large as entered each load is, as the case of the state says it.
function factorsIn(caseText) {
  return caseText.split(/^\[\[load\]\]$/m).slice(1).map((part) => {
    const own = part.split(/^\[/m)[0].match(/^factor = ([-+\d.eE]+)$/m);
    return own ? Number(own[1]) : 1;
  });
}

const withFactors = (answer) => {
  const factors = factorsIn(answer.case_text);
  return answer.loads.map((load, k) => ({factor: factors[k] ?? 1, ...load}));
};

// Loads: which one is seen, how many times as large, which are kept, and two or more acting together.
class LoadPanel {
  // `see(load)` shows another load; `edit(edit, saying)` changes the case, `preview(edit)` shows what it would do.
  constructor(container, see, edit, preview) {
    Object.assign(this, {container, see, edit, preview, chosen: new Set()});
  }

  show(answer, seen) {
    const loads = answer.loads;
    if (this.container.querySelector("[data-held]")) return;  // under a hand
    this.chosen = new Set([...this.chosen].filter((k) => k < loads.length));
    const chosen = () => [...this.chosen].sort((a, b) => a - b);
    const names = () => chosen().map((k) => loads[k].load).join(" and ");
    const together = button(
        "combine", "Chosen ones together, as one more",
        () => this.edit({do: "combine_loads", loads: chosen(), name: names()}, `${names()} act together`));
    const only = button(
        "keep-loads", "Only the chosen ones",
        () => this.edit({do: "keep_loads", loads: chosen()}, `Only ${names()}`));
    const all = button("all-loads", "All as entered", () => this.edit({do: "all_loads"}, "All loads as entered"));
    const allow = () => {
      together.disabled = this.chosen.size < 2;
      only.disabled = this.chosen.size === 0 || this.chosen.size === loads.length;
    };
    allow();
    fill(
        this.container, element("h2", {id: "loads-heading"}, "Loads"),
        element(
            "fieldset", {class: "loads"},
            element("legend", {class: "quiet"}, "Seen in the picture and in the charts"),
            loads.map((load, k) => this.row(load, k, seen, allow))),
        element("div", {class: "bar"}, together, only, all));
  }

  row(load, k, seen, allow) {
    const factor = load.factor ?? 1;
    const times = element("input", {
      type: "range",
      min: 0.1,
      max: 3,
      step: 0.05,
      value: factor,
      id: `times-${k}`,
      "data-key": `times-${k}`,
      "aria-valuetext": `${threeDigits(factor)} times`,
      "aria-label": `How many times ${load.load}`
    });
    const shown = element("output", {"for": `times-${k}`}, `\u00d7 ${threeDigits(factor)}`);
    const editNow = () => ({do: "scale_load", load: k, factor: Number(times.value)});
    times.addEventListener("input", () => {
      times.dataset.held = "yes";
      shown.textContent = `\u00d7 ${threeDigits(Number(times.value))}`;
      times.setAttribute("aria-valuetext", `${threeDigits(Number(times.value))} times`);
      this.preview(editNow());
    });
    whenLetGo(times, () => {
      this.edit(editNow(), `${load.load} ${threeDigits(Number(times.value))} times as large as entered`);
    });
    return element(
        "div", {class: "load"}, element("input", {
          type: "radio",
          name: "seen",
          id: `see-${k}`,
          "data-key": `see-${k}`,
          checked: k === seen,
          onchange: () => this.see(k)
        }),
        element(
            "label", {"for": `see-${k}`}, load.load, element("br"),
            element("span", {class: "quiet"}, [...[load.acts].flat(), load.supports].join("; "))),
        element(
            "label", {class: "choice quiet"}, element("input", {
              type: "checkbox",
              id: `with-${k}`,
              "data-key": `with-${k}`,
              "aria-label": `Choose ${load.load}`,
              checked: this.chosen.has(k),
              onchange: (event) => {
                this.chosen[event.target.checked ? "add" : "delete"](k);
                allow();
              }
            }),
            "choose"),
        element("div", {class: "times"}, times, shown));
  }
}
