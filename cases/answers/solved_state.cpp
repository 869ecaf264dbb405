#include "cases/answers/solved_state.h"

#include "cases/outputs/json/findings_json.h"
#include "models/layouts/ready_screws.h"
#include "models/measures/buckling.h"
#include "models/measures/make_fields.h"
#include "models/measures/solve.h"
#include "models/stress/body_stress.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace gapstrain::cases {

namespace {

[[noreturn]] void refuse(const std::string& what) {
  throw NotPreparedError(
      fmt::format("{}; run this case with gapstrain analyse, or make a page that is prepared for it", what));
}

}  // namespace

SolvedState::SolvedState(CaseFile file, std::shared_ptr<const models::PreparedBodies> prepared)
    : file_(std::move(file)), prepared_(std::move(prepared)) {
  screws_ = models::screws_to_make_ready(construct(), prepared_->candidates);
  for (std::size_t k = prepared_->candidates.size(); k < screws_.size(); ++k)
    refuse(fmt::format("the page's mesh is not made ready for screw {} in hole {}", screws_[k].label,
                       screws_[k].hole));
  for (auto& sentence : assumptions_of_candidates(construct(), screws_))
    file_.assumptions.push_back(std::move(sentence));
  for (const auto& screw : construct().screws)
    for (std::size_t k = 0; k < screws_.size(); ++k)
      if (models::same_place(screw, screws_[k])) chosen_.push_back(static_cast<int>(k));
  if (!models::have_same_bodies(prepared_->construct, prepared_->candidates, construct(), screws_))
    refuse("the page holds no bodies for another bone, plate, fracture, wire or place of a force");
  const auto& cortex = construct().bone.cortex.longitudinal_modulus;
  if (cortex != prepared_->construct.bone.cortex.longitudinal_modulus ||
      only(construct().plates).material.youngs_modulus !=
          only(prepared_->construct.plates).material.youngs_modulus)
    refuse("the page's bodies are factored with another modulus of bone or plate");
}

const models::Assembly& SolvedState::assembly() {
  if (!assembly_) assembly_ = models::assemble(prepared_, construct(), screws_);
  return *assembly_;
}

const models::Procedure& SolvedState::procedure() {
  if (!solved_) solved_ = models::SolvedCase{models::procedure_of(construct(), chosen_), {}, {}};
  return solved_->procedure;
}

const std::vector<models::StepState>& SolvedState::steps() {
  procedure();
  if (solved_->steps.empty()) solved_->steps = models::carry_out(assembly(), solved_->procedure);
  return solved_->steps;
}

const std::vector<models::ConstructState>& SolvedState::loads() {
  steps();
  if (solved_->loads.empty())
    for (const auto& load : assembly().loads)
      solved_->loads.push_back(models::solve_load(assembly(), steps().back(), load));
  return solved_->loads;
}

std::vector<int> SolvedState::in_place() {
  std::vector<int> in;
  const auto& last = steps().back().screws;
  for (const int screw : procedure().screws)
    if (std::find(last.begin(), last.end(), screw) != last.end()) in.push_back(screw);
  return in;
}

// An assembly that was made before the bodies were factored gets them now.
void SolvedState::take_whole_bodies() {
  assembly();
  for (std::size_t b = 0; b < assembly_->bodies.size(); ++b) assembly_->bodies[b].body = prepared_->bodies[b].body;
}

const models::AssessedConstruct& SolvedState::assessed(models::Extent extent, bool with_race) {
  take_whole_bodies();
  loads();
  if (extent == models::Extent::whole) {
    if (assessed_ && extent_ == extent && (with_race_ || !with_race)) return *assessed_;
    assessed_ =
        models::assess(models::analyse(*assembly_, *solved_, {}, extent), prepared_, construct(), with_race);
    extent_ = extent;
    with_race_ = with_race;
  } else if (!assessed_) {
    assessed_ = models::assess_as_analysed(models::analyse(*assembly_, *solved_, {}, models::Extent::margins),
                                           construct());
    extent_ = models::Extent::margins;
  }
  while (extent == models::Extent::verdict && extent_ == models::Extent::margins) judge_one_more();
  doubt_not_finite(construct(), *assessed_);
  return *assessed_;
}

std::size_t SolvedState::judge_one_more() {
  assessed(models::Extent::margins, false);
  if (extent_ != models::Extent::margins) return 0;
  auto& entries = assessed_->analysis.findings.loads;
  if (buckled_ < entries.size()) {
    entries[buckled_].buckling_factor =
        models::measure_buckling(*assembly_, steps().back(), assembly_->loads[buckled_], loads()[buckled_]);
    ++buckled_;
    return entries.size() - buckled_ + 1;
  }
  models::add_buckling(*assessed_, construct());
  models::try_other_interfaces(*assessed_, prepared_, construct());
  extent_ = models::Extent::verdict;
  return 0;
}

models::LoadFields SolvedState::load_fields(std::size_t load) {
  take_whole_bodies();
  const models::ConstructState& state = loads()[load];
  const auto motions = models::recover_displacements(assembly(), {state.pressed.solution});
  // Stress is what the load asks for: of metals that do not yield under it.
  const auto asked =
      state.elastic ? models::recover_displacements(assembly(), {state.elastic->solution}) : motions;
  std::vector<Eigen::VectorXd> displacements;
  std::vector<models::BodyStress> stress;
  for (std::size_t b = 0; b < motions.size(); ++b) {
    displacements.emplace_back(motions[b].col(0));
    stress.push_back(models::read_stress(assembly().bodies[b].body->shell(), asked[b]).front());
  }
  std::vector<const models::BodyStress*> of_bodies;
  for (const auto& one : stress) of_bodies.push_back(&one);
  return models::make_fields(assembly(), in_place(), assembly().loads[load].name, displacements, of_bodies, state);
}

models::StepFields SolvedState::step_fields(std::size_t step) {
  take_whole_bodies();
  return models::make_step_fields(assembly(), procedure().steps[step], steps()[step],
                                  models::describe(procedure().steps[step], procedure(), construct()));
}

}  // namespace gapstrain::cases
