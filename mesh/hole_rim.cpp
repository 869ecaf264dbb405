#include "mesh/hole_rim.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain::mesh {

using std::numbers::pi;

HoleRim::HoleRim(const Hole& hole, int round_elements)
    : centre_(hole.centre),
      radius_(0.5 * hole.diameter),
      flat_(0.5 * (hole.slot_length - hole.diameter)),
      // A multiple of four edges more on the straight sides keeps both of the slot's symmetries.
      elements_(round_elements +
                4 * static_cast<int>(std::lround(flat_ * round_elements / (pi * hole.diameter)))) {}

double HoleRim::length() const { return 2.0 * pi * radius_ + 4.0 * flat_; }

Capsule HoleRim::capsule() const { return {{centre_ - flat_, 0.0}, {centre_ + flat_, 0.0}, radius_}; }

Eigen::Vector2d HoleRim::point(double t) const {
  const double quarter = 0.5 * pi * radius_;
  const double turn = t - length() * std::floor(t / length());
  if (turn > 0.5 * length()) {  // the lower half mirrors the upper one
    const Eigen::Vector2d mirrored = point(length() - turn);
    return {mirrored.x(), -mirrored.y()};
  }
  if (turn > quarter && turn < quarter + 2.0 * flat_) return {centre_ + flat_ - (turn - quarter), radius_};
  const double side = turn <= quarter ? 1.0 : -1.0;
  const double angle = (turn <= quarter ? turn : turn - 2.0 * flat_) / radius_;
  return {centre_ + side * flat_ + radius_ * std::cos(angle), radius_ * std::sin(angle)};
}

double HoleRim::upper_crossing(double x) const {
  const double arm = x - centre_;
  if (std::abs(arm) <= flat_) return 0.5 * pi * radius_ + flat_ - arm;
  if (arm > 0.0) return radius_ * std::acos((arm - flat_) / radius_);
  return 2.0 * flat_ + radius_ * std::acos((arm + flat_) / radius_);
}

std::vector<std::vector<double>> HoleRim::divide(const std::vector<double>& stops) const {
  std::vector<double> ends = stops.empty() ? std::vector<double>{0.0} : stops;
  ends.push_back(ends.front() + length());
  const std::size_t pieces = ends.size() - 1;
  if (2 * pieces > static_cast<std::size_t>(elements_))
    throw MeshError(fmt::format("The hole at {} mm has too few elements for the lines across it.", centre_));

  // Pairs of edges are dealt out one by one to the piece whose edges are longest: the total is kept exactly.
  std::vector<int> pairs(pieces, 1);
  for (int dealt = static_cast<int>(pieces); dealt < elements_ / 2; ++dealt) {
    std::size_t longest = 0;
    for (std::size_t i = 1; i < pieces; ++i)
      if ((ends[i + 1] - ends[i]) * pairs[longest] > (ends[longest + 1] - ends[longest]) * pairs[i] * (1.0 + 1e-9))
        longest = i;
    ++pairs[longest];
  }
  std::vector<std::vector<double>> division(pieces);
  for (std::size_t i = 0; i < pieces; ++i)
    for (int k = 0; k <= 2 * pairs[i]; ++k)
      division[i].push_back(ends[i] + (ends[i + 1] - ends[i]) * k / (2 * pairs[i]));
  return division;
}

}  // namespace gapstrain::mesh
