// Plain sentences on the worst of each part, over all loads.
#pragma once

#include "models/findings/findings.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// Worst first: by how much of its limit a part uses (yield, pull-out, friction, the healing windows' 10 %, the
// force across the fracture, buckling at factor 1). Empty without loads.
std::vector<std::string> worst_things(const models::Findings& findings);

// The load that stresses the plate most. @pre there is a load.
const models::LoadFindings& hottest_load(const models::Findings& findings);

}  // namespace gapstrain::cases
