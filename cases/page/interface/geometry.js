// Walls with a thickness out of mid-surfaces, and shafts out of axes. A shape is {places, normals, owners,
// triangles, lines}: places at rest, mm; the owner of a vertex is the row of the motion that it takes part in.
function wallShape(positions, normals, thickness, triangles) {
  const count = positions.length / 3;
  const boundary = openEdges(triangles, count);
  const places = [], shading = [], owners = [], faces = [], lines = [];
  const put = (vertex, side, normal) => {
    for (let k = 0; k < 3; ++k) {
      places.push(positions[3 * vertex + k] + 0.5 * side * thickness[vertex] * normals[3 * vertex + k]);
      shading.push(normal[k]);
    }
    owners.push(vertex);
    return owners.length - 1;
  };
  const normalOf = (vertex, side) => [0, 1, 2].map((k) => side * normals[3 * vertex + k]);
  for (const side of [1, -1])
    for (let v = 0; v < count; ++v) put(v, side, normalOf(v, side));
  for (let t = 0; t < triangles.length; t += 3) {
    faces.push(triangles[t], triangles[t + 1], triangles[t + 2]);
    faces.push(count + triangles[t], count + triangles[t + 2], count + triangles[t + 1]);
  }
  const at = (v) => [positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]];
  for (const [a, b] of boundary) {
    const outward = unit(cross(minus(at(b), at(a)), normalOf(a, 1)));
    const corners = [put(a, 1, outward), put(b, 1, outward), put(b, -1, outward), put(a, -1, outward)];
    faces.push(corners[0], corners[1], corners[2], corners[0], corners[2], corners[3]);
    lines.push(corners[0], corners[1], corners[2], corners[3]);
  }
  return {
    places: new Float32Array(places),
    normals: new Float32Array(shading),
    owners: new Float32Array(owners),
    triangles: new Uint32Array(faces),
    lines: new Uint32Array(lines)
  };
}

// Edges with a triangle on one side only, each in the sense of that triangle.
function openEdges(triangles, count) {
  const seen = new Map();
  for (let t = 0; t < triangles.length; t += 3)
    for (const [a, b] of [[0, 1], [1, 2], [2, 0]].map(([i, j]) => [triangles[t + i], triangles[t + j]])) {
      const key = Math.min(a, b) * count + Math.max(a, b);
      if (seen.has(key))
        seen.set(key, undefined);
      else
        seen.set(key, [a, b]);
    }
  return [...seen.values()].filter((edge) => edge !== undefined);
}

const roundCorners = 18;

// All shafts with their heads as one shape, with the motion and stress of each place of their axes.
function shaftsShape(screws) {
  const places = [], normals = [], owners = [], faces = [], motion = [];
  const put = (place, normal, owner) => {
    places.push(...place);
    normals.push(...normal);
    owners.push(owner);
    return owners.length - 1;
  };
  const ring = (centre, radius, across, owner, normal) => Array.from({length: roundCorners}, (_, k) => {
    const angle = 2 * Math.PI * k / roundCorners;
    const out = plus([0, 0, 0].map((_, i) => Math.cos(angle) * across[0][i]), across[1], Math.sin(angle));
    return put(plus(centre, out, radius), normal ?? out, owner);
  });
  const join = (low, high) => {
    for (let k = 0; k < roundCorners; ++k) {
      const next = (k + 1) % roundCorners;
      faces.push(low[k], low[next], high[next], low[k], high[next], high[k]);
    }
  };
  const close = (rim) => {
    for (let k = 2; k < roundCorners; ++k) faces.push(rim[0], rim[k - 1], rim[k]);
  };
  for (const screw of screws) {
    const first = motion.length / 4;
    const axis = screw.axis;
    const along = unit(minus(axis[axis.length - 1], axis[0]));
    const side = unit(cross(along, Math.abs(along[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0]));
    const across = [side, cross(along, side)];
    axis.forEach((_, k) => motion.push(...screw.motion[k], screw.stress_mpa[k] ?? NaN));
    const back = along.map((v) => -v);
    if (screw.head_radius_mm > 0) {  // a low cylinder
      const top = plus(axis[0], back, 0.45 * screw.head_radius_mm);
      join(ring(axis[0], screw.head_radius_mm, across, first), ring(top, screw.head_radius_mm, across, first));
      close(ring(top, screw.head_radius_mm, across, first, back));
      close(ring(axis[0], screw.head_radius_mm, across, first, along));
    }
    const rings = axis.map((place, k) => ring(place, screw.core_radius_mm, across, first + k));
    for (let k = 1; k < rings.length; ++k) join(rings[k - 1], rings[k]);
    close(ring(axis[axis.length - 1], screw.core_radius_mm, across, first + axis.length - 1, along));
  }
  return {
    places: new Float32Array(places),
    normals: new Float32Array(normals),
    owners: new Float32Array(owners),
    triangles: new Uint32Array(faces),
    lines: new Uint32Array(0),
    motion: new Float32Array(motion)
  };
}
