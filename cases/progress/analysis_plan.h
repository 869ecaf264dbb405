// The stages of an analysis, each with the time that it is expected to take. Measured are the sums: a geometry
// takes 2.3 s, a third of it meshing, an analysis of three loads 3.3 s without pictures (DEVELOPERS.md); how they
// divide among the stages is an estimate. Progress corrects both by the stages that are over.
#pragma once

#include "cases/progress/time_left.h"
#include "models/parts/construct.h"

namespace gapstrain::cases {

// Bodies, steps, loads and, where the case has one, the race: as `models::assess` tells its stages.
std::vector<Stage> assessment_plan(const models::Construct& construct);

// The same without the race, as `models::assess_first_day` does.
std::vector<Stage> first_day_plan(const models::Construct& construct);

// Of which the bodies alone, as `models::prepare_bodies` tells them.
std::vector<Stage> bodies_plan(const models::Construct& construct);

// What `write_outputs` tells: files, and pictures if there are any.
std::vector<Stage> outputs_plan(const models::Construct& construct, bool with_pictures);

// One plan after the other.
std::vector<Stage> operator+(std::vector<Stage> first, const std::vector<Stage>& second);

}  // namespace gapstrain::cases
