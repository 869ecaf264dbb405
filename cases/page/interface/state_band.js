// What stands on top of everything: whether it holds, whether it is to be trusted, and the caution.
const stateWords = {
  holds: "holds",
  fails: "fails",
  not_trusted: "not to be trusted",
  limit: "limit",
  estimate: "estimate"
};

function showState(answer, pending, stale, judging) {
  const lines = answer.unsolved ? [{kind: "not_trusted", text: `NOT SOLVED: ${answer.unsolved}`}] :
      pending                   ? quickLines(answer, stale) :
      judging                   ? linesSoFar(answer.head ?? []) :
                                  answer.head ?? [];
  const band = byId("band");
  band.className = lines[0]?.kind ?? "";
  // Where the band would cover too much of the screen, its words in one line stay on top.
  const words = [...new Set(lines.map((line) => stateWords[line.kind] ?? "not judged yet"))];
  const brief = byId("brief");
  brief.className = band.className;
  brief.textContent = `${words.join(", ").toUpperCase()}. Not a medical device.`;
  const said = lines.map((line) => `${line.kind} ${line.text}`).join("\n");
  if (band.dataset.said === said) return;  // else a screen reader would say it again at each change of load
  band.dataset.said = said;
  fill(byId("state"), lines.map((line) => element("p", {class: line.kind}, line.text)));
}

// Margins are there, buckling and screws that sit softer in bone are not: nothing is said to hold yet.
function linesSoFar(head) {
  const known = head.filter((line) => line.kind !== "holds");
  return [...known, {
            kind: "pending",
            text: "Not judged to the end yet: buckling and screws that sit softer in bone are under way."
          }];
}

// Before the margins are there: what the quick figures say, and that they have not been judged.
function quickLines(answer, stale) {
  const least = stale ? undefined : figureOf(answer, "margin");
  const fails = least && !(least.value >= 1);
  const lines = fails ? [{kind: "fails", text: `FAILS: the least margin is ${least.shown}.`}] : [];
  const doubts =
      (answer.quick?.doubts ?? []).map((text) => ({kind: "not_trusted", text: `NOT TO BE TRUSTED: ${text}`}));
  return [...lines, ...doubts, {kind: "pending", text: "Not judged yet: the checks of this state are under way."}];
}
