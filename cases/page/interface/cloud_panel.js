// All rows of a study: two figures chosen, a point told, and its construct solved on the spot.
const listedAtOnce = 12, mostListed = 200, failedAtOnce = 20;

class CloudPanel {
  // `change(state, saying)`: to a point's construct.
  constructor(container, data, change) {
    Object.assign(this, {container, data, change, pointed: data.own, asked: undefined, notice: ""});
    const known = (name) => Math.max(0, data.columns.findIndex((column) => column.name === name && !column.load));
    this.axes = data.axes.map((axis, k) => ({column: known(axis.name) || k, low: axis.low_is_better}));
    this.rows = [...data.state].map((_, row) => row);
    this.chartPlace = element("div", {
      class: "chart",
      tabindex: 0,
      role: "group",
      "aria-label": "Points: arrow keys go along the front, or from left to right; Enter shows the construct",
      onkeydown: (event) => this.key(event),
      onpointermove: (event) => this.point(event),
      onclick: (event) => this.press(event)
    });
    this.told = element("p", {id: "study-told", role: "status", "aria-live": "polite"});
    this.same = element("p", {id: "study-same", class: "quiet"});
    this.list = element("div");
    this.make();
    this.choose();
  }

  noun() {
    return this.data.noun === "layouts" ? "layout" : "row";
  }

  titleOf(column) {
    const {label, unit, load} = this.data.columns[column];
    return `${label}${unit ? `, ${unit}` : ""}${load ? ` (${load})` : ""}`;
  }

  make() {
    const {data, axes: chosen} = this;
    const pick = (k, name) => {
      const column = element(
          "select", {
            id: `study-${name}`,
            onchange: () => {
              chosen[k].column = Number(column.value);
              chosen[k].low = data.columns[chosen[k].column].low_is_better ?? true;
              better.value = chosen[k].low ? "low" : "high";
              this.choose();
            }
          },
          data.columns.map((_, c) => element("option", {value: c}, this.titleOf(c))));
      column.value = String(chosen[k].column);
      const better = element(
          "select", {
            "aria-label": `${name}: which way is better`,
            onchange: () => {
              chosen[k].low = better.value === "low";
              this.choose();
            }
          },
          element("option", {value: "low"}, "low is better"),
          element("option", {value: "high"}, "high is better"));
      better.value = chosen[k].low ? "low" : "high";
      return element(
          "span", {class: "choice"},
          element("label", {"for": `study-${name}`}, name === "x" ? "Across" : "Upwards"), column, better);
    };
    const count = data.shown ? data.shown.length : data.rows;
    const sample = data.shown ? element(
                                    "p", {class: "caution-line"},
                                    `Of ${data.rows} ${data.noun} this page holds ${
                                        count}: the front, the best, and an even sample of the ` +
                                        "others. All of them are in rows.csv of the run.") :
                                undefined;
    fill(
        this.container, element("h2", {id: "study-heading"}, `All ${data.rows} ${data.noun}`), sample,
        this.withoutResult(),
        element(
            "p", {},
            `Each point is a ${this.noun()}, at its worst of all loads. A click on a point, or Enter, solves ` +
                "its construct here and shows it below."),
        element("div", {class: "bar"}, pick(0, "x"), pick(1, "y")),
        element(
            "div", {class: "study"}, element("div", {}, this.chartPlace, this.legend(), this.told, this.same),
            this.list));
  }

  withoutResult() {
    const rows = this.rows.filter((row) => this.data.state[row] === "f");
    if (rows.length === 0) return undefined;
    return element(
        "details", {"data-key": "no-result"},
        element("summary", {class: "caution-line"}, `${rows.length} of them have no result, and no point`),
        element(
            "ul", {},
            rows.slice(0, failedAtOnce)
                .map(
                    (row) => element(
                        "li", {}, `${this.nameOf(row)}: ${this.data.reasons[row] ?? "no reason is known"}`)),
            rows.length > failedAtOnce ? element("li", {}, "and others, see rows.csv of the run") : undefined));
  }

  legend() {
    const kinds = this.kinds();
    const mark = (kind) => element(
        "svg:svg", {viewBox: "0 0 14 14", width: 14, height: 14, "aria-hidden": "true", class: "cloud"},
        element(
            "svg:path",
            {class: `points ${kind.mark}`, d: kind.mark === "cross" ? "M4.5 4.5l5 5m0 -5l-5 5" : "M7 7h0"}));
    const front = element(
        "svg:svg", {viewBox: "0 0 14 14", width: 14, height: 14, "aria-hidden": "true", class: "cloud"},
        element("svg:path", {class: "front-mark", d: "M7 2l5 5l-5 5l-5 -5z"}));
    return element(
        "p", {class: "quiet legend"}, kinds.map((kind) => [mark(kind), `${kind.name} (${kind.rows.length}) `]),
        front, "on the front: none is better in both");
  }

  kinds() {
    const of = (letters) => this.rows.filter((row) => letters.includes(this.data.state[row]));
    const canBeTouched = (row) => !this.data.touch || this.data.touch[row] > 0;
    const good = of("k");
    return [
      {name: "outside the limits", rows: of("o"), mark: "outside"},
      {name: "not to be trusted", rows: of("d"), mark: "cross"}, {
        name: "shown only: other bodies than this page's",
        rows: good.filter((row) => !canBeTouched(row)),
        mark: "outside"
      },
      {
        name: this.data.limits || "with a result that passed its checks",
        rows: good.filter(canBeTouched),
        mark: "inside"
      }
    ].filter((kind) => kind.rows.length > 0);
  }

  // The axes have changed.
  choose() {
    const values = this.axes.map((axis) => this.data.values[axis.column].map((value) => value ?? NaN));
    const wish = (k) => (this.axes[k].low ? values[k] : values[k].map((value) => -value));
    const asFirst = this.data.axes.every((axis, k) => {
      const column = this.data.columns[this.axes[k].column];
      return axis.name === column.name && !column.load && axis.low_is_better === this.axes[k].low;
    });
    const kept = this.rows.filter((row) => this.data.state[row] === "k");
    // What is varied is neither better nor worse: there is no front then.
    this.isWeighed = this.axes.every((axis) => !this.data.columns[axis.column].varied);
    this.front = !this.isWeighed              ? [] :
        asFirst && this.data.front.length > 0 ? this.data.front :
                                                frontOf(kept, wish(0), wish(1));
    this.order =
        this.front.length > 0 ? this.front : [...this.rows].sort((a, b) => values[0][a] - values[0][b] || a - b);
    this.chart = new CloudChart(...values, this.titleOf(this.axes[0].column), this.titleOf(this.axes[1].column));
    this.draw();
    this.showFront(asFirst);
  }

  draw() {
    const marked = this.data.own === undefined ? [] : [{row: this.data.own, name: "as entered"}];
    const label = `${this.data.rows} ${this.data.noun}: ${this.titleOf(this.axes[1].column)} over ${
        this.titleOf(this.axes[0].column)}; ${this.front.length} on the front`;
    this.chartPlace.replaceChildren(this.chart.draw(label, this.kinds(), this.front, marked, this.pointed));
  }

  showFront(asFirst) {
    const [x, y] = this.axes.map((axis) => axis.column);
    const isFront = this.front.length > 0;
    const some = this.order.slice(0, listedAtOnce), others = this.order.slice(listedAtOnce, mostListed);
    const line = (row) =>
        [button(`study-row-${row}`, this.nameOf(row), () => this.show(row)), this.valueAt(x, row),
         this.valueAt(y, row)];
    const table = (caption, rows) =>
        tableOf(caption, [this.noun(), this.titleOf(x), this.titleOf(y)], rows.map(line), [1, 2]);
    fill(
        this.list,
        this.isWeighed && !isFront ? element("p", {}, "Nothing is on the front: no row keeps the limits.") :
                                     undefined,
        table(
            isFront ? `On the front, by the first figure${asFirst ? "" : ", found from five digits"}.` :
                      "By what stands across.",
            some),
        others.length > 0 ?
            element(
                "details", {"data-key": "more-front"}, element("summary", {}, `${others.length} more`),
                table(isFront ? "Further along the front." : "Further rows.", others)) :
            undefined);
  }

  valueAt(column, row) {
    const value = this.data.values[column][row];
    return value === null ? "not known" : typeof value === "number" ? digits(value) : String(value);
  }

  number(row) {
    return (this.data.shown ? this.data.shown[row] : row) + 1;
  }

  nameOf(row) {
    const {data} = this;
    if (data.chosen) {
      const holes = data.chosen[row].map((screw) => data.screws[screw].hole).filter((hole) => hole > 0);
      return `${this.number(row)}: holes ${holes.sort((a, b) => a - b).join(", ")}`;
    }
    const said = data.variables.map(
        (variable, k) => `${variable.label} ${withUnit(data.settings[k][row][0], variable.unit)}`);
    return `${this.number(row)}: ${said.join(", ")}`;
  }

  tell(row) {
    const words = {k: "", o: "outside the limits", d: "NOT TO BE TRUSTED", f: "no result"}[this.data.state[row]];
    const figures = this.axes.map(
        (axis) => `${this.data.columns[axis.column].label} ${
            withUnit(this.valueAt(axis.column, row), this.data.columns[axis.column].unit)}`);
    const margin = this.data.columns.findIndex((column) => column.name === "margin" && !column.load);
    const least = margin < 0 ? undefined : this.data.values[margin][row];
    const fails = least !== undefined && least !== null && least < 1 ? `FAILS: least margin ${digits(least)}` : "";
    const reason = this.data.reasons[row];
    const parts =
        [...figures, words, fails, this.front.includes(row) ? "on the front" : "", reason, this.whyNot(row)];
    return `${sentence(this.noun())} ${this.nameOf(row)}. ${parts.filter(Boolean).join("; ")}.`;
  }

  // Why it cannot be solved here.
  whyNot(row) {
    const {touch, whys, why} = this.data;
    if (!touch || touch[row] > 0) return "";
    return `cannot be touched here: ${(why[whys[row]] ?? "its case has no construct").replace(/\.$/, "")}`;
  }

  at(event) {
    const svg = this.chartPlace.firstChild;
    const box = svg.getBoundingClientRect();
    const scale = 640 / box.width;
    return this.chart.nearest((event.clientX - box.left) * scale, (event.clientY - box.top) * scale, 16);
  }

  point(event) {
    const row = this.at(event);
    if (row === undefined || row === this.pointed) return;
    this.see(row);
  }

  press(event) {
    const row = this.at(event);
    if (row !== undefined) this.show(row);
  }

  see(row) {
    this.pointed = row;
    this.told.textContent = this.tell(row);
    this.draw();
  }

  key(event) {
    const step = {ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1}[event.key];
    if (step && this.order.length > 0) {
      const now = this.order.indexOf(this.pointed);
      const next = now < 0 ? (step > 0 ? 0 : this.order.length - 1) : now + step;
      this.see(this.order[Math.min(Math.max(next, 0), this.order.length - 1)]);
    } else if (event.key === "Enter" && this.pointed !== undefined) {
      this.show(this.pointed);
    } else {
      return;
    }
    event.preventDefault();
  }

  // Its construct, solved.
  show(row) {
    this.see(row);
    this.same.textContent = "";
    if (this.whyNot(row)) return;
    this.asked = {row, state: {changes: this.changesOf(row), variant: 0}};
    this.change(this.asked.state, `${sentence(this.noun())} ${this.nameOf(row)}`);
  }

  changesOf(row) {
    const {data} = this;
    if (row === data.own) return {};
    if (data.chosen) {
      const screws = data.chosen[row].map((screw) => data.screws[screw]);
      return {screw: screws, ...(data.steps ? {step: stepsWith(data.steps, data.labels, screws)} : {})};
    }
    const changed = {};
    data.variables.forEach(
        (variable, k) =>
            variable.paths.forEach((path) => setInCase(changed, data.entered, path, data.settings[k][row][1])));
    for (const key of Object.keys(changed))
      if (JSON.stringify(changed[key]) === JSON.stringify(data.entered[key])) delete changed[key];
    return changed;
  }

  // What was solved here against what the row says.
  hold(answer) {
    if (!this.asked || !answer.figures || answer.detail === "quick") return;
    if (linkOf({changes: answer.changes, variant: answer.variant}) !== linkOf(this.asked.state)) return;
    const {data, asked: {row}} = this;
    let count = 0;
    const other = [];
    data.columns.forEach((column, c) => {
      const figure = column.varied ? undefined : figureOf(answer, column.name, column.load);
      const value = data.values[c][row];
      if (!figure || value === null) return;
      ++count;
      if (figure.shown !== threeDigits(value))
        other.push(`${this.titleOf(c)}: row ${threeDigits(value)}, here ${figure.shown}`);
    });
    const mesh =
        data.touch?.[row] === 1 ? " The row's mesh was made ready for other screws than this page's." : "";
    this.same.textContent =
        (other.length === 0 ?
             `Solved here: all ${count} figures of the ${this.noun()} are the same, to the printed digits.` :
             `Solved here: ${other.length} of ${count} figures differ from the ${this.noun()}'s. ${
                 other.join("; ")}.`) +
        mesh;
  }
}

// The case's steps without the screws that are not there; screws that no step names go in after the last one.
function stepsWith(steps, own, screws) {
  const there = new Set(screws.map((screw) => screw.label));
  const isGone = (label) => own.includes(label) && !there.has(label);
  const left = [];
  for (const step of steps) {
    const kept = {};
    for (const [key, value] of Object.entries(step)) {
      if (!["insert", "tighten", "screw", "remove"].includes(key)) {
        kept[key] = value;
        continue;
      }
      const labels = [value].flat().filter((label) => !isGone(label));
      if (labels.length > 0) kept[key] = Array.isArray(value) ? labels : labels[0];
    }
    if (Object.keys(kept).length > 0) left.push(kept);
  }
  const inserted = new Set(left.flatMap((step) => [step.insert ?? [], step.screw ?? []].flat()));
  for (const screw of screws)
    if (!inserted.has(screw.label)) left.push({screw: screw.label});
  return left;
}

// Sets one key of a case in its changes; lists are taken over whole, as a merge patch has them.
function setInCase(changed, entered, path, value) {
  const top = path[0].name;
  if (!(top in changed)) changed[top] = structuredClone(entered[top] ?? (path[0].index === undefined ? {} : []));
  let holder = changed;
  path.forEach((step, k) => {
    if (k === path.length - 1) {
      holder[step.name] = value;
      return;
    }
    holder[step.name] ??= step.index === undefined ? {} : [];
    holder = step.index === undefined ? holder[step.name] : holder[step.name][step.index];
  });
}
