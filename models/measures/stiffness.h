// Construct stiffness between the end sections.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <array>

namespace gapstrain::models {

// For small loads on the construct as it was made: open places stay open, closed ones closed. @throw ModelError
StiffnessFindings measure_stiffness(const Assembly& assembly, const ConstructState& made);

// From the work of each of Assembly::stiffness_loads on its own motion, f . u.
StiffnessFindings stiffness_of(const std::array<double, 4>& work);

// Work f . u of a load on the motion that forces in all rows and rigid amplitudes go with, the load acting, N mm.
double work_on(const AssembledLoad& load, const Eigen::VectorXd& forces, const Eigen::VectorXd& amplitudes);

}  // namespace gapstrain::models
