// Many samples of a race, worked out side by side.
#pragma once

#include "models/race/implant_damage.h"
#include "models/race/race.h"

#include <Eigen/Core>

#include <functional>
#include <vector>

namespace gapstrain::models {

// Of one implant in one sample.
struct ImplantRun {
  double damage_at_union = 0.0;
  Eigen::VectorXd damage;  // at the end of each week asked for
  std::optional<double> breaks;
};
struct SampleRun {
  ImplantRun plate, screws;                // the latter at the head of the one that is worst
  std::optional<std::size_t> worst_screw;  // position in Construct::screws; nothing when none is followed
};

// `weeks`: may be empty, `breaks` is then left out too.
SampleRun run_sample(const StressHistory& history, const CourseStress& stress, const Construct& construct,
                     const RaceSample& sample, const std::vector<double>& weeks);

// How many times over the plate lasts; finite also for a plate without stress amplitude.
double life_factor(double damage_at_union);

// Sobol' indices of outcomes in the order of a SaltelliDesign of so many inputs, the heaviest total first.
std::vector<InputWeight> weigh_inputs(const Eigen::VectorXd& outcomes, const std::vector<std::string>& inputs);

}  // namespace gapstrain::models
