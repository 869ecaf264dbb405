// The case of this state: to copy, to save, and to run on the command line; the page's address of it; and the
// program.
function showCase(text) {
  const said = element("span", {role: "status", class: "quiet"});
  const copy = async (what, name) => {
    try {
      await navigator.clipboard.writeText(what);
      said.textContent = `${name} copied.`;
    } catch {
      said.textContent = "This browser lets no page of a file copy: mark the text below and copy it.";
    }
  };
  if (showCase.saved) URL.revokeObjectURL(showCase.saved);
  showCase.saved = URL.createObjectURL(new Blob([text], {type: "application/toml"}));
  const link = () => `${location.href.split("#")[0]}${linkOf(History.present)}`;
  fill(
      byId("case"), element("h2", {id: "case-heading"}, "The case of this state"),
      element(
          "p", {}, "Run it with ", element("code", {}, "gapstrain analyse"),
          " for the same figures, with fields and pictures."),
      element(
          "div", {class: "bar"}, button("copy-case", "Copy the case", () => copy(text, "Case")),
          element(
              "a", {class: "button", href: showCase.saved, download: "case.toml", "data-key": "save-case"},
              "Save the case"),
          button("copy-link", "Copy a link to this state", () => copy(link(), "Link")), said),
      element("pre", {id: "case-text", tabindex: 0, role: "group", "aria-label": "Case file"}, text));
}

function showEnd(facts) {
  const program = facts.program;
  fill(
      byId("end"), facts.cautions.map((text) => element("p", {}, text)),
      element(
          "p", {},
          `${program.name} ${program.version}${
              program.commit && program.commit !== "unknown" ?
                  ` (${program.commit})` :
                  ""}, ${facts.date}. Case file: ${facts.opened.file}.`));
}
