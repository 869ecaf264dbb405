// How the pictures are drawn: from where, how much deformed, in which colours. One choice for all that stand side
// by side.
class PicturePanel {
  constructor(container, camera, changed) {
    Object.assign(this, {container, camera, changed, factor: undefined, scale: undefined, bone: "through"});
    this.colours = element("div", {id: "scale"});
    this.caption = element("p", {});
    this.controls = element("div", {class: "bar"});
    byId("views").after(this.colours, this.caption);
    container.append(this.controls);
  }

  // A factor of 1, 2 or 5 times a power of ten with which the largest displacement is some 6 % of the plate's
  // length.
  fitting(displacement, length) {
    if (!(displacement > 0)) return 1;
    const wanted = 0.06 * length / displacement;
    const power = 10 ** Math.floor(Math.log10(wanted));
    return Math.max([1, 2, 5].filter((step) => step * power <= wanted).pop() * power, 1);
  }

  // Of all that is seen: {field, plateStress} each; and the words for the one at hand.
  look(seen, length, printing) {
    const fit = Math.min(...seen.map((one) => this.fitting(one.field.displacement_mm, length)));
    const stress = roundUp(Math.max(...seen.map((one) => one.field.plate_stress ?? 0)));
    const dark = window.matchMedia("(prefers-color-scheme: dark)").matches && !printing;
    return {
      factor: this.factor ?? fit,
      fit,
      highest: this.scale ?? stress,
      stress,
      boneStress: this.bone === "stress",
      boneCover: this.bone === "through" ? 0.22 : 1,
      background: dark ? [0.10, 0.13, 0.16] : [0.985, 0.99, 0.995]
    };
  }

  // `under`: the load of the field in words; `mark`: see drawScale.
  show(look, field, mark, under) {
    if (field.stress)
      drawScale(this.colours, look.highest, mark);
    else
      fill(this.colours);
    const says =
        `Displacements drawn ${tickText(look.factor)} times as large as they are; pale outline: at rest. ` +
        `Largest displacement ${digits(field.displacement_mm)} mm.`;
    this.caption.textContent =
        `${field.step === undefined ? `Under ${under}` : `After step ${field.step + 1}, ${field.name}`}. ${says}`;
    const select = (id, label, options, value, taken) => element(
        "span", {class: "choice"}, element("label", {"for": id}, label),
        element(
            "select", {
              id,
              "data-key": id,
              onchange: (event) => {
                taken(event.target.value);
                this.changed();
              }
            },
            options.map(
                ([one, text]) => element("option", {value: one, selected: String(one) === String(value)}, text))));
    const number = (text) => (text === "fit" ? undefined : Number(text));
    const times = [0, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].map(
        (k) => [k, k === 0 ? "not deformed" : `\u00d7 ${tickText(k)}`]);
    const ends = [25, 50, 100, 200, 300, 500, 700, 1000].map((k) => [k, `${k} MPa`]);
    const act = (key, text, says, done) => button(key, text, () => {
      done();
      this.changed();
    }, {"aria-label": says, title: says});
    const stand = (key, text, yaw, pitch) => button(key, text, () => {
      this.camera.look(yaw, pitch);
      this.changed();
    });
    fill(
        this.controls,
        select(
            "factor", "Deformed", [["fit", `as fits (\u00d7 ${tickText(look.fit)})`], ...times],
            this.factor ?? "fit",
            (text) => {
              this.factor = number(text);
            }),
        !field.stress ? undefined :
                        select(
                            "scale-end", "Colours up to",
                            [["fit", `as fits (${tickText(look.stress)} MPa)`], ...ends], this.scale ?? "fit",
                            (text) => {
                              this.scale = number(text);
                            }),
        select(
            "bone", "Bone", [["through", "seen through"], ["solid", "solid"], ["stress", "with its stress"]],
            this.bone,
            (text) => {
              this.bone = text;
            }),
        act("nearer", "+", "Nearer", () => this.camera.zoom(1.25)),
        act("further", "\u2212", "Further away", () => this.camera.zoom(1 / 1.25)),
        act("turn-left", "\u21ba", "Turn to the left", () => this.camera.turn(0.2, 0)),
        act("turn-right", "\u21bb", "Turn to the right", () => this.camera.turn(-0.2, 0)),
        stand("look-side", "From the side", 0, 0.35), stand("look-plate", "Onto the plate", 0, Math.PI / 2),
        stand("look-end", "Along the bone", Math.PI / 2 - 0.12, 0.12));
  }
}
