// The parts of findings.json on one load, and on what is known without a field.
#pragma once

#include "cases/files/json_value.h"
#include "models/findings/findings.h"
#include "models/parts/loading.h"

namespace gapstrain::cases {

Json gap_json(const models::GapFindings& gap);
Json screw_json(const models::ScrewFindings& screw);
Json stiffness_json(const models::StiffnessFindings& stiffness);

// `applied`: the load as the case has it; null where nobody knows.
Json load_json(const models::LoadFindings& load, const models::LoadCase* applied);

}  // namespace gapstrain::cases
