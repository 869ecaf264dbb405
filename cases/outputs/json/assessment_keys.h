// The keys of findings.json on state, margins, rules, plan and race, of an analysis and of a comparison alike: see
// output_key.h. Paths are relative to where each stands.
#pragma once

#include "cases/outputs/json/output_key.h"

namespace gapstrain::cases {

OutputKeys state_keys();
// Of one margin, and of one part that has none.
OutputKeys margin_keys();
OutputKeys left_out_keys();
// Of one rule.
OutputKeys review_keys();
OutputKeys plan_keys();
OutputKeys no_race_keys();

}  // namespace gapstrain::cases
