// The page: its parts, and what is shown of the core's answers.
const Page = {
  ...Asking,
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
    this.opened = partsOf(this.facts.opened, 0);
    byId("name").textContent = this.opened.name;
    byId("origin").textContent =
        `${this.opened.file}; ${this.facts.program.name} ${this.facts.program.version}, ${this.facts.date}`;
    const [caution, ...more] = this.facts.cautions;
    fill(byId("caution"), `${caution} `, element("span", {class: "more"}, more[0]));
    const linked = stateOf(location.hash), first = this.facts.first;
    History.present = {changes: first.changes, variant: first.variant};
    this.makeParts();
    byId("live").hidden = false;
    byId("still").hidden = true;
    this.bytes = await PageData.bytes("first-bytes");
    this.variantShown = first.variant;
    this.answer = this.settled = {...first, loads: withFactors(first)};
    try {
      this.view.start();
    } catch (fault) {
      this.view = undefined;
      fill(byId("views"), element("p", {}, `No picture: ${fault.message}`));
    }
    this.view?.show(bodiesOf(this.opened, this.bytes, first.variant));
    if (first.fields?.length > 0)
      this.field = fieldOf(
          this.opened, first.variant, first.fields[this.seenLoad] ?? first.fields[0], this.bytes.buffer,
          this.bytes.byteOffset + this.facts.first_bytes_at);
    if (this.facts.comparison) showComparison(this.facts.comparison);
    this.facts.beside.forEach((one, k) => this.keepOpened(one, k + 1));
    this.show();
    performance.mark("shown");
    showEnd(this.facts);
    await this.openCloud();
    this.busy("The core is starting");
    try {
      this.core = await PageCore.start();
    } catch (fault) {
      this.refuse(`Nothing can be changed here: the core did not start (${fault.message}).`);
      return;
    } finally {
      this.busy("");
    }
    if (linked) await this.change(linked, "As in the link");
    this.lesson?.begin();
    performance.mark("ready");
    document.documentElement.dataset.ready = "yes";
  },

  makeParts() {
    const [first, last] = [this.opened.plate.holes[0], this.opened.plate.holes.at(-1)];
    const centre = [0, 1, 2].map((k) => 0.5 * (first.at[k] + last.at[k]));
    this.camera = new Camera([centre[0], centre[1], centre[2] - 4], 0.6 * this.opened.plate.length_mm);
    const edit = (one, saying) => this.edit(one, saying), preview = (one) => this.preview(one);
    this.strip = new PlateStrip(byId("strip"), edit, (hole) => showHole(byId("details"), this.strip, hole, edit));
    this.view = this.makeView(this.facts.comparison ? "At hand (A as the page opens)" : "At hand", true);
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
    window.addEventListener("resize", () => this.resized());
    const small =
        window.matchMedia("screen and (max-width: 40rem)");  // a phone: the construct before the sentences
    const narrow = window.matchMedia("(max-width: 62rem)");  // there the trail stands at once below the strip
    const place = () => {
      if (narrow.matches)
        byId("strip-frame").after(byId("now"));
      else
        byId("side").prepend(byId("now"));
      if (small.matches)
        byId("bench").after(byId("answer"));
      else
        byId("bench").before(byId("answer"));
    };
    small.addEventListener("change", place);
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
      this.printing = true;  // on white, whatever the screen's colours
      this.showPicture();
      this.drawNow();
      this.eachView((view) => view.toPaper());
    });
    window.addEventListener("afterprint", () => {
      opened.forEach((one) => {
        one.open = false;
      });
      this.printing = false;
      this.showPicture();
    });
    byId("live").prepend(element("p", {id: "brief", "aria-hidden": "true"}));
    History.show();
    this.lesson = LessonPanel.of(this);
  },

  // A construct that is shown beside the first one when the page opens.
  keepOpened({answer, bytes_at: at}, variant) {
    if (!this.view || !(answer.fields?.length > 0)) return;
    const field = fieldOf(this.opened, variant, answer.fields[0], this.bytes.buffer, this.bytes.byteOffset + at);
    const letter = this.facts.comparison?.constructs[variant]?.letter;
    const {standing} = answer.findings.state;
    const {label} = this.opened.variants[variant];
    this.kept.keep(
        answer, {changes: {}, variant}, field, (name) => this.beside(name, variant, field),
        [letter ? `${letter}: ${label}` : label, standing === "holds" ? "" : standing].filter(Boolean).join(", "));
  },

  beside(name, variant, field) {
    const view = this.makeView(name, false);
    view.start();
    view.show(bodiesOf(this.opened, this.bytes, variant));
    view.move(field, partsOf(this.facts.opened, variant).plate.holes);
    return view;
  },

  async openCloud() {
    if (!byId("cloud")) return;
    const data = JSON.parse(new TextDecoder().decode(await PageData.bytes("cloud")));
    byId("study").hidden = false;
    this.cloud = new CloudPanel(byId("study"), data, (state, saying) => this.change(state, saying));
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

  keep() {
    if (!this.field || !this.view) return;
    if (this.pending || this.judging) {
      this.refuse("Not kept yet: this state is still being judged. Try again in a moment.");
      return;
    }
    const [variant, field] = [this.variantShown, this.field];
    this.kept.keep(this.answer, History.present, field, (name) => this.beside(name, variant, field));
  },

  // ---- what is shown

  show() {
    const {answer, before, pending} = this;
    const opened = this.opened = partsOf(this.facts.opened, answer.variant ?? 0);
    byId("live").classList.toggle("unsolved", Boolean(answer.unsolved));
    showState(answer, pending, this.stale, this.judging);
    // Under a slider that is held, what stands back already until the verdict is not made anew.
    const light = this.previewing && this.stoodBack;
    this.stoodBack = pending;
    if (!light) {
      showAnswer(answer, pending);
      this.strip.show(opened, answer);
    }
    if (this.variants) this.variants.value = String(answer.variant ?? 0);
    showTiles(byId("tiles"), answer, before);
    for (const id of ["tiles", "figures"]) byId(id).classList.toggle("stale", Boolean(this.stale));
    this.loads.show(answer, this.seenLoad);
    this.tissue.show(opened, answer);
    showGapAndPlate(opened, answer, this.seenLoad, pending);
    this.steps.show(answer, this.seenStep);
    if (!light) {
      this.kept.show(answer);
      showMargins(answer, pending);
      showRules(answer, before?.rules_broken);
      showFigures(answer, pending);
      showPlan(answer, pending);
      showCase(answer.case_text);
    }
    this.cloud?.hold(answer);
    this.lesson?.show(answer, Boolean(this.stale));
    if (this.field) this.view?.move(this.field, opened.plate.holes);
    this.showPicture();
  },

  showPicture() {
    if (!this.field || !this.view) return;
    const seen = [{field: this.field}, ...this.kept.kept];
    this.look = this.picture.look(seen, this.opened.plate.length_mm, this.printing);
    const mark = this.field.load === undefined ?
        undefined :
        figureOf(this.answer, "peak_stress", this.answer.loads[this.field.load]?.load);
    const load = this.answer.loads[this.field.load];
    this.picture.show(this.look, this.field, mark, load ? loadWords(load) : `"${this.field.name}"`);
    const screws = this.answer.screws.map((screw) => `${screw.label} in hole ${screw.hole}`).join(", ");
    this.view.describe(`The construct ${this.picture.caption.textContent} Screws: ${screws}.`);
    this.redraw();
  },

  // Charts and scale are drawn as wide as there is room, so that their words stay as large as all others.
  resized() {
    if (this.answer && chartWidth(byId("gap")) !== this.chartsFor) {
      showGapAndPlate(this.opened, this.answer, this.seenLoad, this.pending);
      this.strip.show(this.opened, this.answer);
      this.chartsFor = chartWidth(byId("gap"));
      this.showPicture();
    }
    this.redraw();
  },

  redraw() {
    if (this.frame) return;
    this.frame = requestAnimationFrame(() => this.drawNow());
  },

  drawNow() {
    this.frame = undefined;
    if (!this.look) return;
    this.eachView((view) => {
      view.tell(this.look.factor, view.field && this.underWords(view.field));
      view.draw(this.look);
    });
  },

  eachView(act) {
    if (this.view) [this.view, ...this.kept.kept.map((one) => one.view)].forEach(act);
  },

  // Which load a field is of, and how many times as large as entered; or after which step.
  underWords(field) {
    return field.step === undefined ? field.name : `after step ${field.step + 1}`;
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
};

// Plate, fracture and loads of one of the prepared variants.
const partsOf = (opened, variant) => ({...opened, ...opened.parts?.[variant]});

Page.start().catch((fault) => {
  byId("live").hidden = true;
  byId("still").hidden = false;
  byId("still").prepend(element("p", {role: "alert"}, `Only still pictures: ${fault.message}`));
});
