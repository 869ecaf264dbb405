// A construct before its first step: where its surfaces lie, and when nothing that is done to it strains anything.
#pragma once

#include "models/assembly/assembly.h"
#include "models/assembly/procedure.h"

#include <Eigen/Core>

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// From which deformations everything carries (all rows): minus the gaps of the pairs.
Eigen::VectorXd first_deformations(const Assembly& assembly, Length prebend);

// Of each pair.
Eigen::VectorXd friction_coefficients(const Assembly& assembly, FrictionLaw law);

// The links that a step's tissue fills the gap with. @pre it is one of the assembly's
const std::vector<int>& links_of_tissue(const Assembly& assembly, const Tissue& tissue);

// Whether a procedure with these screws leaves everything free of stress: no head is tightened, no clamp presses,
// no surfaces meet.
bool stays_at_rest(const Assembly& assembly, const Procedure& procedure);

// Links in place after its last step, without the table's: the tissue's, then a screw's or hold's together, in the
// order in which they went in. (None of a part that was taken out again.)
std::vector<std::vector<int>> links_at_the_end(const Assembly& assembly, const Procedure& procedure);

}  // namespace gapstrain::models
