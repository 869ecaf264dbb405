#include "viz/plan/plan_screws.h"

#include "models/assembly/procedure.h"
#include "viz/drawing/ticks.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>
#include <stdexcept>

namespace gapstrain::viz {

namespace {

// The step each of the construct's screws goes in with, 1-based.
std::vector<int> steps_of(const models::Construct& construct) {
  std::vector<int> all(construct.screws.size());
  std::iota(all.begin(), all.end(), 0);
  const models::Procedure procedure = models::procedure_of(construct, all);
  std::vector<int> steps(construct.screws.size(), 0);
  for (std::size_t s = procedure.steps.size(); s-- > 0;)
    for (const auto& name : procedure.steps[s].insert)
      steps[static_cast<std::size_t>(procedure.screws.at(name))] = static_cast<int>(s) + 1;
  return steps;
}

}  // namespace

std::vector<PlannedScrew> planned_screws(const models::Construct& construct, const models::Plan& plan) {
  const auto steps = steps_of(construct);
  std::set<std::size_t> taken;  // screws beside the plate may share number and name
  std::vector<PlannedScrew> planned;
  for (const auto& order : plan.screws) {
    std::size_t s = 0;
    while (s < construct.screws.size() && (taken.contains(s) || construct.screws[s].hole != order.hole ||
                                           construct.screws[s].label != order.label))
      ++s;
    if (s == construct.screws.size())
      throw std::invalid_argument("the plan orders a screw that is not in the construct: " + order.label);
    taken.insert(s);
    planned.push_back({&order, &construct.screws[s], steps[s]});
  }
  return planned;
}

Marker head_shape(models::ScrewKind kind) {
  switch (kind) {
    case models::ScrewKind::locking:
      return Marker::square;
    case models::ScrewKind::cortical:
      return Marker::circle;
    case models::ScrewKind::compression:
      return Marker::triangle;
    case models::ScrewKind::lag:
      break;
  }
  return Marker::diamond;
}

void draw_step_ring(Canvas& canvas, const Pixel& centre, int step) {
  canvas.disc(centre, step_ring_radius, ink::white);
  canvas.ring(centre, step_ring_radius, {.width = 3.0});
  canvas.text(centre, std::to_string(step),
              {.size = 26, .across = Across::centre, .upright = Upright::centre, .bold = true});
}

std::string length_text(models::Length length) {
  const bool whole = std::abs(length.value() - std::round(length.value())) < 0.05;
  return tick_text(length.value(), whole ? 1.0 : 0.1);
}

std::string degrees_text(models::Angle angle) {
  const double degrees = (angle / models::degree).value();
  if (std::abs(degrees) < 0.05) return "0";
  return (degrees > 0.0 ? "+" : "") + tick_text(degrees, 0.1);
}

}  // namespace gapstrain::viz
