// Rules of the trade, and every figure with its unit and meaning.
function showRules(answer, before) {
  const broken = answer.review.filter((rule) => rule.verdict === "broken");
  const rest = answer.review.filter((rule) => rule.verdict !== "broken");
  const kept = rest.filter((rule) => rule.verdict === "kept");
  const anew = (rule) => before !== undefined && rule.verdict === "broken" && !before.includes(rule.rule);
  const names = {broken: "word-fails", kept: "word-holds"};
  const row = (rule) =>
      [rule.rule,
       element(
           "span", {class: names[rule.verdict] ?? "quiet"},
           anew(rule) ? "broken by the last change" : rule.verdict.replaceAll("_", " ")),
       rule.figure ?? "", rule.bound ?? "",
       element(
           "div", {}, rule.advice ? element("p", {}, rule.advice) : undefined,
           rule.source ? element("p", {class: "quiet"}, `Source: ${rule.source}.`) : undefined)];
  const heads = ["rule", "", "here", "asked for", "advice and source"];
  fill(
      byId("rules"),
      element(
          "h2", {id: "rules-heading"},
          `Rules of the trade: ${broken.length} of ${broken.length + kept.length} broken`),
      broken.length > 0 ?
          tableOf(
              "Broken: each with what it is here, what is asked for, and who says so.", heads, broken.map(row)) :
          element("p", {}, "None is broken."),
      element(
          "details", {"data-key": "rules-kept"}, element("summary", {}, "Rules that are kept or do not apply"),
          tableOf("Kept, or not applicable.", heads, rest.map(row))));
}

const errorWords = (answer) => {
  const trust = answer.findings?.trust;
  if (!trust) return "";
  const per = (value) => `${digits(100 * value)} %`;
  const parts = [
    Number.isFinite(trust.mesh_error_stiffness) ? `stiffness ${per(trust.mesh_error_stiffness)}` : "",
    Number.isFinite(trust.mesh_error_peak) ? `largest stress ${per(trust.mesh_error_peak)}` : ""
  ].filter(Boolean);
  return parts.length > 0 ? `Estimated error of the mesh: ${parts.join(", ")}.` : "";
};

function showFigures(answer, pending) {
  const rules = (figure) => figure.name.startsWith("breaks_");
  const doubt = pending ? "not judged yet" : doubtOf(answer);
  const heads = ["figure", "value", "unit", "meaning", "source and trust"];
  const line = (figure) => {
    const known = Page.facts.figure_trust[figure.name] ?? {source: ""};
    const trust = [
      known.source, known.error ? `within some ${digits(100 * known.error)} %` : "", known.source.startsWith("counted") ? "" : doubt
    ].filter(Boolean);
    const where = {"data-figure": figure.name, ...(figure.load ? {"data-load": figure.load} : {})};
    return [
      figure.label, element("span", where, figure.shown), figure.shown_unit ?? figure.unit ?? "", figure.meaning,
      trust.join("; ")
    ];
  };
  const rows = answer.figures.filter((figure) => !figure.load && !rules(figure)).map(line);
  const loads = [...new Set(answer.figures.map((figure) => figure.load).filter(Boolean))];
  const checks = !pending && answer.findings?.trust?.checks;
  fill(
      byId("figures"), element("h2", {id: "figures-heading"}, "All figures"),
      tableOf(
          "Of the construct, and of all loads each figure's worst.", heads, rows, [1]),
      loads.map(
          (load) => element(
              "details", {"data-key": `load-${load}`}, element("summary", {}, `Under "${load}"`),
              tableOf(
                  `Under "${load}".`, heads, answer.figures.filter((figure) => figure.load === load).map(line),
                  [1]))),
      element("h3", {}, "Trust"),
      checks ?
          [
            element("p", {}, errorWords(answer)),
            tableOf(
                "Checks of this solution.", ["check", "", "value", "limit", "meaning"],
                checks.map(
                    (check) =>
                        [check.name,
                         element(
                             "span", {class: check.passed ? "word-holds" : "word-fails"},
                             check.passed ? "passed" : "failed"),
                         digits(check.value), digits(check.limit), check.meaning]),
                [2, 3])
          ] :
          element("p", {class: "quiet"}, "The checks of this state are under way."));
}
