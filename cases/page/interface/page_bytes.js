// Bodies and fields out of the page's bytes: views into them, never copies.

// The bodies of a variant at rest, each with its vertices counted from its own first.
function bodiesOf(opened, bytes, variant) {
  const {bodies, positions, normals, thickness, indices} = opened.drawing[variant];
  const view = (Type, part) => new Type(bytes.buffer, bytes.byteOffset + part.offset, part.count);
  const all = {
    positions: view(Float32Array, positions),
    normals: view(Float32Array, normals),
    thickness: view(Float32Array, thickness),
    indices: view(Uint32Array, indices)
  };
  return bodies.map((body) => {
    const [first, end] = [body.first_vertex, body.first_vertex + body.vertices];
    return {
      name: body.name,
      kind: body.kind,
      positions: all.positions.subarray(3 * first, 3 * end),
      normals: all.normals.subarray(3 * first, 3 * end),
      thickness: all.thickness.subarray(first, end),
      triangles: all.indices.subarray(body.first_index, body.first_index + body.indices).map((v) => v - first)
    };
  });
}

// A field of an answer with its numbers, and the largest stress that the picture has of the plate, MPa.
function fieldOf(opened, variant, field, buffer, base) {
  const view = (part) => new Float32Array(buffer, base + part.offset, part.count);
  const stress = field.colours ? view(field.colours) : undefined;
  let plateStress = 0;
  if (stress)
    for (const body of opened.drawing[variant].bodies.filter((one) => one.kind === "plate"))
      for (let v = body.first_vertex; v < body.first_vertex + body.vertices; ++v)
        plateStress = Math.max(plateStress, stress[v]);
  return {...field, motions: view(field.positions), stress, plate_stress: plateStress};
}
