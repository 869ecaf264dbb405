#include "viz/plan/plan_screws.h"

#include "viz/drawing/ticks.h"

#include <cmath>

namespace gapstrain::viz {

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
