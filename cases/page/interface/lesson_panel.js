// A lesson on top of its page: one scene after another, each a state that anything may be changed in.
class LessonPanel {
  // Undefined where the page is none of a lesson.
  static of(page) {
    if (!byId("page-lesson")) return undefined;
    return new LessonPanel(PageData.json("page-lesson"), page);
  }

  constructor(lesson, page) {
    Object.assign(this, {lesson, page, number: 0, given: [], marked: []});
    byId("name").textContent = lesson.name;
    this.root = element("section", {id: "lesson", "aria-labelledby": "lesson-heading"});
    byId("band").after(this.root);
    byId("bench").after(byId("answer"));  // what is tried stands at once below what is asked
    const linked = stateOf(location.hash);
    const of = linked ? lesson.scenes.findIndex((scene) => linkOf(scene.state) === linkOf(linked)) : 0;
    this.number = Math.max(of, 0);
    this.build();
    page.seenLoad = this.scene.load;
  }

  get scene() {
    return this.lesson.scenes[this.number];
  }

  // ---- from scene to scene

  // Once the core can be asked: what the scene that the page opens with has beside it.
  begin() {
    if (this.scene.beside) this.putBeside(this.scene, this.number);
  }

  go(number) {
    if (number < 0 || number >= this.lesson.scenes.length) return;
    this.number = number;
    this.build();
    byId("lesson-heading").focus();
    this.enter();
  }

  // Puts the scene's state in place, and what stands beside it.
  async enter() {
    const {page, scene, number} = this;
    if (!page.core) return;
    page.seenStep = undefined;
    page.seenLoad = scene.load;
    for (const one of page.kept.kept.filter((kept) => kept.ofLesson)) page.kept.drop(one);
    await page.change(scene.state, `Scene ${number + 1}`);
    if (scene.beside && number === this.number) await this.putBeside(scene, number);
  }

  async putBeside(scene, number) {
    const {page} = this;
    if (!page.view) return;
    const {state} = scene.beside;
    page.busy("Solving what stands beside");
    const answer = await page.core.ask({...state, detail: "verdict", fields: [{load: scene.load}]}, "beside");
    page.busy("");
    if (answer.error || number !== this.number) return;
    const field = fieldOf(page.opened, state.variant, answer.fields[0], answer.bytes, 0);
    page.kept.keep(answer, state, field, (name) => page.beside(name, state.variant, field), scene.beside.title)
        .ofLesson = true;
  }

  // ---- what a scene shows

  build() {
    const {scene, lesson, number} = this, count = lesson.scenes.length;
    this.goalText = undefined;
    this.verdict = element("p", {role: "status", "aria-live": "polite", class: "goal"});
    this.answer =
        element("div", {class: "scene-answer", hidden: true, tabindex: -1, role: "group", "aria-label": "Answer"});
    this.figures = element("div", {});
    this.reveal = scene.question ?
        button("lesson-reveal", "Show the answer", () => this.showAnswer(true), {"aria-expanded": "false"}) :
        undefined;
    const paragraphs = (texts) => texts.map((text) => element("p", {}, text));
    fill(
        this.root,
        element(
            "p", {class: "progress"}, element("span", {id: "lesson-progress"}, `Scene ${number + 1} of ${count}`),
            element("progress", {max: count, value: number + 1, "aria-labelledby": "lesson-progress"})),
        element("h2", {id: "lesson-heading", tabindex: -1}, scene.title),
        element(
            "div", {class: "scene-grid"},
            element(
                "div", {class: "scene-text"}, number === 0 ? paragraphs(lesson.text) : undefined,
                paragraphs(scene.text), this.lookAt(scene), this.figures),
            element("div", {}, this.question(scene), this.reveal, this.answer)),
        element(
            "div", {class: "bar", role: "group", "aria-label": "Scenes"},
            button("lesson-before", "Previous", () => this.go(number - 1), {disabled: number === 0}),
            button("lesson-next", "Next", () => this.go(number + 1), {disabled: number + 1 === count}),
            button("lesson-back", "Back to the scene's state", () => this.enter())));
    if (scene.answer) this.fillAnswer(scene.answer, paragraphs);
    this.mark(scene.look.map((one) => one.id));
  }

  lookAt(scene) {
    if (scene.look.length === 0) return undefined;
    const link = (one, k) => button(`lesson-look-${k}`, one.label, () => {
      byId(one.id).scrollIntoView({block: "center"});
      const stop = byId(one.id).querySelector("h2[tabindex], button, [tabindex='0'], canvas");
      stop?.focus({preventScroll: true});
    });
    return element("p", {class: "bar"}, "Look at: ", scene.look.map(link));
  }

  mark(ids) {
    for (const one of this.marked) one.classList.remove("lesson-look");
    this.marked = ids.map(byId).filter(Boolean);
    for (const one of this.marked) one.classList.add("lesson-look");
  }

  question(scene) {
    const question = scene.question;
    if (!question) return undefined;
    const asked = question.text.map((text) => element("p", {}, text));
    if (question.goals) {
      const goals = question.goals.map((goal) => element("li", {}, `${goal.label}: ${goal.words}`));
      return [element("h3", {}, "Question"), asked, element("ul", {}, goals), this.verdict];
    }
    const choices = question.answers.map(
        (text, k) => element(
            "div", {class: "choice"}, element("input", {
              type: "radio",
              name: "lesson-answer",
              id: `lesson-answer-${k}`,
              value: k + 1,
              checked: this.given[this.number] === k + 1,
              onchange: () => {
                this.given[this.number] = k + 1;
              }
            }),
            element("label", {"for": `lesson-answer-${k}`}, text)));
    return [
      element("h3", {}, "Question"), element("fieldset", {}, element("legend", {}, asked), choices),
      element("div", {class: "bar"}, button("lesson-check", "Check", () => this.check(question))), this.verdict
    ];
  }

  check(question) {
    const given = this.given[this.number];
    if (given === undefined) {
      this.verdict.textContent = "Choose one of the answers first.";
      return;
    }
    const right = given === question.right;
    this.verdict.classList.toggle("reached", right);
    this.verdict.textContent = right ? "Right." : "No. Try it on the construct below, and choose again.";
    if (right) this.showAnswer(false);
  }

  fillAnswer(answer, paragraphs) {
    const alarms = (answer.head ?? []).filter((line) => line.kind !== "holds");
    fill(
        this.answer, element("h3", {}, "Answer"), paragraphs(answer.text),
        answer.state ?
            [
              alarms.map((line) => element("p", {class: "quiet"}, line.text)),
              button(
                  "lesson-answer-state", "Put this state in place",
                  () => {
                    if (this.page.core) this.page.change(answer.state, "The answer's state");
                  })
            ] :
            undefined);
  }

  showAnswer(focused) {
    this.answer.hidden = false;
    this.reveal.setAttribute("aria-expanded", "true");
    if (focused) this.answer.focus();
  }

  // ---- figures as they are

  // Of the state at hand; `stale`: its figures are still being worked out.
  show(answer, stale) {
    const {scene} = this;
    const figure = (one) => (stale ? undefined : figureOf(answer, one.name, one.load));
    if (scene.figures.length > 0) {
      const beside = scene.beside ? [scene.beside.title] : [];
      const rows = scene.figures.map((one) => {
        const now = figure(one);
        return [one.label, now ? shownOf(now) : "\u2026", one.own ?? "-", ...beside.map(() => one.beside ?? "-")];
      });
      fill(this.figures, tableOf("Figures to look at.", ["figure", "now", "in this scene", ...beside], rows, [
             1, 2, ...beside.map(() => 3)
           ]));
    }
    if (scene.question?.goals) this.showGoals(scene.question.goals, figure);
  }

  showGoals(goals, figure) {
    const found = goals.map((goal) => ({goal, now: figure(goal)}));
    if (found.some((one) => !one.now)) return this.tell("Being worked out \u2026", false);
    const keeps = ({goal, now}) => !(now.value < (goal.least ?? -Infinity)) &&
        !(now.value > (goal.most ?? Infinity)) && Number.isFinite(now.value);
    const words = found.map((one) => `${one.goal.label} is ${shownOf(one.now)} (${one.goal.words})`).join("; ");
    const reached = found.every(keeps);
    this.tell(`${reached ? "Reached" : "Not reached yet"}: ${words}.`, reached);
    if (reached) this.showAnswer(false);
    return undefined;
  }

  // Only what is new, so that a screen reader says it once.
  tell(text, reached) {
    if (text === this.goalText) return;
    this.goalText = text;
    this.verdict.textContent = text;
    this.verdict.classList.toggle("reached", reached);
  }
}
