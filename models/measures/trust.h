// The evidence of a solution: does it satisfy its own equations, and does the model hold where it went.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// All loads of a construct solved: one state a load, displacements of each body with a column a load (6n x loads).
struct SolvedLoads {
  std::vector<ConstructState> states;
  std::vector<Eigen::MatrixXd> displacements;
};

// What passes at most, of findings and of outcomes alike.
inline constexpr double balance_limit = 1e-8;       // relative: forces of each body
inline constexpr double contact_limit = 1e-8;       // relative: tension or penetration
inline constexpr double yield_law_limit = 1e-4;     // share by which a section bears more than its strength
inline constexpr double friction_law_limit = 1e-5;  // relative: violation of the friction law

// Whether a value is at most a limit; one that is no finite number is not.
Check check_at_most(const std::string& name, double value, double limit, const std::string& meaning);

// The checks that findings and outcomes are held to alike.
Check balance_check(double unbalanced);
Check contact_check(double tension_or_penetration);
Check friction_check(double violation);
Check yield_check(double over_strength);
// `angle`: rad, the largest by which anything turns whose turns are taken to be small.
Check small_turn_check(double angle);
// `change`: of what large turns add, in the last round, relative.
Check large_turn_check(double change);
// `load_ratio`: of the axial load to the one that buckles the construct.
Check axial_load_check(double load_ratio);
// `change`: of second-order forces in the last round, relative.
Check second_order_check(double change);

// Whether the loads are far enough below those that buckle the construct; joins the checks where one can. Again:
// takes the place of what was found before. @pre buckling factors of all loads are known
void judge_buckling(Trust& trust, const std::vector<LoadFindings>& loads);
// Whether trust would be another with somewhat other links: the factor is within three times its limit (ours).
bool is_near_buckling(const Trust& trust);

// `steps`: states after each step. `loads`: what was measured of each load, in the order of `solved`.
Trust measure_trust(const Assembly& assembly, const std::vector<StepState>& steps, const SolvedLoads& solved,
                    const std::vector<LoadFindings>& loads);

}  // namespace gapstrain::models
