// One picture of a construct that can be turned: canvas, labels of holes and screws, and what a hand does to it.
const boneColour = [0.87, 0.84, 0.76], metalColour = [0.66, 0.69, 0.73], headColour = [0.55, 0.57, 0.60];

class View {
  // `changed` is called when the camera moved, `pressed` with the hole that was clicked or tapped, `dropped` with
  // the hole that a screw was dragged from and the one that it was let go over.
  constructor(camera, name, {changed, pressed, dropped}) {
    this.camera = camera;
    this.canvas = element("canvas", {tabindex: 0, role: "img", "aria-label": name});
    this.paper = element("canvas", {class: "paper", "aria-hidden": "true"});
    this.tags = element("div", {"aria-hidden": "true"});
    this.factor = element("span", {class: "factor"});
    this.root = element(
        "div", {class: "view"}, this.canvas, this.paper, this.tags,
        element("div", {class: "head"}, element("span", {class: "name"}, name), this.factor));
    Object.assign(this, {changed, pressed, dropped, bodies: [], places: [], frames: []});
    this.listen();
  }

  start() {
    this.drawing = new Drawing(this.canvas);
  }

  // How much deformed, and under what, in the picture itself.
  tell(factor, under) {
    const text = `${under ? `${under}; ` : ""}deformed \u00d7\u00a0${tickText(factor)}`;
    if (this.factor.textContent !== text) this.factor.textContent = text;
  }

  describe(text) {
    this.canvas.setAttribute(
        "aria-label",
        `${text} Arrow keys turn the picture, with Shift they move it, plus and minus bring it nearer or take it ` +
            "away, Home sets it back.");
  }

  // The bodies of a variant at rest: [{name, kind, positions, normals, thickness, triangles}].
  show(bodies) {
    this.bodies.forEach((body) => this.drawing.free(body.loaded));
    this.bodies = bodies.map(
        (body) => ({
          kind: body.kind,
          rest: body.positions,
          count: body.positions.length / 3,
          rows: new Float32Array(4 * (body.positions.length / 3)),
          loaded: this.drawing.load(wallShape(body.positions, body.normals, body.thickness, body.triangles))
        }));
  }

  // A field: displacement and stress of every vertex of all bodies in their order, and the shafts.
  move(field, holes) {
    let first = 0;
    for (const body of this.bodies) {
      for (let v = 0; v < body.count; ++v) {
        for (let k = 0; k < 3; ++k) body.rows[4 * v + k] = field.motions[3 * (first + v) + k];
        body.rows[4 * v + 3] = field.stress ? field.stress[first + v] : 0;
      }
      this.drawing.move(body.loaded, body.rows);
      first += body.count;
    }
    if (this.shafts) this.drawing.free(this.shafts);
    const shafts = shaftsShape(field.screws);
    this.shafts = this.drawing.load(shafts);
    this.drawing.move(this.shafts, shafts.motion);
    this.field = field;
    this.holes = holes.map((hole) => ({...hole, motion: this.motionAt(hole.at)}));
  }

  // How the plate moves there: as its nearest vertex.
  motionAt(place) {
    const plate = this.bodies.findIndex((body) => body.kind === "plate");
    if (plate < 0) return [0, 0, 0];
    const {rest, rows} = this.bodies[plate];
    let nearest = 0, least = Infinity;
    for (let v = 0; v < rest.length / 3; ++v) {
      const away = Math.hypot(rest[3 * v] - place[0], rest[3 * v + 1] - place[1], rest[3 * v + 2] - place[2]);
      if (away < least) [nearest, least] = [v, away];
    }
    return [0, 1, 2].map((k) => rows[4 * nearest + k]);
  }

  // look: {factor, highest, background, boneStress, boneCover}
  draw(look) {
    if (!this.field) return;
    const begun = performance.now();
    const coloured = Boolean(this.field.stress);
    const parts = this.bodies.map((body) => {
      const bone = body.kind === "bone";
      return {
        loaded: body.loaded,
        plain: bone ? boneColour : metalColour,
        coloured: coloured && (!bone || look.boneStress),
        cover: bone ? look.boneCover : 1
      };
    });
    parts.push({loaded: this.shafts, plain: headColour, coloured, cover: 1});
    parts.sort((a, b) => b.cover - a.cover);
    this.drawing.draw(parts, this.camera, look);
    this.label(look.factor);
    this.frames.push(performance.now() - begun);
    if (this.frames.length > 240) this.frames.shift();
  }

  // A print has the last picture that was on the screen, not the one just drawn: it is given a copy of that.
  toPaper() {
    Object.assign(this.paper, {width: this.canvas.width, height: this.canvas.height});
    this.paper.getContext("2d").drawImage(this.canvas, 0, 0);
  }

  // In pixels of the page, from the canvas's left upper corner.
  project(place) {
    const [width, height] = [this.canvas.clientWidth, this.canvas.clientHeight];
    const m = this.camera.matrix(width / height);
    const at = (row) => m[row] * place[0] + m[4 + row] * place[1] + m[8 + row] * place[2] + m[12 + row];
    return [0.5 * width * (1 + at(0)), 0.5 * height * (1 - at(1))];
  }

  label(factor) {
    const filled =
        new Map(this.field.screws.filter((screw) => screw.hole > 0).map((screw) => [screw.hole, screw]));
    const texts = [];
    this.places = this.holes.map((hole) => {
      const screw = filled.get(hole.hole);
      const moved = screw ? plus(screw.axis[0], screw.motion[0], factor) : plus(hole.at, hole.motion, factor);
      const [x, y] = this.project(moved);
      texts.push([this.project(plus(moved, hole.normal, 5)), String(hole.hole), "tag"]);
      return {hole: hole.hole, x, y, filled: Boolean(screw)};
    });
    for (const screw of this.field.screws) {
      const last = screw.axis.length - 1;
      const beyond = unit(minus(screw.axis[last], screw.axis[0]));
      texts.push([
        this.project(plus(plus(screw.axis[last], screw.motion[last], factor), beyond, 4)), screw.label, "tag screw"
      ]);
    }
    while (this.tags.children.length > texts.length) this.tags.lastChild.remove();
    while (this.tags.children.length < texts.length) this.tags.append(element("span"));
    texts.forEach(([[x, y], text, kind], k) => {
      const tag = this.tags.children[k];
      if (tag.textContent !== text) tag.textContent = text;
      if (tag.className !== kind) tag.className = kind;
      tag.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`;
    });
  }

  holeAt(x, y, within) {
    const near = this.places.map((place) => ({...place, away: Math.hypot(place.x - x, place.y - y)}))
                     .filter((place) => place.away < within)
                     .sort((a, b) => a.away - b.away);
    return near[0];
  }

  listen() {
    const held = new Map();
    const reach = (event) => (event.pointerType === "touch" ? 24 : 14);
    let travelled = 0, carried, start;
    const ghost = element("span", {class: "tag ghost", hidden: true});
    this.root.append(ghost);
    this.canvas.addEventListener("pointerdown", (event) => {
      held.set(event.pointerId, [event.offsetX, event.offsetY]);
      travelled = held.size > 1 ? Infinity : 0;
      start = this.holeAt(event.offsetX, event.offsetY, reach(event));
      carried = held.size === 1 && start?.filled && this.dropped ? start.hole : undefined;
      this.canvas.setPointerCapture(event.pointerId);
    });
    this.canvas.addEventListener("pointermove", (event) => {
      const before = held.get(event.pointerId);
      if (!before) return;
      const now = [event.offsetX, event.offsetY];
      const [dx, dy] = [now[0] - before[0], now[1] - before[1]];
      travelled += Math.hypot(dx, dy);
      held.set(event.pointerId, now);
      const width = this.canvas.clientWidth;
      if (carried !== undefined && held.size === 1) {
        const over = this.holeAt(...now, 2 * reach(event));
        const [x, y] = over && !over.filled ? [over.x, over.y] : now;
        ghost.hidden = travelled <= 4;
        ghost.style.transform = `translate(${x}px, ${y}px) translate(-50%, -50%)`;
        return;
      }
      if (held.size === 2) {
        const other = [...held.entries()].find(([id]) => id !== event.pointerId)[1];
        const apart = (one) => Math.hypot(one[0] - other[0], one[1] - other[1]) || 1;
        this.camera.zoom(apart(now) / apart(before));
        this.camera.shift(0.5 * dx / width, -0.5 * dy / width);
      } else if (event.shiftKey || event.buttons === 4) {
        this.camera.shift(dx / width, -dy / width);
      } else if (travelled > 4) {
        this.camera.turn(dx / 150, dy / 150);
      }
      this.changed();
    });
    const release = (event) => {
      const was = held.delete(event.pointerId);
      const from = carried;
      carried = undefined;
      ghost.hidden = true;
      if (!was || event.type !== "pointerup") return;
      if (travelled <= 4) {
        if (start) this.pressed(start.hole);
      } else if (from !== undefined) {
        const over = this.holeAt(event.offsetX, event.offsetY, 2 * reach(event));
        if (over && !over.filled) this.dropped(from, over.hole);
      }
    };
    this.canvas.addEventListener("pointerup", release);
    this.canvas.addEventListener("pointercancel", release);
    this.canvas.addEventListener("wheel", (event) => {
      if (!event.ctrlKey && document.activeElement !== this.canvas)
        return;  // else the page could not be scrolled past
      event.preventDefault();
      this.camera.zoom(Math.exp(-event.deltaY / 600));
      this.changed();
    }, {passive: false});
    this.canvas.addEventListener("keydown", (event) => {
      const turns = {ArrowLeft: [-0.1, 0], ArrowRight: [0.1, 0], ArrowUp: [0, 0.1], ArrowDown: [0, -0.1]};
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      if (turns[event.key] && event.shiftKey)
        this.camera.shift(0.5 * turns[event.key][0], 0.5 * turns[event.key][1]);
      else if (turns[event.key])
        this.camera.turn(...turns[event.key]);
      else if (event.key === "+" || event.key === "=")
        this.camera.zoom(1.15);
      else if (event.key === "-")
        this.camera.zoom(1 / 1.15);
      else if (event.key === "Home")
        this.camera.toHome();
      else
        return;
      event.preventDefault();
      this.changed();
    });
  }
}
