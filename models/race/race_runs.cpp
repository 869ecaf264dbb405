#include "models/race/race_runs.h"

#include <algorithm>

namespace gapstrain::models {

SampleRun run_sample(const StressHistory& history, const CourseStress& stress, const Construct& construct,
                     const RaceSample& sample, const std::vector<double>& weeks) {
  const ImplantDamage damage(history, stress, construct, sample);
  const auto run_implant = [&](Implant implant) {
    ImplantRun run;
    run.damage_at_union = damage.at(implant, sample.weeks_to_union);
    run.damage.resize(static_cast<Eigen::Index>(weeks.size()));
    for (std::size_t week = 0; week < weeks.size(); ++week)
      run.damage(static_cast<Eigen::Index>(week)) = damage.at(implant, weeks[week]);
    if (!weeks.empty()) run.breaks = damage.breaks(implant);
    return run;
  };
  SampleRun run;
  run.plate = run_implant(Implant::plate);
  run.screws = run_implant(Implant::screws);
  if (const auto worst = damage.worst_place(Implant::screws, sample.weeks_to_union))
    run.worst_screw = history.places[*worst].screw;
  return run;
}

double life_factor(double damage_at_union) {
  constexpr double least = 1e-150;  // and so is the ratio of two
  return 1.0 / std::max(damage_at_union, least);
}

std::vector<InputWeight> weigh_inputs(const Eigen::VectorXd& outcomes, const std::vector<std::string>& inputs) {
  constexpr std::uint64_t seed = 1;
  const auto indices = sobol_indices(outcomes, static_cast<Eigen::Index>(inputs.size()), seed);
  std::vector<InputWeight> weights;
  for (std::size_t k = 0; k < indices.factors.size(); ++k)
    weights.push_back({inputs[k], indices.factors[k].first, indices.factors[k].total});
  std::stable_sort(weights.begin(), weights.end(), [](const InputWeight& one, const InputWeight& other) {
    return one.total.value > other.total.value;
  });
  return weights;
}

}  // namespace gapstrain::models
