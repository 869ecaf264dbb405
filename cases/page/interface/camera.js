// Looks at the construct from any side, without perspective, so that lengths compare. x: along the bone towards
// distal; z: from the bone to the plate.
class Camera {
  constructor(centre, reach) {
    this.home = {yaw: 0, pitch: 0.35, centre: [...centre], reach};
    this.toHome();
  }
  toHome() {
    Object.assign(this, this.home, {centre: [...this.home.centre]});
  }
  // From the plate's side, onto the plate, and along the bone.
  look(yaw, pitch) {
    this.toHome();
    Object.assign(this, {yaw, pitch});
  }
  turn(right, up) {
    this.yaw -= right;
    this.pitch = Math.min(Math.max(this.pitch + up, -Math.PI / 2), Math.PI / 2);
  }
  zoom(factor) {
    this.reach = Math.min(Math.max(this.reach / factor, this.home.reach / 40), this.home.reach * 4);
  }
  axes() {
    const [cy, sy, cp, sp] = [Math.cos(this.yaw), Math.sin(this.yaw), Math.cos(this.pitch), Math.sin(this.pitch)];
    return {right: [cy, sy, 0], up: [-sy * sp, cy * sp, cp], back: [sy * cp, -cy * cp, sp]};
  }
  // By shares of the picture's width.
  shift(right, up) {
    const axes = this.axes();
    for (let k = 0; k < 3; ++k) this.centre[k] -= 2 * this.reach * (right * axes.right[k] + up * axes.up[k]);
  }
  // Column by column, from mm to clip space, for a picture of this width over height.
  matrix(aspect) {
    const {right, up, back} = this.axes();
    const scales = [1 / this.reach, aspect / this.reach, -1 / (20 * this.home.reach)];
    const rows = [right, up, back];
    const matrix = new Float32Array(16);
    for (let row = 0; row < 3; ++row) {
      for (let k = 0; k < 3; ++k) matrix[4 * k + row] = scales[row] * rows[row][k];
      matrix[12 + row] = -scales[row] * dot(rows[row], this.centre);
    }
    matrix[15] = 1;
    return matrix;
  }
}

const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a, b, times = 1) => [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a) => {
  const size = Math.hypot(...a) || 1;
  return [a[0] / size, a[1] / size, a[2] / size];
};
