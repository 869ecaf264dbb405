// What is asked of the core, and how an answer becomes the state at hand: a part of Page.
const Asking = {
  wanted() {
    return [this.seenStep === undefined ? {load: this.seenLoad} : {step: this.seenStep}];
  },

  // One after another, each on the state that the one before has left: no click is lost while the core works. What
  // waits makes way for the next of the same `kind`: a key that is held on a slider leaves no queue behind.
  inTurn(act, kind) {
    this.waiting ??= [];
    if (kind !== undefined && this.waiting.at(-1)?.kind === kind) this.waiting.pop();
    this.waiting.push({act, kind});
    this.acting ??= this.actAll();
    return this.acting;
  },

  async actAll() {
    while (this.waiting.length > 0) {
      try {
        await this.waiting.shift().act();
      } catch (fault) {
        this.refuse(`Not done: ${fault.message}`);
        reportError(fault);
      }
    }
    this.acting = undefined;
  },

  // Whether all that was asked for is done and shown, with its verdict.
  isIdle() {
    return Boolean(this.core) && !this.acting && !this.previewing && !this.frame && !this.core.busy &&
        (!(this.pending || this.judging) || Boolean(this.answer.unsolved));
  },

  // What has been overtaken is not shown: a verdict, or a preview, of another state than the one at hand.
  async ask(request, {sure = false} = {}) {
    this.core.drop("passing");
    const turn = this.turn = (this.turn ?? 0) + 1;
    window.clearTimeout(this.later);
    this.busy("Solving");
    const answer = await this.core.ask(request, sure ? "sure" : "passing");
    if (answer.dropped || (!sure && turn !== this.turn)) return undefined;
    if (turn === this.turn) this.busy("");
    return answer;
  },

  async solve(state, more, how) {
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
    return this.ask(request, how);
  },

  // One edit of the present state.
  edit(edit, saying) {
    this.held = undefined;
    return this.inTurn(async () => {
      const answer = await this.solve(History.present, {edit}, {sure: true});
      if (answer) this.take(answer, saying, true);
    }, ["fill_gap", "scale_load"].includes(edit.do) ? `${edit.do} ${edit.load}` : undefined);
  },

  // What an edit would do, while a hand holds a slider: shown, not kept. One after another, the newest next.
  async preview(edit) {
    this.held = edit;
    if (!this.core || this.previewing) return;
    this.previewing = true;
    while (this.held) {
      await this.acting;
      const next = this.held;
      this.held = undefined;
      if (!next) break;
      const answer = await this.solve(History.present, {edit: next});
      if (!answer || answer.error) continue;
      this.before = this.settled;
      this.display(answer, true);
    }
    this.previewing = false;
  },

  // To another state as a whole.
  change(state, saying) {
    this.held = undefined;
    return this.inTurn(async () => {
      const answer = await this.solve(state, {}, {sure: true});
      if (answer) this.take(answer, saying, true);
    });
  },

  // To what undo or redo has made the present state.
  back(state, saying) {
    if (!state) {
      History.show();
      return;
    }
    this.inTurn(async () => {
      if (state !== History.present) return;  // gone on meanwhile
      const answer = await this.solve(state, {}, {sure: true});
      if (answer) this.take(answer, saying, false);
    });
  },

  take(answer, saying, isNew) {
    this.held = undefined;
    const unsolved = answer.error?.kind === "model" && answer.screws ? answer.error.text : undefined;
    if (answer.error && !unsolved) {
      const problems = (answer.error.problems ?? []).map((problem) => problem.message);  // without file and line
      this.refuse(`Not done: ${problems.join(" ") || answer.error.text}`);
      this.standAgain();
      return;
    }
    const next = {changes: answer.changes, variant: answer.variant};
    if (isNew && linkOf(next) === linkOf(History.present)) {
      this.standAgain();
      return;
    }
    this.before = this.settled;
    if (isNew) History.to(next);
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

  // Nothing was changed: what is shown may still be a preview, and a verdict that was under way made room.
  standAgain() {
    this.show();
    const {changes, variant} = this.answer;
    if (linkOf({changes, variant}) !== linkOf(History.present))
      this.inTurn(async () => {
        const answer = await this.ask(
            {...History.present, detail: "quick", fields: this.factored ? this.wanted() : []}, {sure: true});
        if (!answer.error) this.display(answer, true);
        this.judgeSoon();
      });
    else if (this.pending || this.judging)
      this.judgeSoon();
  },

  display(answer, pending) {
    const old = this.answer;
    this.pending = pending;
    this.stale = pending && !answer.figures;  // what is shown of stress is of the state before
    this.answer = pending ? {...old, findings: old.findings, unsolved: undefined, ...answer} : answer;
    answer.loads = withFactors(answer);
    this.seenLoad = Math.min(this.seenLoad, Math.max(answer.loads.length - 1, 0));
    if (this.seenStep >= answer.steps?.length) this.seenStep = undefined;
    this.takeFields(answer);
    this.show();
  },

  takeFields(answer) {
    if (!(answer.fields?.length > 0)) return;
    this.factored = true;
    const field = answer.fields[0];
    if (answer.variant !== this.variantShown) {
      this.variantShown = answer.variant;
      this.view?.show(bodiesOf(this.opened, this.bytes, answer.variant));
    }
    this.field = fieldOf(this.opened, this.variantShown, field, answer.bytes, 0);
  },

  // Once nobody has changed anything for a moment: the field if it is missing, the margins, and then, piece by piece so
  // that a hand need not wait, what the verdict rests on besides. What takes the core minutes where faces touch (other
  // working lengths, orders and prebends) is left to the command line, and said so.
  judgeSoon() {
    if (this.answer.unsolved) return;
    delete document.documentElement.dataset.judged;
    window.clearTimeout(this.later);
    this.judging = true;
    this.later = window.setTimeout(() => this.judge(History.present), 200);
  },

  async judge(state) {
    const ask = async (more) => {
      let answer;
      do {
        answer = await this.ask({...state, fields: this.wanted(), ...more});
        if (!answer || state !== History.present) return undefined;
      } while (answer.left > 0);
      if (!answer.error) return answer;
      this.refuse(answer.error.text);
      this.judging = false;
      return undefined;
    };
    if (!this.factored) {
      const answer = await ask({detail: "quick"});
      if (!answer) return;
      this.display(answer, true);
    }
    const margins = await ask({detail: "margins"});
    if (!margins) return;
    this.settle(margins);
    const verdict = await ask({detail: "verdict", piecewise: true});
    if (!verdict) return;
    this.judging = false;
    this.settle(verdict);
    document.documentElement.dataset.judged = "verdict";
  },

  // An answer with figures: what changes from here on is held against it.
  settle(answer) {
    this.display(answer, false);
    if (this.laterWords !== undefined) {
      this.said = trailOf(this.laterWords, this.before, this.answer);
      byId("trail").textContent = this.said;
      this.laterWords = undefined;
    }
    this.settled = this.answer;
  },

  // Another load or step in the pictures and the charts.
  see({load, step}) {
    if (load !== undefined) this.seenLoad = load;
    this.seenStep = step;
    this.show();
    if (!this.core) return;
    this.inTurn(async () => {
      const wanted = this.wanted();
      const answer = await this.ask({...History.present, detail: "quick", fields: wanted}, {sure: true});
      if (!answer.error) {
        this.takeFields(answer);
        await this.seeKept(wanted);
        this.show();
      }
      if (this.pending || this.judging) this.judgeSoon();
    });
  },

  // What is kept beside is seen under the same load or after the same step, if it has it.
  async seeKept(wanted) {
    for (const one of this.kept.kept) {
      const answer = await this.ask({...one.state, detail: "quick", fields: wanted}, {sure: true});
      if (answer.error || !(answer.fields?.length > 0)) continue;
      one.field = fieldOf(this.opened, one.state.variant, answer.fields[0], answer.bytes, 0);
      one.view.move(one.field, this.opened.plate.holes);
    }
  },
};
