// A cloud of points in two figures, with the front that none is better than in both. Points are one path a kind:
// thousands of them stay quick, follow the page's colours and print as lines.
const cloudArea = {
  left: 62,
  right: 625,
  top: 36,
  bottom: 330
};

const fewPoints = 300;  // that have room to be large

// Rows that none is better than in both figures, by the first one (as models/statistics/ranking).
function frontOf(allowed, x, y) {
  const rows = allowed.filter((row) => Number.isFinite(x[row]) && Number.isFinite(y[row]));
  rows.sort((one, other) => x[one] - x[other] || y[one] - y[other] || one - other);
  const front = [];
  let lowest = Infinity;
  for (const row of rows) {
    if (!(y[row] < lowest)) continue;
    lowest = y[row];
    front.push(row);
  }
  return front;
}

function rangeOf(values) {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (!(high >= low)) return {low: 0, high: 1};
  const room = 0.04 * (high - low) || 0.1 * Math.abs(high) || 1;
  return {low: low >= 0 && low - room < 0 ? 0 : low - room, high: high + room};
}

// `kinds`: [{name, rows, mark}]; marks are shapes as well as colours. `at(row)`: its place in the drawing.
class CloudChart {
  constructor(x, y, xTitle, yTitle) {
    this.xs = x;
    this.ys = y;
    const across = rangeOf(x), up = rangeOf(y);
    this.x = scaleBetween(across.low, across.high, cloudArea.left, cloudArea.right);
    this.y = scaleBetween(up.low, up.high, cloudArea.bottom, cloudArea.top);
    this.x.ticks = ticksBetween(across.low, across.high, 6).map((value) => ({value, text: tickText(value)}));
    this.titles = [xTitle, yTitle];
  }

  at(row) {
    return [this.x.at(this.xs[row]), this.y.at(this.ys[row])];
  }

  isThere(row) {
    return Number.isFinite(this.xs[row]) && Number.isFinite(this.ys[row]);
  }

  path(rows, mark) {
    return rows.filter((row) => this.isThere(row))
        .map((row) => {
          const [x, y] = this.at(row).map((place) => place.toFixed(1));
          return mark === "cross" ? `M${x} ${y}m-2.5 -2.5l5 5m0 -5l-5 5` : `M${x} ${y}h0`;
        })
        .join("");
  }

  diamond(row, size, more) {
    const [x, y] = this.at(row);
    return element(
        "svg:path", {d: `M${x} ${y - size}l${size} ${size}l${- size} ${size}l${- size} ${- size}z`, ...more});
  }

  // The point next to a place of the drawing.
  nearest(x, y, within) {
    let [best, least] = [undefined, within * within];
    for (let row = 0; row < this.xs.length; ++row) {
      if (!this.isThere(row)) continue;
      const [px, py] = this.at(row);
      const away = (px - x) ** 2 + (py - y) ** 2;
      if (away < least) [best, least] = [row, away];
    }
    return best;
  }

  draw(label, kinds, front, marked, pointed) {
    const line =
        front.filter((row) => this.isThere(row)).map((row) => this.at(row).map((v) => v.toFixed(1)).join(" "));
    const ring = pointed !== undefined && this.isThere(pointed) ? this.at(pointed) : undefined;
    return element(
        "svg:svg", {viewBox: "0 0 640 384", role: "img", "aria-label": label, class: "cloud"},
        axes(cloudArea, this.x, this.y, ...this.titles),
        kinds.map((kind) => element("svg:path", {
                    class: `points ${kind.mark}${this.xs.length < fewPoints ? " few" : ""}`,
                    d: this.path(kind.rows, kind.mark)
                  })),
        line.length > 1 ? element("svg:polyline", {class: "front-line", points: line.join(" ")}) : undefined,
        front.filter((row) => this.isThere(row)).map((row) => this.diamond(row, 5, {class: "front-mark"})),
        marked.filter((one) => this.isThere(one.row)).map(({row, name}) => {
          const [x, y] = this.at(row);
          const toLeft = x > 0.7 * cloudArea.right;
          return [
            element("svg:rect", {class: "own-mark", x: x - 6, y: y - 6, width: 12, height: 12}),
            element(
                "svg:text", {x: toLeft ? x - 10 : x + 10, y: y - 9, "text-anchor": toLeft ? "end" : "start"}, name)
          ];
        }),
        ring ? element("svg:circle", {class: "pointed", cx: ring[0], cy: ring[1], r: 9}) : undefined);
  }
}
