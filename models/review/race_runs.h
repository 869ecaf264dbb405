// Many samples of a race, worked out side by side.
#pragma once

#include "models/review/implant_damage.h"
#include "models/review/race.h"

#include <Eigen/Core>

#include <functional>
#include <vector>

namespace gapstrain::models {

// Of one sample in one course; of the plate where nothing else is said.
struct SampleRun {
  double damage_at_union = 0.0;
  Eigen::VectorXd damage;  // at the end of each week asked for
  std::optional<double> breaks;
  double screw_damage_at_union = 0.0;      // at the head of the screw that is worst
  std::optional<std::size_t> worst_screw;  // position in Construct::screws
};

// `weeks`: may be empty, `breaks` is then left out too.
SampleRun run_sample(const StressHistory& history, const CourseStress& stress, const Construct& construct,
                     const RaceSample& sample, const std::vector<double>& weeks);

// How many times over the plate lasts; finite also for a plate that nothing tires.
double life_factor(double damage_at_union);

// Shares 0 to count - 1 out among threads. `job` must not depend on the order.
void side_by_side(Eigen::Index count, const std::function<void(Eigen::Index)>& job);

// Sobol' indices of outcomes in the order of a SaltelliDesign of so many inputs, the heaviest total first.
std::vector<InputWeight> weigh_inputs(const Eigen::VectorXd& outcomes, const std::vector<std::string>& inputs);

}  // namespace gapstrain::models
