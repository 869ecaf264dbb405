// The solution of one load, or the end of one step, as arrays for pictures and files.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/fields.h"
#include "models/findings/findings.h"
#include "models/stress/body_stress.h"

#include <array>
#include <vector>

namespace gapstrain::models {

// `displacements`, `stress`: of each body, elastic ones; what has bent for good in `loaded` comes on top.
LoadFields make_fields(const Assembly& assembly, const std::vector<int>& chosen, const std::string& load,
                       const std::vector<Eigen::VectorXd>& displacements,
                       const std::vector<const BodyStress*>& stress, const ConstructState& loaded);

StepFields make_step_fields(const Assembly& assembly, const ProcedureStep& step, const StepState& state,
                            const std::string& text);

}  // namespace gapstrain::models
