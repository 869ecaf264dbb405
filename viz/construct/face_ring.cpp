#include "viz/construct/face_ring.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace gapstrain::viz {

namespace {

constexpr double inner_share = 0.45, middle_share = 0.72;  // of the radius
constexpr double full_turn = 2.0 * std::numbers::pi;

// Each place reaches half way to its neighbours.
void draw_half(Canvas& canvas, const Pixel& centre, double inner, double outer,
               const std::vector<models::FacePoint>& points, double high) {
  const std::size_t count = points.size();
  for (std::size_t i = 0; i < count; ++i) {
    if (!(points[i].pressure.value() > 0.0)) continue;
    const double here = points[i].around.value();
    const double before = points[(i + count - 1) % count].around.value() - (i == 0 ? full_turn : 0.0);
    const double after = points[(i + 1) % count].around.value() + (i + 1 == count ? full_turn : 0.0);
    const double from = 0.5 * (before + here), to = 0.5 * (here + after);
    const auto at = [&](double angle, double radius) {
      return Pixel(centre + radius * Pixel(std::sin(angle), std::cos(angle)));
    };
    canvas.polygon({at(from, inner), at(from, outer), at(to, outer), at(to, inner)},
                   pressure_colour(points[i].pressure.value(), high));
  }
}

}  // namespace

Colour pressure_colour(double pressure, double high) {
  if (!(pressure > 0.0) || !(high > 0.0)) return ink::white;
  constexpr double least = 0.2;  // so that a touch is told from an open place
  const double share = least + (1.0 - least) * std::min(pressure / high, 1.0);
  const Colour& full = curve_colours[0];
  return {1.0 + share * (full.red - 1.0), 1.0 + share * (full.green - 1.0), 1.0 + share * (full.blue - 1.0)};
}

void draw_face_ring(Canvas& canvas, const Pixel& centre, double radius, const models::FaceFindings& face,
                    double high) {
  std::vector<models::FacePoint> halves[2];
  for (const auto& point : face.points) halves[point.outer ? 1 : 0].push_back(point);
  for (auto& half : halves)
    std::stable_sort(half.begin(), half.end(), [](const auto& a, const auto& b) { return a.around < b.around; });
  draw_half(canvas, centre, inner_share * radius, middle_share * radius, halves[0], high);
  draw_half(canvas, centre, middle_share * radius, radius, halves[1], high);
  for (const double edge : {inner_share * radius, radius})
    canvas.ring(centre, edge, {.colour = ink::leader, .width = 2.0});
}

}  // namespace gapstrain::viz
