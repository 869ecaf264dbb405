// The page: what is asked of the core, and what is shown of its answers.
const Page = {
  facts: undefined,
  opened: undefined,
  core: undefined,
  answer: undefined,  // of the present state, as shown
  before: undefined,  // of the state before the last change
  field: undefined,
  seenLoad: 0,
  seenStep: undefined,
  pending: false,      // no verdict on the present state yet
  settled: undefined,  // the answer of the present state: what a preview of a slider is held against

  async start() {
    this.facts = PageData.json("page-facts");
    this.opened = this.facts.opened;
    byId("name").textContent = this.opened.name;
    byId("origin").textContent =
        `${this.opened.file}; ${this.facts.program.name} ${this.facts.program.version}, ${this.facts.date}`;
    const [caution, ...more] = this.facts.cautions;
    fill(byId("caution"), `${caution} `, element("span", {class: "more"}, more[0]));
    const linked = stateOf(location.hash);
    this.makeParts();
    byId("live").hidden = false;
    byId("still").hidden = true;
    this.bytes = await PageData.bytes("first-bytes");
    this.variantShown = 0;
    const first = this.facts.first;
    this.answer = this.settled = first;
    try {
      this.view.start();
    } catch (fault) {
      this.view = undefined;
      fill(byId("views"), element("p", {}, `No picture: ${fault.message}`));
    }
    this.view?.show(this.bodiesOf(0));
    if (first.fields?.length > 0)
      this.field =
          this.fieldOf(first.fields[0], this.bytes.buffer, this.bytes.byteOffset + this.facts.first_bytes_at);
    this.show();
    showEnd(this.facts);
    this.busy("The core is starting");
    try {
      this.core = await PageCore.start();
    } catch (fault) {
      this.refuse(`Nothing can be changed here: the core did not start (${fault.message}).`);
      return;
    } finally {
      this.busy("");
    }
    if (linked) await this.go(linked, "As in the link");
    document.documentElement.dataset.ready = "yes";
  },

  makeParts() {
    const [first, last] = [this.opened.plate.holes[0], this.opened.plate.holes.at(-1)];
    const centre = [0, 1, 2].map((k) => 0.5 * (first.at[k] + last.at[k]));
    this.camera = new Camera([centre[0], centre[1], centre[2] - 4], 0.6 * this.opened.plate.length_mm);
    const edit = (one, saying) => this.edit(one, saying), preview = (one) => this.preview(one);
    this.strip = new PlateStrip(byId("strip"), edit, (hole) => showHole(byId("details"), this.strip, hole, edit));
    this.view = this.makeView("At hand", true);
    this.picture = new PicturePanel(byId("picture"), this.camera, () => this.showPicture());
    this.steps = new StepsPanel(
        byId("steps"), edit, (step) => this.see(step === this.seenStep ? {load: this.seenLoad} : {step}));
    this.loads = new LoadPanel(byId("loads"), (load) => this.see({load}), edit, preview);
    this.tissue = new TissuePanel(byId("tissue"), edit, preview);
    this.kept = new KeptPanel(
        byId("views"), byId("kept"), () => this.show(), (one) => this.change(one.state, `Back to "${one.name}"`));
    byId("undo").addEventListener("click", () => this.back(History.undo(), "Undone"));
    byId("redo").addEventListener("click", () => this.back(History.redo(), "Done again"));
    byId("as-entered").addEventListener("click", () => this.change({changes: {}, variant: 0}, "As entered"));
    byId("keep").addEventListener("click", () => this.keep());
    this.makeVariants();
    document.addEventListener("keydown", (event) => this.key(event));
    window.addEventListener("resize", () => this.redraw());
    const narrow = window.matchMedia("(max-width: 62rem)");  // there the trail stands at once below the strip
    const place = () =>
        (narrow.matches ? byId("strip-frame").after(byId("now")) : byId("side").prepend(byId("now")));
    narrow.addEventListener("change", place);
    place();
    window.addEventListener("hashchange", () => {
      const state = stateOf(location.hash);
      if (state && linkOf(state) !== linkOf(History.present)) this.change(state, "As in the link");
    });
    window.matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => this.showPicture());
    let opened = [];
    window.addEventListener("beforeprint", () => {
      opened = [...document.querySelectorAll("#live details:not([open])")];
      opened.forEach((one) => {
        one.open = true;
      });
      this.drawNow();
    });
    window.addEventListener("afterprint", () => opened.forEach((one) => {
      one.open = false;
    }));
    History.show();
  },

  makeVariants() {
    if (this.opened.variants.length < 2) return;
    this.variants = element(
        "select", {
          id: "variant",
          onchange: () => this.change(
              {changes: History.present.changes, variant: Number(this.variants.value)},
              `${this.opened.variants[this.variants.value].label}`)
        },
        this.opened.variants.map((one, k) => element("option", {value: k}, one.label || "as entered")));
    byId("variants")
        .append(
            element("span", {class: "choice"}, element("label", {"for": "variant"}, "Prepared"), this.variants));
  },

  makeView(name, isOwn) {
    const view = new View(this.camera, name, {
      changed: () => this.redraw(),
      pressed: (hole) => {
        if (isOwn) this.strip.toggle(hole);
      },
      dropped: isOwn ? (from, to) => this.strip.move(from, to) : undefined
    });
    byId("views").append(view.root);
    return view;
  },

  key(event) {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key === "z" && !event.shiftKey)
      this.back(History.undo(), "Undone");
    else if (key === "y" || (key === "z" && event.shiftKey))
      this.back(History.redo(), "Done again");
    else
      return;
    event.preventDefault();
  },

  // ---- what is asked

  wanted() {
    return [this.seenStep === undefined ? {load: this.seenLoad} : {step: this.seenStep}];
  },

  // Newest wins: an ask that has not begun makes way, and an answer that another ask has overtaken is not shown.
  async ask(request, tag) {
    this.core.drop(tag);
    const turn = this.turn = (this.turn ?? 0) + 1;
    window.clearTimeout(this.later);
    this.busy("Solving");
    const answer = await this.core.ask(request, tag);
    if (answer.dropped || turn !== this.turn) return undefined;
    this.busy("");
    return answer;
  },

  async solve(state, more) {
    if (!this.core) {
      this.refuse("The core is still starting: try again in a moment.");
      return undefined;
    }
    this.refuse("");
    const request = {
      changes: state.changes,
      variant: state.variant,
      detail: "quick",
      fields: this.factored ? this.wanted() : [],
      ...more
    };
    return this.ask(request, "change");
  },

  // One edit of the present state.
  async edit(edit, saying) {
    this.held = undefined;
    const answer = await this.solve(History.present, {edit});
    if (answer) this.take(answer, saying, true);
  },

  // What an edit would do, while a hand holds a slider: shown, not kept. One after another, the newest next.
  async preview(edit) {
    this.held = edit;
    if (!this.core || this.previewing) return;
    this.previewing = true;
    while (this.held) {
      const next = this.held;
      this.held = undefined;
      const answer = await this.solve(History.present, {edit: next});
      if (!answer || answer.error) continue;
      this.before = this.settled;
      this.display(answer, true);
    }
    this.previewing = false;
  },

  // To another state as a whole.
  async change(state, saying) {
    this.held = undefined;
    const answer = await this.solve(state, {});
    if (answer) this.take(answer, saying, true);
  },

  async go(state, saying) {
    const answer = await this.solve(state, {});
    if (answer) this.take(answer, saying, false, state);
  },

  back(state, saying) {
    if (state)
      this.go(state, saying);
    else
      History.show();
  },

  take(answer, saying, isNew, state) {
    this.held = undefined;
    const unsolved = answer.error?.kind === "model" && answer.screws ? answer.error.text : undefined;
    if (answer.error && !unsolved) {
      this.refuse(`Not done: ${answer.error.text}`);
      this.show();
      return;
    }
    const next = {changes: answer.changes, variant: answer.variant};
    if (isNew && linkOf(next) === linkOf(History.present)) {
      this.show();
      return;
    }
    this.before = this.settled;
    if (isNew)
      History.to(next);
    else if (state)
      History.present = next;
    History.show();
    this.display(unsolved ? {...answer, unsolved, figures: [], quick: undefined} : answer, true);
    this.laterWords = undefined;
    if (unsolved) {
      this.say(`${saying}: this cannot be solved.`);
    } else if (answer.figures) {
      this.say(trailOf(saying, this.before, this.answer));
    } else {  // figures come with the verdict
      this.say(`${saying}: being worked out.`);
      this.laterWords = saying;
    }
    if (answer.figures || unsolved) this.settled = this.answer;
    this.judgeSoon();
  },

  display(answer, pending) {
    const old = this.answer;
    this.pending = pending;
    this.stale = pending && !answer.figures;  // what is shown of stress is of the state before
    this.answer = pending ? {...old, findings: old.findings, unsolved: undefined, ...answer} : answer;
    this.seenLoad = Math.min(this.seenLoad, Math.max(answer.loads.length - 1, 0));
    this.takeFields(answer);
    this.show();
  },

  takeFields(answer) {
    if (!(answer.fields?.length > 0)) return;
    this.factored = true;
    const field = answer.fields[0];
    if (answer.variant !== this.variantShown) {
      this.variantShown = answer.variant;
      this.view?.show(this.bodiesOf(answer.variant));
    }
    this.field = this.fieldOf(field, answer.bytes, 0);
  },

  // Once nobody has changed anything for a moment: the field if it is missing, and the verdict. What takes the
  // core minutes where faces touch (other working lengths, orders and prebends) is left to the command line, and
  // said so.
  judgeSoon() {
    if (this.answer.unsolved) return;
    delete document.documentElement.dataset.judged;
    window.clearTimeout(this.later);
    this.later = window.setTimeout(async () => {
      const state = History.present;
      for (const detail of this.factored ? ["verdict"] : ["quick", "verdict"]) {
        const answer = await this.ask({...state, detail, fields: this.wanted()}, "judge");
        if (!answer || state !== History.present) return;
        if (answer.error) {
          this.refuse(answer.error.text);
          return;
        }
        this.display(answer, detail === "quick");
        if (answer.figures && this.laterWords !== undefined) {
          this.said = trailOf(this.laterWords, this.before, this.answer);
          byId("trail").textContent = this.said;
          this.laterWords = undefined;
        }
        if (answer.figures) this.settled = this.answer;
        document.documentElement.dataset.judged = detail;
      }
    }, 200);
  },

  // Another load or step in the picture and the charts.
  async see({load, step}) {
    if (load !== undefined) this.seenLoad = load;
    this.seenStep = step;
    this.show();
    if (!this.core) return;
    const answer = await this.ask({...History.present, detail: "quick", fields: this.wanted()}, "see");
    if (!answer || answer.error) return;
    this.takeFields(answer);
    this.show();
    if (this.pending) this.judgeSoon();
  },

  keep() {
    if (!this.field || !this.view) return;
    if (this.pending) {
      this.refuse("Not kept yet: this state is still being judged. Try again in a moment.");
      return;
    }
    this.kept.keep(this.answer, History.present, this.field, (name) => {
      const view = this.makeView(name, false);
      view.start();
      view.show(this.bodiesOf(this.variantShown));
      view.move(this.field, this.opened.plate.holes);
      return view;
    });
  },

  // ---- what is shown

  show() {
    const {opened, answer, before, pending} = this;
    showState(answer, pending, this.stale);
    showAnswer(answer, pending);
    this.strip.show(opened, answer);
    if (this.variants) this.variants.value = String(answer.variant ?? 0);
    showTiles(byId("tiles"), answer, before);
    for (const id of ["tiles", "figures"]) byId(id).classList.toggle("stale", Boolean(this.stale));
    this.loads.show(answer, this.seenLoad);
    this.tissue.show(opened, answer);
    this.kept.show(answer);
    showMargins(answer, pending);
    showGapAndPlate(opened, answer, this.seenLoad, pending);
    this.steps.show(answer, this.seenStep);
    showRules(answer, before?.rules_broken);
    showFigures(answer, pending);
    showPlan(answer, pending);
    showCase(answer.case_text);
    if (this.field) this.view?.move(this.field, opened.plate.holes);
    this.showPicture();
  },

  showPicture() {
    if (!this.field || !this.view) return;
    const seen = [{field: this.field}, ...this.kept.kept];
    this.look = this.picture.look(seen, this.opened.plate.length_mm);
    const mark = this.field.load === undefined ?
        undefined :
        figureOf(this.answer, "peak_stress", this.answer.loads[this.field.load]?.load);
    this.picture.show(this.look, this.field, mark);
    const screws = this.answer.screws.map((screw) => `${screw.label} in hole ${screw.hole}`).join(", ");
    this.view.describe(`The construct ${this.picture.caption.textContent} Screws: ${screws}.`);
    this.redraw();
  },

  redraw() {
    if (this.frame) return;
    this.frame = requestAnimationFrame(() => this.drawNow());
  },

  drawNow() {
    this.frame = undefined;
    if (!this.look) return;
    for (const view of [this.view, ...this.kept.kept.map((one) => one.view)]) {
      view.factor.textContent = `deformed \u00d7 ${tickText(this.look.factor)}`;
      view.draw(this.look);
    }
  },

  say(text) {
    if (this.said) byId("trail-list").prepend(element("li", {}, this.said));
    byId("trail-before").hidden = byId("trail-list").children.length === 0;
    byId("trail").textContent = this.said = text;
  },

  refuse(text) {
    byId("refused").textContent = text;
  },

  busy(text) {
    byId("busy").textContent = text ? `${text} \u2026` : "";
  },

  // ---- bytes

  bodiesOf(variant) {
    const {bodies, positions, normals, thickness, indices} = this.opened.drawing[variant];
    const view = (Type, part) => new Type(this.bytes.buffer, this.bytes.byteOffset + part.offset, part.count);
    const all = {
      positions: view(Float32Array, positions),
      normals: view(Float32Array, normals),
      thickness: view(Float32Array, thickness),
      indices: view(Uint32Array, indices)
    };
    return bodies.map((body) => {
      const [first, end] = [body.first_vertex, body.first_vertex + body.vertices];
      return {
        name: body.name,
        kind: body.kind,
        positions: all.positions.subarray(3 * first, 3 * end),
        normals: all.normals.subarray(3 * first, 3 * end),
        thickness: all.thickness.subarray(first, end),
        triangles: all.indices.subarray(body.first_index, body.first_index + body.indices).map((v) => v - first)
      };
    });
  },

  fieldOf(field, buffer, base) {
    const view = (part) => new Float32Array(buffer, base + part.offset, part.count);
    const stress = field.colours ? view(field.colours) : undefined;
    const plates = this.opened.drawing[this.variantShown].bodies.filter((body) => body.kind === "plate");
    let plateStress = 0;
    if (stress)
      for (const body of plates)
        for (let v = body.first_vertex; v < body.first_vertex + body.vertices; ++v)
          plateStress = Math.max(plateStress, stress[v]);
    return {...field, motions: view(field.positions), stress, plate_stress: plateStress};
  },
};

Page.start().catch((fault) => {
  byId("live").hidden = true;
  byId("still").hidden = false;
  byId("still").prepend(element("p", {role: "alert"}, `Only still pictures: ${fault.message}`));
});
