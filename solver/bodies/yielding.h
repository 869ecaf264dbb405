// Bodies and links with contact, of which some sections yield: what bends for good is initial deformation of the
// links, as all else that a step does, and stays where it is when the load goes.
#pragma once

#include "solver/bodies/pressed.h"
#include "solver/bodies/yield_section.h"

#include <Eigen/Core>

#include <optional>
#include <vector>

namespace gapstrain::solver {

// Of each section, since it was new.
struct Yielded {
  Eigen::VectorXd flow;      // N mm; 0: it never yielded
  Eigen::MatrixXd deformed;  // (6 x sections): plastic deformation in the section's axes, mm and rad
  static Yielded none(std::size_t sections);
};

struct YieldedState {
  PressedState pressed;
  std::optional<PressedState> elastic;  // what would be in place had nothing flowed; nothing where nothing did
  Yielded yielded;
  double residual = 0.0;  // largest share by which a section's demand and strength differ where it flows, or by
                          // which demand exceeds it
};

// Whether any of the sections, new as they are, would flow under these link forces.
bool would_flow(const std::vector<YieldSection>& sections, const Eigen::VectorXd& forces);

// As `press`, from sections that have yielded as in `before`. Without flow it is that very answer. Flow is one
// implicit increment: exact while its direction stays.
YieldedState press_yielding(const System& system, const std::vector<ContactPair>& pairs,
                            const std::vector<YieldSection>& sections, const Setting& setting,
                            const PortLoads& loads, const Yielded& before);

}  // namespace gapstrain::solver
