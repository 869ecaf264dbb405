// One construct after another on the same bodies: screws in, outcome out. Exact, and as quick as it gets: what
// neighbours have in common is factored once, and nothing is worked out that an outcome does not show.
#pragma once

#include "models/assembly/first_state.h"
#include "models/margins/margin_meter.h"
#include "models/measures/figures.h"
#include "models/measures/outcome.h"
#include "models/rules/layout_review.h"
#include "solver/bodies/row_factor.h"

#include <optional>
#include <utility>
#include <vector>

namespace gapstrain::models {

enum class StiffnessOf { construct, nothing };  // nothing: Outcome::stiffness is left out

class ConstructSolver {
 public:
  // One a thread; both are borrowed.
  ConstructSolver(const Assembly& assembly, const PeakStress& peak, StiffnessOf of = StiffnessOf::construct);

  // The assembly's construct with other screws, positions in Assembly::screws, in the order in which they go in
  // where no step says otherwise. An outcome depends on these screws only, to the last bit, whatever was solved
  // before. @pre not empty. @throw ModelError naming the part that nothing holds
  Outcome solve(const std::vector<int>& chosen);

 private:
  // Nothing where a load makes sections flow, or parts turn far.
  std::optional<Outcome> solve_at_rest(const std::vector<int>& chosen, const std::vector<std::vector<int>>& links);
  std::pair<solver::PressedForces, solver::SecondOrder> press_at_rest(const AssembledLoad& load,
                                                                      const solver::Setting& setting,
                                                                      const CarriedState& rest);
  Outcome solve_in_steps(const std::vector<int>& chosen, const Procedure& procedure);
  StiffnessFindings stiffness_at_rest(const solver::Setting& resting);
  void build_up(const std::vector<std::vector<int>>& links);
  void hold(const std::vector<int>& links);
  void let_go(Eigen::Index kept);  // of all rows but the first ones
  // What is read off the states of one choice of screws; stiffness is left out.
  Outcome read(const std::vector<int>& chosen, const MadeConstruct& made, const std::vector<CarriedState>& loaded,
               const std::vector<CarriedState>& demands);

  const Assembly& assembly_;
  const PeakStress& peak_;
  FractureExtent fracture_;
  MarginMeter margins_;
  LayoutReview review_;
  Eigen::VectorXd initial_, friction_;
  StiffnessOf stiffness_of_;
  bool rests_without_screws_;  // but for what screws do

  // Rows of the links in place, a group after another, and their factor.
  struct Group {
    std::vector<int> links;
    Eigen::Index rows = 0;  // with this group and all before it
  };
  std::vector<Group> groups_;
  std::vector<int> links_;
  std::vector<Eigen::Index> rows_;
  solver::RowFactor factor_;
};

}  // namespace gapstrain::models
