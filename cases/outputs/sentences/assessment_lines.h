// What margins, rules and the race come to, in a few sentences for the screen.
#pragma once

#include "cases/outputs/sentences/rest_stands.h"
#include "models/assessment/assess.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// One sentence each: whether it holds and by how much, the race, what that hangs on most, the margins in order,
// the rules.
std::vector<std::string> assessment_sentences(const models::Construct& construct,
                                              const models::Assessment& assessment,
                                              const RestStands& rest = in_files);

}  // namespace gapstrain::cases
