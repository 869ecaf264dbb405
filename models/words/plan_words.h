// What the hand must mind, in words made from a plan's notes.
#pragma once

#include "models/plan/plan_note.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// A sentence or two.
std::string note_sentence(const PlanNote& note);
std::vector<std::string> note_sentences(const std::vector<PlanNote>& notes);

}  // namespace gapstrain::models
