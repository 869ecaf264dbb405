#include "models/evidence/benches.h"

#include "models/evidence/bench_gauges.h"
#include "models/preparation/prepare_bodies.h"
#include "models/words/state_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <numbers>
#include <utility>

namespace gapstrain::models {

namespace {

// Positions of the screws in these holes.
std::vector<int> screws_in(const std::vector<int>& holes, const Construct& construct) {
  std::vector<int> chosen;
  for (const int hole : holes) {
    const auto& screws = construct.screws;
    const auto screw = std::find_if(screws.begin(), screws.end(), [&](const auto& s) { return s.hole == hole; });
    assert(screw != screws.end());
    chosen.push_back(static_cast<int>(screw - screws.begin()));
  }
  return chosen;
}

std::size_t place_of(const Construct& construct, std::string_view load) {
  const auto& loads = construct.loads;
  const auto found = std::find_if(loads.begin(), loads.end(), [&](const auto& l) { return l.name == load; });
  assert(found != loads.end());
  return static_cast<std::size_t>(found - loads.begin());
}

}  // namespace

struct Benches::Bench {
  BenchModel model;
  Assembly assembly;
  PeakStress peak;
  ConstructSolver solver;
  std::map<std::vector<int>, Outcome> outcomes;

  explicit Bench(BenchModel built)
      : model(std::move(built)),
        assembly(assemble(model.construct, model.construct.screws)),
        peak(assembly, PlatePlaces::likely_and_sample),
        solver(assembly, peak) {}
};

Benches::Benches(double refinement, std::function<void(const std::string&)> progress)
    : refinement_(refinement), progress_(std::move(progress)) {}
Benches::~Benches() = default;

Benches::Bench& Benches::bench(std::string_view model) {
  auto found = benches_.find(model);
  if (found == benches_.end()) {
    if (progress_) progress_(std::string(model));
    found = benches_.emplace(model, std::make_unique<Bench>(bench_model(model, refinement_))).first;
  }
  return *found->second;
}

const Outcome& Benches::outcome(std::string_view model, const std::vector<int>& holes) {
  Bench& asked = bench(model);
  auto found = asked.outcomes.find(holes);
  if (found == asked.outcomes.end())
    found = asked.outcomes.emplace(holes, asked.solver.solve(screws_in(holes, asked.model.construct))).first;
  for (const auto& doubt : found->second.doubts) {
    std::string sentence = fmt::format("{}, screws in {}: {}", model, fmt::join(holes, ", "), check_text(doubt));
    if (std::find(doubts_.begin(), doubts_.end(), sentence) == doubts_.end())
      doubts_.push_back(std::move(sentence));
  }
  return found->second;
}

const LoadOutcome& Benches::under(const BenchState& state) {
  const Outcome& answer = outcome(state.model, state.holes);
  return answer.loads[place_of(bench(state.model).model.construct, state.load)];
}

double Benches::stiffness(const BenchState& state) {
  const double size = size_of(load_of(state));
  return size * size / under(state).work;
}

double Benches::stiffness_ratio(const BenchState& one, const BenchState& other) {
  return stiffness(one) / stiffness(other);
}

double Benches::gap_stiffness(const BenchState& state) {
  const LoadOutcome& outcome = under(state);
  const double closing = -0.5 * (outcome.near_motion + outcome.far_motion).value();
  return size_of(load_of(state)) / closing;
}

double Benches::intact_axial_stiffness(std::string_view model) {
  const Bone& bone = bench(model).model.construct.bone;
  const BoneStation& section = bone.stations.front();
  const double outer = section.width_mediolateral.value(), inner = outer - 2.0 * section.cortex.value();
  const double area = 0.25 * std::numbers::pi * (outer * outer - inner * inner);
  return bone.cortex.longitudinal_modulus.value() * area / bone.length.value();
}

std::vector<double> Benches::gauges(const BenchState& state, const std::vector<double>& along) {
  Bench& asked = bench(state.model);
  outcome(state.model, state.holes);  // for its doubts
  return gauge_strains(asked.assembly, screws_in(state.holes, asked.model.construct),
                       place_of(asked.model.construct, state.load), along);
}

const LoadCase& Benches::load_of(const BenchState& state) {
  const Construct& construct = bench(state.model).model.construct;
  return construct.loads[place_of(construct, state.load)];
}

void Benches::keep_only(const std::vector<std::string_view>& models) {
  std::erase_if(benches_, [&](const auto& bench) {
    return std::find(models.begin(), models.end(), bench.first) == models.end();
  });
}

std::vector<std::string> Benches::take_doubts() { return std::exchange(doubts_, {}); }

}  // namespace gapstrain::models
