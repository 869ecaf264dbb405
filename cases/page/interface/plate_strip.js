// The plate as a strip of holes: each is a button, screws are dragged from hole to hole or moved by keys.
const kindWords = {
  locking: "locking screw",
  cortical: "cortical screw",
  compression: "compression screw",
  lag: "lag screw"
};
const kindWord = (kind) => kindWords[kind] ?? `${kind} screw`;
const corticesWord = (count) => (count === 1 ? "one cortex" : "both cortices");

// Where the bone's axis, mm from its proximal end, comes to lie along the plate: between holes as between their
// places.
function alongPlate(holes, x) {
  if (holes.length < 2) return holes[0].along_mm;
  const beyond = holes.findIndex((hole) => hole.at[0] > x);
  const k = Math.max(beyond < 0 ? holes.length - 1 : beyond, 1);
  const [from, to] = [holes[k - 1], holes[k]];
  return from.along_mm + (to.along_mm - from.along_mm) * (x - from.at[0]) / (to.at[0] - from.at[0]);
}

class PlateStrip {
  // `edit(edit, saying)` carries out one edit; `chosen` is called with the hole that the keyboard or a hand is at.
  constructor(container, edit, chosen) {
    Object.assign(this, {container, edit, told: chosen, chosen: undefined});
  }

  show(opened, answer) {
    this.holes = opened.plate.holes;
    this.screws = new Map(answer.screws.filter((screw) => screw.hole > 0).map((screw) => [screw.hole, screw]));
    const length = opened.plate.length_mm;
    const share = (along) => `${100 * along / length}%`;
    const at = alongPlate(this.holes, opened.fracture.position_mm);
    const wide = opened.fracture.gap_mm;
    const small = (name, left, text) => element("span", {class: name, "aria-hidden": "true", style: {left}}, text);
    if (!this.holes.some((hole) => hole.hole === this.chosen)) this.chosen = this.holes[0].hole;
    const roomForKinds =
        this.container.clientWidth / this.holes.length > 66;  // "compression" in the small letters
    this.container.style.minWidth = `${1.8 * this.holes.length}rem`;
    fill(
        this.container, element("div", {class: "plate"}),
        element("div", {class: "gap", style: {left: share(at - 0.5 * wide), width: share(wide)}}),
        small("gap-name", share(at), "fracture"), this.holes.map((hole) => {
          const screw = this.screws.get(hole.hole);
          const left = share(hole.along_mm);
          const under = screw && roomForKinds ? small("kind", left, screw.kind) : undefined;
          return [small("number", left, String(hole.hole)), this.button(hole, left), under];
        }));
    this.told(this.chosen);
  }

  button(hole, left) {
    const screw = this.screws.get(hole.hole);
    const says = screw ?
        `Hole ${hole.hole}: ${screw.label}, ${kindWord(screw.kind)}, ${corticesWord(screw.cortices)}` :
        `Hole ${hole.hole}: empty${this.takes(hole.hole) ? "" : ", takes no screw here"}`;
    const names = [
      "hole", hole.shape === "slot" ? "slot" : "",
      screw                     ? screw.kind :
          this.takes(hole.hole) ? "" :
                                  "none",
      hole.hole === this.chosen ? "chosen" : ""
    ];
    const made = element(
        "button", {
          type: "button",
          class: names.join(" ").trim(),
          "aria-pressed": screw ? "true" : "false",
          "aria-label": says,
          title: says,
          tabindex: hole.hole === this.chosen ? 0 : -1,
          "data-key": `hole${hole.hole}`,
          "data-hole": hole.hole,
          style: {left}
        },
        screw ? screw.label : "");
    made.addEventListener("keydown", (event) => this.key(event, hole.hole));
    made.addEventListener("focus", () => this.choose(hole.hole));
    this.drag(made, hole.hole);
    return made;
  }

  takes(hole) {
    return this.holes.find((one) => one.hole === hole).kinds.some((kind) => kind.cortices.length > 0);
  }

  isFree(hole) {
    return hole !== undefined && !this.screws.has(hole) && this.takes(hole);
  }

  choose(hole) {
    this.chosen = hole;
    for (const one of this.container.querySelectorAll(".hole")) {
      const here = Number(one.dataset.hole) === hole;
      one.setAttribute("tabindex", here ? "0" : "-1");
      one.classList.toggle("chosen", here);
    }
    this.told(hole);
  }

  toggle(hole) {
    this.choose(hole);
    const screw = this.screws.get(hole);
    if (screw)
      this.edit({do: "remove_screw", label: screw.label}, `${screw.label} taken out of hole ${hole}`);
    else
      this.edit({do: "put_screw", hole}, `Screw put into hole ${hole}`);
  }

  move(hole, target) {
    const screw = this.screws.get(hole);
    if (!screw || target === undefined || target === hole || this.screws.has(target)) return;
    this.choose(target);
    this.edit(
        {do: "move_screw", label: screw.label, hole: target},
        `${screw.label} from hole ${hole} to hole ${target}`);
  }

  // The next hole in this sense that is empty and takes a screw.
  freeBeside(hole, sense) {
    const holes = this.holes.map((one) => one.hole);
    for (let k = holes.indexOf(hole) + sense; k >= 0 && k < holes.length; k += sense)
      if (this.isFree(holes[k])) return holes[k];
    return undefined;
  }

  focus(hole) {
    this.container.querySelector(`[data-hole="${hole}"]`).focus();
  }

  key(event, hole) {
    const holes = this.holes.map((one) => one.hole);
    if (event.key === "Home" || event.key === "End") {
      event.preventDefault();
      this.focus(event.key === "Home" ? holes[0] : holes.at(-1));
      return;
    }
    const sense = {ArrowLeft: -1, ArrowRight: 1}[event.key];
    if (sense === undefined || event.ctrlKey || event.altKey) return;
    event.preventDefault();
    if (event.shiftKey) {
      const target = this.freeBeside(hole, sense);
      if (target === undefined || !this.screws.has(hole)) return;
      this.focus(target);
      this.move(hole, target);
      return;
    }
    const next = holes[holes.indexOf(hole) + sense];
    if (next !== undefined) this.focus(next);
  }

  drag(made, hole) {
    let from, over;
    const holeUnder = (event) => {
      const under =
          document.elementsFromPoint(event.clientX, event.clientY).find((one) => one.classList.contains("hole"));
      return under ? Number(under.dataset.hole) : undefined;
    };
    const mark = (target) => {
      for (const one of this.container.querySelectorAll(".hole"))
        one.classList.toggle("target", Number(one.dataset.hole) === target);
    };
    const done = () => {
      from = undefined;
      mark(undefined);
      made.classList.remove("dragged");
    };
    made.addEventListener("pointerdown", (event) => {
      from = [event.clientX, event.clientY];
      over = hole;
      made.setPointerCapture(event.pointerId);
    });
    made.addEventListener("pointermove", (event) => {
      if (!from) return;
      over = holeUnder(event);
      made.classList.toggle("dragged", this.screws.has(hole) && over !== hole);
      mark(this.screws.has(hole) && this.isFree(over) ? over : undefined);
    });
    made.addEventListener("pointerup", (event) => {
      if (!from) return;
      const far = Math.hypot(event.clientX - from[0], event.clientY - from[1]) > 8;
      done();
      this.dragged = far;
      if (far) this.move(hole, over);
    });
    made.addEventListener("pointercancel", done);
    made.addEventListener("click", () => {
      const was = this.dragged;
      this.dragged = false;
      if (!was) this.toggle(hole);
    });
  }
}
