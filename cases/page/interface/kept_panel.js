// Constructs kept beside the one at hand: their pictures share its camera and its colours, their figures one
// table.
const mostKept = 3;

class KeptPanel {
  // `changed` is called when what is kept has changed, `recall` with a state that is to be at hand again.
  constructor(views, container, changed, recall) {
    Object.assign(this, {views, container, changed, recall, kept: [], number: 0});
  }

  // `given`: its name; else it is called by its holes.
  keep(answer, state, field, makeView, given) {
    if (this.kept.length === mostKept) this.drop(this.kept[0], false);
    const filled =
        answer.screws.filter((screw) => screw.hole > 0).map((screw) => screw.hole).sort((a, b) => a - b);
    this.number += 1;
    const name = given ?? `Kept ${this.number}`;
    const label = given ?? `${name}: holes ${filled.join(", ")}`;
    const one = {name, answer, state, field, view: makeView(label)};
    this.kept.push(one);
    this.changed();
    return one;
  }

  drop(one, tell = true) {
    one.view?.root.remove();
    this.kept = this.kept.filter((other) => other !== one);
    if (tell) this.changed();
  }

  show(answer) {
    this.views.className = `views ${["", "two", "three", "four"][this.kept.length]}`.trim();
    this.container.hidden = this.kept.length === 0;
    if (this.kept.length === 0) return;
    const of = (one) => one.figures.filter((figure) => !figure.load && !figure.name.startsWith("breaks_"));
    const known = new Map(
        [answer, ...this.kept.map((one) => one.answer)].flatMap(of).map((figure) => [figure.name, figure]));
    const rows = [...known.values()].map(({name, label, shown_unit: unit}) => {
      const now = figureOf(answer, name);
      const cells = this.kept.map((one) => {
        const figure = figureOf(one.answer, name);
        const change = figure && now ? changeText(figure.value, now.value) : undefined;
        return figure ? `${figure.shown}${change && change !== "0 %" ? ` (now ${change})` : ""}` : "";
      });
      return [unit ? `${label}, ${unit}` : label, now ? now.shown : "", ...cells];
    });
    fill(
        this.container, element("h2", {id: "kept-heading"}, "Side by side"),
        tableOf(
            "All loads, each figure at its worst; in brackets by how much the construct at hand differs.",
            ["figure", "at hand", ...this.kept.map((one) => one.name)], rows,
            [1, ...this.kept.map((_, k) => k + 2)]),
        element(
            "div", {class: "bar"},
            this.kept.flatMap(
                (one) =>
                    [button(`recall-${one.name}`, `Go back to "${one.name}"`, () => this.recall(one)),
                     button(`drop-${one.name}`, `Put "${one.name}" away`, () => this.drop(one))])));
  }
}
