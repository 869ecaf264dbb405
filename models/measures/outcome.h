// The few figures that constructs are compared by, read off forces alone: no field is recovered.
#pragma once

#include "models/findings/findings.h"
#include "models/findings/margin_factors.h"
#include "models/stress/peak_stress.h"
#include "solver/motion/second_order.h"

#include <Eigen/Core>

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

struct LoadOutcome {
  Stress peak_stress;                      // of the plate, von Mises
  std::optional<int> peak_hole;            // 1-based, the rim it is on
  std::optional<double> plate_to_yield;    // yield strength / peak
  std::optional<StressCycle> plate_cycle;  // of the largest equivalent amplitude; fatigue strength known
  std::optional<Range> axial_strain;       // of the gap, signed, as GapFindings
  std::optional<double> shear_strain;      // largest
  double closed = 0.0;                     // share of the edge that touches
  Length near_motion, far_motion;          // axial, negative closes
  Length largest_motion;
  Stress screw_stress;                   // von Mises of the worst shaft's core
  std::optional<double> screw_to_yield;  // of the worst shaft
  Force screw_pull;                      // largest tension under a head, or 0
  Force across;                          // across the fracture, square to the cut
  Force plate_pressure;                  // of the plate's underside on the bone
  std::optional<Length> plate_clearance;
  SecondOrderFindings second_order;
  double work = 0.0;  // of the load on the motion it brings, f . u, N mm

  // Largest magnitude of the axial strain.
  std::optional<double> gap_strain() const;
};

// The same construct with screws that sit as softly in bone as is to be reckoned with (soft_interface): the other
// bound that an analysis tries. Empty where nobody asked, or where such a construct fails a check of its own.
struct SoftScrews {
  std::optional<double> margin;      // MarginFactors::least
  std::optional<double> gap_strain;  // of all loads
};

struct Outcome {
  ConstructFigures figures;
  StiffnessFindings stiffness;
  std::vector<LoadOutcome> loads;
  MarginFactors margins;
  std::vector<bool> broken_rules;  // in the order of rule_names (models/rules/rules.h)
  std::vector<Check> doubts;       // those that this outcome fails
  SoftScrews soft_screws{};
};

// What carries in one state, on all ports.
struct CarriedState {
  solver::PressedForces pressed;
  std::vector<Eigen::MatrixXd> port_forces;
  Eigen::MatrixX3d edge_motions;
  double yield_residual = 0.0;  // solver/bodies/yielding.h
  solver::SecondOrder second_order;
};
CarriedState carried_state(const Assembly& assembly, solver::PressedForces pressed,
                           const solver::PortLoads& loads);

// One entry a load. `chosen`: screws in place; `demands`: the loaded states as strength is held against them
// (`demanded`), the loaded ones themselves where nothing flows.
// @pre as many states as loads.
std::vector<LoadOutcome> read_outcomes(const Assembly& assembly, const PeakStress& peak,
                                       const std::vector<int>& chosen, const CarriedState& made,
                                       const std::vector<CarriedState>& loaded,
                                       const std::vector<CarriedState>& demands);

// What the states fail of: balance, contact, friction, yield, finite figures, small turns, second-order effects.
std::vector<Check> doubts_about(const Assembly& assembly, const std::vector<CarriedState>& loaded);

}  // namespace gapstrain::models
