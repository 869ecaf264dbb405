#include "models/measures/prebend.h"

#include "models/measures/face_pressure.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::models {

namespace {

// Standard deviation of the pressure over the face by area, over its mean.
double unevenness(const Assembly& assembly, const FaceFindings& face) {
  double area = 0.0, sum = 0.0, squares = 0.0;
  for (std::size_t k = 0; k < face.points.size(); ++k) {
    const double share = assembly.face[k].area, pressure = face.points[k].pressure.value();
    area += share;
    sum += share * pressure;
    squares += share * pressure * pressure;
  }
  if (sum <= 0.0) return std::numeric_limits<double>::infinity();
  return std::sqrt(std::max(squares / area - std::pow(sum / area, 2), 0.0)) / (sum / area);
}

PrebendPoint point_at(const Assembly& assembly, Procedure procedure, double height) {
  procedure.prebend = height * mm;
  const FaceFindings face = measure_face(assembly, carry_out(assembly, procedure).back());
  return {height * mm, face.force, face.near, face.far, face.touching, unevenness(assembly, face)};
}

}  // namespace

PrebendFindings find_prebend(const Assembly& assembly, const Procedure& procedure) {
  constexpr double as_even = 1.15, highest = 3.0, step = 0.5, accuracy = 0.1;  // mm
  const auto less_even = [](const PrebendPoint& a, const PrebendPoint& b) { return a.unevenness < b.unevenness; };
  PrebendFindings findings;
  for (int k = 0; k * step <= highest; ++k) findings.curve.push_back(point_at(assembly, procedure, k * step));
  PrebendPoint& most_even = findings.most_even;
  most_even = *std::min_element(findings.curve.begin(), findings.curve.end(), less_even);
  if (!std::isfinite(most_even.unevenness)) return {};

  const double golden = (std::sqrt(5.0) - 1.0) / 2.0;
  double low = std::max(0.0, most_even.height.value() - step);
  double high = std::min(highest, most_even.height.value() + step);
  PrebendPoint lower = point_at(assembly, procedure, high - golden * (high - low));
  PrebendPoint upper = point_at(assembly, procedure, low + golden * (high - low));
  while (high - low > accuracy) {
    if (lower.unevenness < upper.unevenness) {
      high = upper.height.value();
      upper = lower;
      lower = point_at(assembly, procedure, high - golden * (high - low));
    } else {
      low = lower.height.value();
      lower = upper;
      upper = point_at(assembly, procedure, low + golden * (high - low));
    }
  }
  most_even = std::min({most_even, lower, upper}, less_even);
  // More bend than it takes only strains plate and screws more.
  findings.sufficient = most_even;
  const auto first = std::find_if(findings.curve.begin(), findings.curve.end(), [&](const PrebendPoint& point) {
    return point.unevenness <= as_even * most_even.unevenness;
  });
  if (first != findings.curve.end() && first->height < most_even.height) findings.sufficient = *first;
  // Heights at which nothing presses have no unevenness to show.
  std::erase_if(findings.curve, [](const PrebendPoint& point) { return !std::isfinite(point.unevenness); });
  return findings;
}

}  // namespace gapstrain::models
