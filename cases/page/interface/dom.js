// Elements by name: text is always text, never markup.
function element(name, attributes = {}, ...children) {
  const made = name.startsWith("svg:") ? document.createElementNS("http://www.w3.org/2000/svg", name.slice(4)) :
                                         document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value === undefined || value === null || value === false) continue;
    if (key.startsWith("on"))
      made.addEventListener(key.slice(2), value);
    else if (key === "style")
      for (const [rule, text] of Object.entries(value)) made.style.setProperty(rule, text);
    else if (value === true)
      made.setAttribute(key, "");
    else
      made.setAttribute(key, String(value));
  }
  for (const child of children.flat(3))
    if (child !== undefined && child !== null) made.append(child);
  return made;
}

const byId = (id) => document.getElementById(id);

// Makes a list anew and keeps the keyboard's place in it.
function fill(container, ...children) {
  const inside = container.contains(document.activeElement);
  const held = inside ? document.activeElement.dataset.key : undefined;
  const open = new Set([...container.querySelectorAll("details[open]")].map((one) => one.dataset.key));
  container.replaceChildren(...children.flat(3).filter((child) => child !== undefined && child !== null));
  for (const one of container.querySelectorAll("details"))
    if (open.has(one.dataset.key)) one.open = true;
  if (!inside) return;
  const again = [...container.querySelectorAll("[data-key]")].find((one) => held && one.dataset.key === held);
  const focus = (one) => one?.focus({preventScroll: true});
  focus(again);
  if (again && document.activeElement === again) return;
  // It is gone, or cannot be used now: the next best one beside it, else the place where it was.
  focus([...(again?.parentElement.querySelectorAll("button") ?? [])].find((one) => !one.disabled));
  if (container.contains(document.activeElement)) return;
  container.tabIndex = -1;
  focus(container);
}

// A table with a caption; cells are texts or elements, and a column of numbers stands to the right. Roles are said
// as well: on a narrow screen rows are laid out as blocks, with each cell's head before it.
function tableOf(caption, heads, rows, numbers = []) {
  const kind = (column) => (numbers.includes(column) ? {class: "number"} : {});
  const cell = (text, k) =>
      (k === 0 ?
           element("th", {scope: "row", role: "rowheader"}, text) :
           element(
               "td", {role: "cell", "data-head": heads[k], ...(text === "" ? {class: "empty"} : kind(k))}, text));
  const line = (cells) => element("tr", {role: "row"}, cells);
  return element(
      "div", {class: "wide", tabindex: 0, role: "group", "aria-label": caption},
      element(
          "table", {role: "table"}, element("caption", {}, caption),
          element(
              "thead", {role: "rowgroup"},
              line(heads.map(
                  (head, k) => element(
                      head ? "th" : "td", head ? {scope: "col", role: "columnheader", ...kind(k)} : {role: "cell"},
                      head)))),
          element("tbody", {role: "rowgroup"}, rows.map((row) => line(row.map(cell))))));
}

const button = (key, text, onclick, more = {}) =>
    element("button", {type: "button", "data-key": key, onclick, ...more}, text);

// A slider that was held is let go: by a change, or back where it was, of which a browser says nothing.
function whenLetGo(slider, done) {
  const end = () => {
    if (!slider.dataset.held) return;
    delete slider.dataset.held;
    done();
  };
  for (const event of ["change", "pointerup", "pointercancel", "blur"]) slider.addEventListener(event, end);
}

const withUnit = (shown, unit) => (unit ? `${shown} ${unit}` : shown);

const digits = (value) => (Number.isFinite(value) ? threeDigits(value) : "not known");
