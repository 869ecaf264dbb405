// The plan: plate, screws and steps, for the theatre and for print.
function showPlan(answer, stale) {
  const plan = answer.findings?.plan;
  if (!plan) return;
  const plate = plan.plate;
  const rows = plan.screws.map(
      (screw) =>
          [screw.label, screw.hole > 0 ? String(screw.hole) : "none", kindWord(screw.kind), screw.size,
           corticesWord(screw.cortices), screw.length_mm === undefined ? "" : digits(screw.length_mm),
           digits(screw.measured_mm), screw.drill_mm === undefined ? "" : digits(screw.drill_mm)]);
  fill(
      byId("plan"), element("h2", {id: "plan-heading"}, "Plan"),
      element(
          "div", {class: stale ? "stale" : ""},
          element(
              "p", {},
              `${sentence(plan.bone)}; fracture ${digits(plan.fracture_position_mm)} mm from the proximal end. ` +
                  `Plate of ${digits(plate.length_mm)} \u00d7 ${digits(plate.width_mm)} \u00d7 ${
                      digits(plate.thickness_mm)} mm with ${plate.holes} holes` +
                  `${plate.slots > 0 ? ` (${plate.slots} slots)` : ""}, ${plate.metal}, on the ${
                      plate.aspect} aspect, its proximal end ` +
                  `${digits(plate.proximal_end_mm)} mm from the bone's, ${
                      digits(plate.standoff_mm)} mm off the bone.`),
          tableOf(
              "Screws: length to order, length measured in the model, drill.",
              ["screw", "hole", "kind", "size", "holds in", "length mm", "measured mm", "drill mm"], rows,
              [1, 5, 6, 7]),
          element("h3", {}, "Order"), element("ol", {}, plan.steps.map((step) => element("li", {}, step))),
          plan.notes.map((note) => element("p", {}, note.sentence))),
      stale ? element("p", {class: "quiet"}, "Plan of the state before; the present one follows in a moment.") :
              undefined);
}
