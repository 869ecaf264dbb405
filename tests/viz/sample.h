// A made-up but lifelike solution to draw: a plate with ten holes on two bone fragments, six screws.
#pragma once

#include "models/findings/fields.h"
#include "models/findings/findings.h"

#include <memory>

namespace gapstrain::tests {

inline constexpr int sample_holes = 10;
inline constexpr double sample_pitch = 10.3, sample_plate_start = 13.7, sample_gap = 1.3;  // mm

std::shared_ptr<const mesh::ShellMesh> sample_plate_mesh();
models::LoadFields sample_fields(models::PlateFace hottest = models::PlateFace::top);
models::LoadFindings sample_load_findings(const models::LoadFields& fields, double strain_scale = 1.0);
models::Findings sample_findings();

}  // namespace gapstrain::tests
