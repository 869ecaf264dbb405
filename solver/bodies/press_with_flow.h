// Contact on links while sections flow: what `press_yielding` asks for once an answer without flow asks too much
// of a section.
#pragma once

#include "solver/bodies/pressed.h"
#include "solver/bodies/yield_section.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

struct FlowedState {
  PressedState pressed;
  Eigen::VectorXd flow;      // of this increment: of each section, N mm,
  Eigen::MatrixXd deformed;  // and its deformation in the section's axes (6 x sections)
};

// `near`: the answer without flow, to start from. `flow_before`: of each section since it was new.
FlowedState press_with_flow(const System& system, const std::vector<ContactPair>& pairs,
                            const std::vector<YieldSection>& sections, const Setting& setting,
                            const PortLoads& loads, const Eigen::VectorXd& flow_before, const PressedForces& near);

}  // namespace gapstrain::solver
