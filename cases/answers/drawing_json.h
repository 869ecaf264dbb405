// Bodies and fields as a page draws them: vertices of all bodies one after another.
#pragma once

#include "cases/answers/byte_block.h"
#include "models/assembly/prepared_bodies.h"
#include "models/findings/fields.h"

namespace gapstrain::cases {

// [x, y, z], mm.
inline Json point_json(const Eigen::Vector3d& point) { return {point.x(), point.y(), point.z()}; }

// {bodies: [{name, kind, first_vertex, vertices, first_index, indices}], positions, normals, thickness, indices}:
// at rest, mid-surface, mm.
Json bodies_json(const models::PreparedBodies& prepared, ByteBlock& bytes);

// {name, positions, colours, peak_mpa, displacement_mm, screws}: displacements of the vertices, the larger von
// Mises stress of both faces.
Json field_json(const models::LoadFields& fields, ByteBlock& bytes);
// {name, positions, displacement_mm, screws, holds, force_n}
Json field_json(const models::StepFields& fields, ByteBlock& bytes);

}  // namespace gapstrain::cases
