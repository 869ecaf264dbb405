// A construct solved under its loads, with all that its figures are read from laid open: for tests that spoil it.
#pragma once

#include "models/assembly/insertion.h"
#include "models/measures/analyse.h"
#include "models/measures/solve.h"
#include "models/measures/trust.h"
#include "models/preparation/from_scratch.h"
#include "models/preparation/prepare_bodies.h"
#include "models/stress/body_stress.h"

#include <vector>

namespace gapstrain::tests {

struct SolvedConstruct {
  models::Assembly assembly;
  std::vector<int> chosen;
  std::vector<models::StepState> steps;
  models::SolvedLoads solved;
  std::vector<models::LoadFindings> loads;
};

// The same steps as `models::analyse`, without its figures.
enum class Turns { as_asked, small };  // small: however far they are, to first order
inline SolvedConstruct solve_only(const models::Construct& construct, Turns turns = Turns::as_asked) {
  SolvedConstruct whole{models::assemble(construct, construct.screws), {}, {}, {}, {}};
  if (turns == Turns::small) whole.assembly.turning.clear();
  whole.chosen = models::chosen_screws(whole.assembly, construct.screws);
  whole.steps = models::carry_out(whole.assembly, models::procedure_of(construct, whole.chosen));
  std::vector<solver::Solution> solutions;
  for (const auto& load : whole.assembly.loads) {
    whole.solved.states.push_back(models::solve_load(whole.assembly, whole.steps.back(), load));
    solutions.push_back(whole.solved.states.back().pressed.solution);
  }
  whole.solved.displacements = models::recover_displacements(whole.assembly, solutions);
  return whole;
}

// With them.
inline SolvedConstruct solve_and_measure(const models::Construct& construct) {
  SolvedConstruct whole = solve_only(construct);
  whole.loads = models::analyse(whole.assembly).findings.loads;
  return whole;
}

}  // namespace gapstrain::tests
