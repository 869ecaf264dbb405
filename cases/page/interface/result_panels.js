// What was found: the answer in sentences, and margins worst first, with words beside every colour.
function showAnswer(answer, stale) {
  const sentences = [...(answer.verdict ?? []), ...(answer.worst ?? [])];
  const notes = [...(answer.warnings ?? []).map((text) => `Warning: ${text}`), ...(answer.assumptions ?? [])];
  const line = (text, k) => element("p", {class: k === 0 ? "first" : ""}, text);
  fill(
      byId("answer"), element("h2", {id: "answer-heading"}, "In short"),
      element("div", {class: stale ? "stale" : ""}, sentences.map(line)),
      stale ? element("p", {class: "quiet"}, "Of the state before; the present one is being judged.") : undefined,
      !stale && answer.detail === "verdict" ?
          element(
              "p", {class: "quiet"},
              "Other working lengths, orders and prebends are not tried for a changed state: run its case with ",
              element("code", {}, "gapstrain analyse"), ".") :
          undefined,
      notes.length > 0 ?
          element(
              "details", {"data-key": "notes"}, element("summary", {}, "Warnings and what is assumed"),
              element("ul", {}, notes.map((text) => element("li", {}, text)))) :
          undefined);
}

const marginWord = (margin) => {
  const fails = !(margin.factor >= 1);
  const word = margin.indicative ? (fails ? "below 1, indicative" : "indicative") : fails ? "fails" : "holds";
  return element("span", {class: margin.indicative ? "word-warn" : fails ? "word-fails" : "word-holds"}, word);
};

const marginsAtOnce = 8;  // the worst ones, which nobody has to open a list for

function showMargins(answer, pending) {
  const judged = !pending && answer.findings;
  const margins = judged ? answer.findings.margins : answer.quick?.margins ?? [];
  const notes = [];
  const note = (text) => {
    if (!text) return "";
    if (!notes.includes(text)) notes.push(text);
    return `[${notes.indexOf(text) + 1}]`;
  };
  const rows = margins.map((margin) => {
    const marks = [
      note(margin.assumed && `Assumed: ${margin.assumed}.`), note(margin.source && `Source: ${margin.source}.`)
    ].filter(Boolean).join(" ");
    const from = judged ? `${margin.sentence} ${marks}`.trim() : "";
    return [
      judged ? margin.part : margin.label, marginWord(margin), margin.shown ?? digits(margin.factor),
      margin.load ?? "", from
    ];
  });
  const table = (caption, some) => tableOf(caption, ["part", "", "margin", "load", "from"], some, [2]);
  const caption = "Strength over demand: below 1 a part fails.";
  const others = rows.slice(marginsAtOnce);
  fill(
      byId("margins"), element("h2", {id: "margins-heading", tabindex: -1}, "Margins, worst first"),
      table(caption, rows.slice(0, marginsAtOnce)),
      others.length > 0 ? element(
                              "details", {"data-key": "other-margins"},
                              element("summary", {}, `${others.length} more, from ${others[0][2]} upwards`),
                              table("Margins that are larger.", others)) :
                          undefined,
      pending ? element(
                    "p", {class: "quiet"},
                    margins.length > 0 ? "Quick figures; parts, loads and sources follow in a moment." :
                                         "Being worked out for the present state.") :
                undefined,
      notes.length > 0 ?
          element(
              "details", {"data-key": "margin-notes"}, element("summary", {}, "Sources and what is assumed"),
              element("ol", {class: "notes"}, notes.map((text) => element("li", {}, text)))) :
          undefined,
      judged ? leftOut(answer.findings.margins_left_out ?? []) : undefined);
}

function leftOut(list) {
  if (list.length === 0) return undefined;
  const text = (one) =>
      typeof one === "string" ? one : one.sentence ?? [one.part, one.reason].filter(Boolean).join(": ");
  return element("p", {}, `Not known: ${list.map(text).join(" ")}`);
}
