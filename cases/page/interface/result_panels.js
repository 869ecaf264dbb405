// What was found: the answer in sentences, and margins worst first, with words beside every colour.
// Three sentences first: whether it holds, what that means for the fracture, what it rests on. Then the others.
function inShort(answer) {
  const verdict = answer.verdict ?? [], worst = answer.worst ?? [];
  const on = (list, beginning) => list.find((text) => text.startsWith(beginning));
  const fracture = answer.findings?.race ? on(verdict, "Healing:") :
                                           on(worst, "Gap:") ?? on(answer.pressing ?? [], "Fracture");
  const lead = [on(verdict, "Verdict:"), fracture].filter(Boolean);
  for (const left of [["Healing:", "In hand", "Rules:"], ["Healing:"]])
    for (const text of verdict)
      if (lead.length < 3 && !lead.includes(text) && !left.some((beginning) => text.startsWith(beginning)))
        lead.push(text);
  return {lead, more: [...verdict, ...worst].filter((text) => !lead.includes(text))};
}

function showAnswer(answer, stale) {
  const {lead, more} = inShort(answer);
  const notes = [...(answer.warnings ?? []).map((text) => `Warning: ${text}`), ...(answer.assumptions ?? [])];
  fill(
      byId("answer"), element("h2", {id: "answer-heading"}, "In short"),
      element("div", {class: stale ? "stale" : ""}, lead.map((text) => element("p", {class: "lead"}, text)),
          more.map((text) => element("p", {}, text))),
      stale ? element("p", {class: "quiet"}, "Of the state before; the present one is being judged.") : undefined,
      !stale && answer.detail === "margins" ?
          element("p", {class: "quiet"}, "Buckling and screws that sit softer in bone are not in this yet.") :
          undefined,
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

// What a reader must know beside each figure of this result.
function doubtOf(answer) {
  const state = answer.findings?.state;
  if (!state) return "";
  if (state.not_trusted.length > 0) return "NOT TO BE TRUSTED";
  return state.estimated.length > 0 ? `rests on an ESTIMATE (${state.estimated.join(", ")})` : "";
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
  const notes = [], doubt = judged ? doubtOf(answer) : "";
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
      margin.load ?? "", from, ...(doubt ? [doubt] : [])
    ];
  });
  const table = (caption, some) => tableOf(caption, ["part", "", "margin", "load", "from", ...(doubt ? ["trust"] : [])], some, [2]);
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
      judged ? leftOut(answer.findings.margins_left_out ?? []) : undefined,
      judged && answer.findings.state.limits.length > 0 ?
          [
            element("h3", {}, "Limits passed"),
            element("ul", {}, answer.findings.state.limits.map((text) => element("li", {}, text)))
          ] :
          undefined);
}

function leftOut(list) {
  if (list.length === 0) return undefined;
  const text = (one) =>
      typeof one === "string" ? one : one.sentence ?? [one.part, one.reason].filter(Boolean).join(": ");
  return element("p", {}, `Not known: ${list.map(text).join(" ")}`);
}
