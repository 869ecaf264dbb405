// Several constructs held against each other: which to prefer and why, and their figures, widest difference first.
function showComparison(comparison) {
  const section = byId("compared");
  section.hidden = false;
  const {preference, constructs, figures, verdict} = comparison;
  const letters = constructs.map((one) => one.letter);
  const stateWord = (standing) =>
      element("span", {class: standing === "holds" ? "word-holds" : "word-fails"}, standing);
  const row = (figure) =>
      [figure.unit ? `${figure.figure}, ${figure.unit}` : figure.figure,
       ...figure.values.map((value) => (value === null ? "not known" : digits(value))),
       figure.ratio === undefined ? "" : `\u00d7 ${digits(figure.ratio)}`, figure.best ?? "",
       figure.model_error > 0 ? `${digits(100 * figure.model_error)} %` : ""];
  const heads = ["figure", ...letters, "differ", "better", "the model's error"];
  const numbers = heads.map((_, k) => k).filter((k) => k > 0 && heads[k] !== "better");
  const apart = figures.filter((figure) => figure.told_apart),
        alike = figures.filter((figure) => !figure.told_apart);
  fill(
      section, element("h2", {id: "compared-heading"}, "Which construct?"),
      element("p", {class: "lead"}, preference.verdict),
      preference.reasons.length > 0 ?
          element("ul", {}, preference.reasons.map((text) => element("li", {}, text))) :
          undefined,
      tableOf(
          "The constructs; A is at hand, the others stand beside it.", ["", "construct", "state", "file"],
          constructs.map((one) => [one.letter, one.name, stateWord(one.state.standing), one.file])),
      apart.length > 0 ? tableOf(
                             "Figures, each at its worst of all loads, the widest difference first.", heads,
                             apart.map(row), numbers) :
                         element("p", {}, "No figure tells them apart beyond what the model may be off by."),
      alike.length > 0 ? element(
                             "details", {"data-key": "alike"},
                             element("summary", {}, `${alike.length} figures that are not told apart`),
                             tableOf(
                                 "Alike, known of one only, or within what the model may be off by.", heads,
                                 alike.map(row), numbers)) :
                         undefined,
      verdict.map((text) => element("p", {}, text)));
}
