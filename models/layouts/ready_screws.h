// The screws that bodies are made ready for, decided before anything is meshed.
#pragma once

#include "models/layouts/layouts.h"

#include <vector>

namespace gapstrain::models {

// Each place once: the construct's screws and those of its working-length variants. With layout rules those of all
// layouts instead of the latter, so that every layout is worked out on one mesh.
std::vector<Screw> screws_to_make_ready(const Construct& construct);
std::vector<Screw> screws_to_make_ready(const Construct& construct, const Layouts& layouts);

// These candidates, in the places of the construct's own screws those themselves, then its own that have none
// there: constructs whose screws are all among the candidates get the same bodies.
std::vector<Screw> screws_to_make_ready(const Construct& construct, std::vector<Screw> candidates);

}  // namespace gapstrain::models
