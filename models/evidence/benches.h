// Bench models, built when first asked about, and their outcomes.
#pragma once

#include "models/evidence/bench_loads.h"
#include "models/evidence/bench_models.h"
#include "models/layouts/construct_solver.h"

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

// A model with screws in these holes, 1-based, under one of its loads.
struct BenchState {
  std::string_view model;
  std::vector<int> holes;
  std::string_view load;
};

class Benches {
 public:
  // `progress` hears of each model that is built; may be empty.
  Benches(double refinement, std::function<void(const std::string&)> progress);
  ~Benches();
  Benches(const Benches&) = delete;
  Benches& operator=(const Benches&) = delete;

  // Load over the motion that it brings along itself, so a secant where something touches. N/mm or N mm
  double stiffness(const BenchState& state);
  // @pre both loads are forces or both are moments
  double stiffness_ratio(const BenchState& one, const BenchState& other);

  // Axial load over what the gap closes on the bone's axis, N/mm. @pre the load is axial and closes it
  double gap_stiffness(const BenchState& state);

  // Of the bone without fracture and plate, between its ends: E A / length, N/mm.
  double intact_axial_stiffness(std::string_view model);

  // What gauges at these places along the plate read, see bench_gauges.h.
  std::vector<double> gauges(const BenchState& state, const std::vector<double>& along);

  // @pre the model has that load, and bone under these holes
  const LoadOutcome& under(const BenchState& state);
  const Outcome& outcome(std::string_view model, const std::vector<int>& holes);

  // Forgets every other model.
  void keep_only(const std::vector<std::string_view>& models);

  // Checks that outcomes asked for since the last call fail of, a sentence each.
  std::vector<std::string> take_doubts();

 private:
  struct Bench;
  Bench& bench(std::string_view model);
  const LoadCase& load_of(const BenchState& state);

  double refinement_;
  std::function<void(const std::string&)> progress_;
  std::map<std::string, std::unique_ptr<Bench>, std::less<>> benches_;
  std::vector<std::string> doubts_;
};

}  // namespace gapstrain::models
