// The tables of a case file as parts. What a reader finds wrong it reports through its section; its result is then
// incomplete and must not be used.
#pragma once

#include "cases/reader/section.h"
#include "models/parts/construct.h"

#include <vector>

namespace gapstrain::cases {

models::Bone read_bone(const Section& bone, Reading& reading);
models::Plate read_plate(const Section& plate, const models::Fracture& fracture, Reading& reading);
std::vector<models::Screw> read_screws(const Section& file, const models::Plate& plate, Reading& reading);
models::Fracture read_fracture(const Section& fracture);
std::vector<models::LoadCase> read_loads(const Section& file);

// Three bench loads for a case that names none: axial 100 N, bending 1 N m, torsion 1 N m. Their sizes are round
// numbers; the construct answers in proportion.
std::vector<models::LoadCase> bench_loads();

}  // namespace gapstrain::cases
