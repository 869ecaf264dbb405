// A construct analysed and assessed from nothing: meshed, factored, made, loaded and measured.
#pragma once

#include "models/assessment/assess.h"
#include "models/measures/analyse.h"

namespace gapstrain::models {

// On bodies made ready for screws_to_make_ready (models/layouts/ready_screws.h).
// @pre check(construct) reports no error.
// @throw ModelError, TooLargeError, mesh::MeshError
Analysis analyse(const Construct& construct, const Progress& progress = {});
AssessedConstruct assess(const Construct& construct, const Progress& progress = {});
// On bodies made ready for these screws, the construct's own among them.
AssessedConstruct assess(const Construct& construct, const std::vector<Screw>& screws, const Progress& progress);
AssessedConstruct assess_first_day(const Construct& construct, const Progress& progress = {});  // without the race

}  // namespace gapstrain::models
