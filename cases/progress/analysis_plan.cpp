#include "cases/progress/analysis_plan.h"

#include "models/assessment/assess.h"

namespace gapstrain::cases {

std::vector<Stage> bodies_plan(const models::Construct& construct) {
  const double refinement = construct.mesh.refinement;  // cells grow with its square, factors with its third power
  const double cells = refinement * refinement;
  return {{"meshing the plate", 0.3 * cells},
          {"meshing the bone", 0.5 * cells},
          {"factoring the bodies", 1.5 * cells * refinement}};
}

std::vector<Stage> first_day_plan(const models::Construct& construct) {
  const double cells = construct.mesh.refinement * construct.mesh.refinement;
  const auto loads = static_cast<double>(construct.loads.size());
  return bodies_plan(construct) +
         std::vector<Stage>{{"carrying out the steps", 0.1},
                            {"solving and measuring", (0.2 + 0.2 * loads) * cells},
                            {"trying screws that sit softer in bone", (0.2 + 0.1 * loads) * cells}};
}

std::vector<Stage> assessment_plan(const models::Construct& construct) {
  auto plan = first_day_plan(construct);
  if (!models::why_no_race(construct)) plan.insert(plan.end() - 1, {"following the gap to union", 3.0});
  return plan;
}

std::vector<Stage> outputs_plan(const models::Construct& construct, bool with_pictures) {
  const auto loads = static_cast<double>(construct.loads.size());
  std::vector<Stage> plan{{"writing files", 0.1 * loads}};
  if (with_pictures) plan.push_back({"drawing", 1.0 + 1.0 * loads});
  return plan;
}

std::vector<Stage> operator+(std::vector<Stage> first, const std::vector<Stage>& second) {
  first.insert(first.end(), second.begin(), second.end());
  return first;
}

}  // namespace gapstrain::cases
