// The screws that bodies are made ready for, decided before anything is meshed.
#pragma once

#include "models/layouts/layouts.h"
#include "models/measures/analyse.h"

#include <vector>

namespace gapstrain::models {

// Each place once: the construct's screws and those of its working-length variants. With layout rules those of all
// layouts instead of the latter, so that every layout is worked out on one mesh.
std::vector<Screw> screws_to_make_ready(const Construct& construct);
std::vector<Screw> screws_to_make_ready(const Construct& construct, const Layouts& layouts);

// The construct on bodies made ready for these screws.
// @pre check(construct) reports no error.
// @throw ModelError, mesh::MeshError
Analysis analyse(const Construct& construct, const Progress& progress = {});

}  // namespace gapstrain::models
