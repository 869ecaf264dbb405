// Plain WebGL2: some hundred lines do what is needed here; a scene graph would be ten times the whole interface.
const vertexSource = `#version 300 es
precision highp float;
uniform mat4 clip;
uniform float factor;
uniform highp sampler2D motion;
in vec3 place;
in vec3 normal;
in float owner;
out vec3 facing;
out float stress;
void main() {
  int width = textureSize(motion, 0).x;
  int row = int(owner + 0.5);
  vec4 moved = texelFetch(motion, ivec2(row % width, row / width), 0);
  gl_Position = clip * vec4(place + factor * moved.xyz, 1.0);
  facing = normal;
  stress = moved.w;
}`;
const fragmentSource = `#version 300 es
precision highp float;
uniform vec3 back;
uniform vec3 plain;
uniform float highest;
uniform bool coloured;
uniform bool line;
uniform float cover;
uniform vec3 points[10];
in vec3 facing;
in float stress;
out vec4 colour;
void main() {
  vec3 base = plain;
  if (coloured) {
    float place = clamp(stress / highest, 0.0, 1.0) * 9.0;
    int below = min(int(place), 8);
    base = mix(points[below], points[below + 1], place - float(below));
  }
  float light = line ? 1.0 : 0.55 + 0.45 * abs(dot(normalize(facing), back));
  colour = vec4(base * light, cover);
}`;

class Drawing {
  constructor(canvas) {
    // Kept after it is shown, so that a copy of the picture is not empty.
    const gl = canvas.getContext("webgl2", {alpha: false, antialias: true, preserveDrawingBuffer: true});
    if (!gl) throw new Error("This browser draws no WebGL2.");
    this.gl = gl;
    this.canvas = canvas;
    this.program = gl.createProgram();
    for (const [kind, source] of [[gl.VERTEX_SHADER, vertexSource], [gl.FRAGMENT_SHADER, fragmentSource]]) {
      const shader = gl.createShader(kind);
      gl.shaderSource(shader, source);
      gl.compileShader(shader);
      gl.attachShader(this.program, shader);
    }
    gl.linkProgram(this.program);
    if (!gl.getProgramParameter(this.program, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(this.program));
    this.at = (name) => gl.getUniformLocation(this.program, name);
    gl.useProgram(this.program);
    gl.uniform3fv(this.at("points"), scalePoints.flat().map((value) => value / 255));
    gl.enable(gl.DEPTH_TEST);
    gl.enable(gl.POLYGON_OFFSET_FILL);
    gl.polygonOffset(1, 1);
    gl.blendFunc(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA);
  }

  // A shape in the memory of the card; `free` it when it is no longer drawn.
  load(shape) {
    const gl = this.gl;
    const array = gl.createVertexArray();
    gl.bindVertexArray(array);
    const attributes = [["place", shape.places, 3], ["normal", shape.normals, 3], ["owner", shape.owners, 1]];
    const buffers = attributes.map(([name, data, size]) => {
      const buffer = gl.createBuffer();
      gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
      gl.bufferData(gl.ARRAY_BUFFER, data, gl.STATIC_DRAW);
      const where = gl.getAttribLocation(this.program, name);
      gl.enableVertexAttribArray(where);
      gl.vertexAttribPointer(where, size, gl.FLOAT, false, 0, 0);
      return buffer;
    });
    const indices = gl.createBuffer();
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, indices);
    const all = new Uint32Array(shape.triangles.length + shape.lines.length);
    all.set(shape.triangles);
    all.set(shape.lines, shape.triangles.length);
    gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, all, gl.STATIC_DRAW);
    gl.bindVertexArray(null);
    return {
      array,
      buffers: [...buffers, indices],
      triangles: shape.triangles.length,
      lines: shape.lines.length,
      texture: gl.createTexture()
    };
  }

  // Rows of motion and stress: x, y, z, MPa.
  move(loaded, rows) {
    const gl = this.gl;
    const width = 1024, height = Math.max(Math.ceil(rows.length / 4 / width), 1);
    const padded = new Float32Array(4 * width * height);
    padded.set(rows);
    gl.bindTexture(gl.TEXTURE_2D, loaded.texture);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA32F, width, height, 0, gl.RGBA, gl.FLOAT, padded);
    for (const [what, how] of [
             [gl.TEXTURE_MIN_FILTER, gl.NEAREST], [gl.TEXTURE_MAG_FILTER, gl.NEAREST],
             [gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE], [gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE]])
      gl.texParameteri(gl.TEXTURE_2D, what, how);
  }

  free(loaded) {
    loaded.buffers.forEach((buffer) => this.gl.deleteBuffer(buffer));
    this.gl.deleteTexture(loaded.texture);
    this.gl.deleteVertexArray(loaded.array);
  }

  // parts: [{loaded, plain: [r, g, b], coloured, cover}], those that are seen through last; `look`: {factor,
  // highest, background: [r, g, b]}.
  draw(parts, camera, look) {
    const gl = this.gl;
    const density = Math.min(window.devicePixelRatio || 1, 2);
    const [width, height] =
        [this.canvas.clientWidth, this.canvas.clientHeight].map((size) => Math.max(Math.round(size * density), 1));
    if (this.canvas.width !== width || this.canvas.height !== height) Object.assign(this.canvas, {width, height});
    gl.viewport(0, 0, width, height);
    gl.clearColor(...look.background, 1);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.useProgram(this.program);
    gl.uniformMatrix4fv(this.at("clip"), false, camera.matrix(width / height));
    gl.uniform3fv(this.at("back"), camera.axes().back);
    gl.uniform1f(this.at("highest"), look.highest);
    const dark = look.background[0] < 0.5;
    for (const {loaded, plain, coloured, cover} of parts) {
      gl.bindVertexArray(loaded.array);
      gl.bindTexture(gl.TEXTURE_2D, loaded.texture);
      const through = cover < 1;
      gl[through ? "enable" : "disable"](gl.BLEND);
      gl.depthMask(!through);
      gl.uniform1f(this.at("cover"), cover);
      gl.uniform1f(this.at("factor"), look.factor);
      gl.uniform3fv(this.at("plain"), plain);
      gl.uniform1i(this.at("coloured"), coloured ? 1 : 0);
      gl.uniform1i(this.at("line"), 0);
      gl.drawElements(gl.TRIANGLES, loaded.triangles, gl.UNSIGNED_INT, 0);
      gl.disable(gl.BLEND);
      gl.depthMask(true);
      if (loaded.lines === 0) continue;
      gl.uniform1f(this.at("cover"), 1);
      gl.uniform1i(this.at("coloured"), 0);
      gl.uniform1i(this.at("line"), 1);
      for (const [times, grey] of [
               [look.factor, dark ? 0.85 : 0.2], [0, dark ? 0.4 : 0.7]]) {  // as loaded, and pale at rest
        gl.uniform1f(this.at("factor"), times);
        gl.uniform3fv(this.at("plain"), [grey, grey, grey]);
        gl.drawElements(gl.LINES, loaded.lines, gl.UNSIGNED_INT, 4 * loaded.triangles);
      }
    }
    gl.bindVertexArray(null);
  }
}
