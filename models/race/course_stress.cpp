#include "models/race/course_stress.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr double least_amplitude = 1e-9;  // MPa, for its logarithm

}  // namespace

LoadBracket bracket_of(const std::vector<double>& load_factors, double load_factor) {
  const auto above = std::clamp<std::ptrdiff_t>(
      std::upper_bound(load_factors.begin(), load_factors.end(), load_factor) - load_factors.begin(), 1,
      static_cast<std::ptrdiff_t>(load_factors.size()) - 1);
  return {static_cast<std::size_t>(above) - 1, static_cast<std::size_t>(above)};
}

CourseStress::CourseStress(const StressHistory& history, const StressHistory::Course& course)
    : history_(history),
      course_(course),
      progress_(history.progress),
      factors_(history.load_factors),
      places_(history.places.size()) {
  if (course.course == HealingCourse::none && history.interfaces.empty()) progress_.resize(1);
  const auto rows = static_cast<Eigen::Index>(places_), columns = static_cast<Eigen::Index>(factors_.size());
  for (std::size_t moment = 0; moment < progress_.size(); ++moment) {
    log_amplitudes_.emplace_back(history.loads.size(), Eigen::ArrayXXd(rows, columns));
    means_.emplace_back(history.loads.size(), Eigen::ArrayXXd(rows, columns));
    for (std::size_t load = 0; load < history.loads.size(); ++load)
      for (Eigen::Index f = 0; f < columns; ++f)
        for (Eigen::Index p = 0; p < rows; ++p) {
          const StressCycle& cycle =
              course.cycles[moment][static_cast<std::size_t>(f)][load][static_cast<std::size_t>(p)];
          log_amplitudes_[moment][load](p, f) = std::log(std::max(cycle.amplitude.value(), least_amplitude));
          means_[moment][load](p, f) = cycle.mean.value();
        }
  }
}

std::vector<StressCycle> CourseStress::at(std::size_t moment, std::size_t load, double load_factor) const {
  const LoadBracket bracket = bracket_of(factors_, load_factor);
  const auto left = static_cast<Eigen::Index>(bracket.low), right = static_cast<Eigen::Index>(bracket.high);
  const double low = factors_[bracket.low], high = factors_[bracket.high];
  const double inside = std::clamp(load_factor, low, high);
  const double share = std::log(inside / low) / std::log(high / low);
  const double straight = (load_factor - low) / (high - low);
  const auto& logs = log_amplitudes_[moment][load];
  const auto& means = means_[moment][load];
  const Eigen::ArrayXd amplitudes =
      ((1.0 - share) * logs.col(left) + share * logs.col(right)).exp() * (load_factor / inside);
  const Eigen::ArrayXd mean = (1.0 - straight) * means.col(left) + straight * means.col(right);
  std::vector<StressCycle> cycles(places_);
  for (std::size_t p = 0; p < places_; ++p) {
    const auto row = static_cast<Eigen::Index>(p);
    cycles[p] = {amplitudes(row) * mpa, mean(row) * mpa};
  }
  return cycles;
}

double size_by_strain(const StressHistory& history, std::size_t load, const LoadSize& size) {
  return history.sampled_parts.empty() ? size.all
                                       : size.all * between(history.strain, history.bands[load], size.parts);
}

std::vector<StressCycle> CourseStress::at(std::size_t moment, std::size_t load, const LoadSize& size) const {
  if (size.parts == all_as_entered) return at(moment, load, size.all);
  const double healing =
      course_.course == HealingCourse::governed ? size_by_strain(history_, load, size) : size.all;
  const LoadBracket bracket = bracket_of(factors_, healing);
  const double low = factors_[bracket.low], high = factors_[bracket.high];
  const double inside = std::clamp(healing, low, high);
  const double share = std::log(inside / low) / std::log(high / low);
  const double straight = (healing - low) / (high - low);
  const auto cycles_at = [&](std::size_t factor) {
    return cycles_of(history_.at_rest,
                     between(course_.parts[moment][factor][load], history_.bands[load], size.parts),
                     history_.cores);
  };
  std::vector<StressCycle> cycles = cycles_at(bracket.low);
  const std::vector<StressCycle> above = cycles_at(bracket.high);
  // From the size that the gap has healed under to the load's own in proportion.
  const double own = size.all / healing;
  for (std::size_t p = 0; p < cycles.size(); ++p) {
    StressCycle& cycle = cycles[p];
    const double log_low = std::log(std::max(cycle.amplitude.value(), least_amplitude)),
                 log_high = std::log(std::max(above[p].amplitude.value(), least_amplitude));
    cycle.amplitude = std::exp((1.0 - share) * log_low + share * log_high) * (healing / inside) * own * mpa;
    const Stress mean = (1.0 - straight) * cycle.mean + straight * above[p].mean;
    cycle.mean = cycle.at_rest + own * (mean - cycle.at_rest);
  }
  return cycles;
}

}  // namespace gapstrain::models
