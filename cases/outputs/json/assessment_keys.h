// The keys of findings.json on margins, rules, plan and race: see findings_keys.h.
#pragma once

#include "cases/outputs/json/findings_keys.h"

#include <vector>

namespace gapstrain::cases {

// In the order of the file.
std::vector<FindingsKey> assessment_keys();

}  // namespace gapstrain::cases
