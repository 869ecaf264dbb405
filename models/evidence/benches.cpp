#include "models/evidence/benches.h"

#include "models/preparation/prepare_bodies.h"
#include "models/words/state_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

namespace gapstrain::models {

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
  if (found == asked.outcomes.end()) {
    std::vector<int> chosen;
    for (const int hole : holes) {
      const auto& screws = asked.model.construct.screws;
      const auto screw = std::find_if(screws.begin(), screws.end(), [&](const auto& s) { return s.hole == hole; });
      assert(screw != screws.end());
      chosen.push_back(static_cast<int>(screw - screws.begin()));
    }
    found = asked.outcomes.emplace(holes, asked.solver.solve(chosen)).first;
  }
  for (const auto& doubt : found->second.doubts) {
    std::string sentence = fmt::format("{}, screws in {}: {}", model, fmt::join(holes, ", "), check_text(doubt));
    if (std::find(doubts_.begin(), doubts_.end(), sentence) == doubts_.end())
      doubts_.push_back(std::move(sentence));
  }
  return found->second;
}

namespace {

std::size_t place_of(const Construct& construct, std::string_view load) {
  const auto& loads = construct.loads;
  const auto found = std::find_if(loads.begin(), loads.end(), [&](const auto& l) { return l.name == load; });
  assert(found != loads.end());
  return static_cast<std::size_t>(found - loads.begin());
}

}  // namespace

const LoadOutcome& Benches::under(const BenchState& state) {
  const Outcome& answer = outcome(state.model, state.holes);
  return answer.loads[place_of(bench(state.model).model.construct, state.load)];
}

double Benches::stiffness_ratio(const BenchState& one, const BenchState& other) {
  const auto stiffness = [&](const BenchState& state) {
    const Construct& construct = bench(state.model).model.construct;
    const LoadCase& applied = construct.loads[place_of(construct, state.load)];
    // A bench load has one part.
    const double size = applied.axial_compression.value() + applied.bending_y.value() + applied.torsion.value();
    return size * size / under(state).work;
  };
  return stiffness(one) / stiffness(other);
}

void Benches::keep_only(const std::vector<std::string_view>& models) {
  std::erase_if(benches_, [&](const auto& bench) {
    return std::find(models.begin(), models.end(), bench.first) == models.end();
  });
}

std::vector<std::string> Benches::take_doubts() { return std::exchange(doubts_, {}); }

}  // namespace gapstrain::models
