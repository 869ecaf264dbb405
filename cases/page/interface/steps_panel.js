// The order of the operation: steps are dragged or moved by keys, with the force across the fracture after each.
class StepsPanel {
  constructor(container, edit, see) {
    Object.assign(this, {container, edit, see});
  }

  show(answer, seenStep) {
    const steps = answer.steps ?? [];
    const found = answer.findings?.compression?.steps ?? answer.quick?.steps ?? [];
    const forces = steps.map((_, k) => found[k]?.face?.force_n);
    const most = Math.max(1, ...forces.filter(Number.isFinite));
    this.list = element(
        "ol", {class: "step-list"},
        steps.map((step, k) => this.item(step, k, steps.length, forces[k], most, k === seenStep)));
    const notes = [...(answer.pressing ?? []), ...(answer.order ?? [])];
    fill(
        this.container, element("h2", {id: "steps-heading"}, "Order of steps"),
        element(
            "p", {class: "quiet"},
            "Drag a step by its handle, or use its buttons. With each: the force across the fracture after it."),
        steps.length > 0 ? this.list : element("p", {}, "There are no steps."),
        notes.length > 0 ?
            element(
                "details", {"data-key": "pressing", open: true}, element("summary", {}, "On pressing and order"),
                notes.map((text) => element("p", {}, text))) :
            undefined);
  }

  order(count, from, to) {
    const order = Array.from({length: count}, (_, k) => k);
    order.splice(to, 0, ...order.splice(from, 1));
    return order;
  }

  move(step, from, to, count) {
    if (to < 0 || to >= count || to === from) return;
    this.edit(
        {do: "order_steps", order: this.order(count, from, to)}, `Step "${step.text}" is now number ${to + 1}`);
  }

  item(step, k, count, force, most, seen) {
    const grip = element("span", {class: "grip", "aria-hidden": "true", title: "Drag to another place"}, "\u2195");
    const known = Number.isFinite(force);
    const item = element(
        "li", {class: "step"}, grip, element("span", {}, `${k + 1}. ${step.text}`),
        element(
            "span", {class: "order"},
            button(
                `up-${step.text}`, "\u2191", () => this.move(step, k, k - 1, count),
                {disabled: k === 0, "aria-label": `Earlier: ${step.text}`}),
            " ",
            button(
                `down-${step.text}`, "\u2193", () => this.move(step, k, k + 1, count),
                {disabled: k === count - 1, "aria-label": `Later: ${step.text}`}),
            " ", button(`see-${step.text}`, "Show", () => this.see(k), {
              "aria-pressed": seen ? "true" : "false",
              "aria-label": `Show the construct after step ${k + 1}`
            })),
        element(
            "span", {class: "forces"}, known ? element("span", {class: "force-value"}, `${digits(force)} N`) : "",
            known && force > 0 ? element("span", {class: "force-bar", style: {width: `${60 * force / most}%`}}) :
                                 undefined));
    this.drag(grip, item, step, k, count);
    return item;
  }

  drag(grip, item, step, from, count) {
    let to;
    const rows = () => [...this.list.children];
    const mark = () => rows().forEach((row, k) => {
      row.classList.toggle("before", to !== undefined && k === to && to < from);
      row.classList.toggle("after", to !== undefined && k === to && to > from);
    });
    const done = () => {
      to = undefined;
      item.classList.remove("dragged");
      mark();
    };
    grip.addEventListener("pointerdown", (event) => {
      grip.setPointerCapture(event.pointerId);
      item.classList.add("dragged");
      to = from;
    });
    grip.addEventListener("pointermove", (event) => {
      if (to === undefined) return;
      const under = rows().findIndex((row) => event.clientY < row.getBoundingClientRect().bottom);
      to = under < 0 ? count - 1 : under;
      mark();
    });
    grip.addEventListener("pointerup", () => {
      const target = to;
      done();
      if (target !== undefined) this.move(step, from, target, count);
    });
    grip.addEventListener("pointercancel", done);
  }
}
