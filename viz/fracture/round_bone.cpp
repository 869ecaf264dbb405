#include "viz/fracture/round_bone.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace gapstrain::viz {

namespace {

constexpr double once_round = 360.0;

}  // namespace

CurveStyle load_style(std::size_t load, std::size_t points) {
  assert(load < most_loads);
  return series_style(load, points);
}

void RoundCurve::draw(Canvas& canvas, const Panel& panel, const CurveStyle& style) const {
  for (const auto& piece : pieces) {
    CurveStyle own = style;
    own.first_marker = std::min(own.first_marker, piece.values.size() / 2);  // a short piece has one, too
    draw_curve(canvas, panel, piece.around, piece.values, own);
  }
}

RoundCurve round_curve(const std::vector<double>& degrees, const std::vector<double>& values) {
  assert(degrees.size() == values.size());
  RoundCurve curve;
  if (degrees.empty()) return curve;
  // Once round with the neighbours from across the seam.
  std::vector<double> around{degrees.back() - once_round}, value{values.back()};
  around.insert(around.end(), degrees.begin(), degrees.end());
  value.insert(value.end(), values.begin(), values.end());
  around.push_back(degrees.front() + once_round);
  value.push_back(values.front());

  bool open = false;
  const auto add = [&](double at, double height) {
    if (at < 0.0 || at > once_round) return;
    if (!open) curve.pieces.emplace_back();
    open = true;
    curve.pieces.back().around.push_back(at);
    curve.pieces.back().values.push_back(height);
  };
  const auto miss = [&](double from, double to) {
    from = std::max(from, 0.0);
    to = std::min(to, once_round);
    if (to <= from) return;
    if (!curve.missing.empty() && curve.missing.back().second >= from)
      curve.missing.back().second = to;
    else
      curve.missing.emplace_back(from, to);
  };
  for (std::size_t i = 0; i + 1 < around.size(); ++i) {
    const double here = around[i], next = around[i + 1], middle = 0.5 * (here + next);
    const bool here_known = std::isfinite(value[i]), next_known = std::isfinite(value[i + 1]);
    const auto between = [&](double at) {
      return value[i] + (value[i + 1] - value[i]) * (at - here) / std::max(next - here, 1e-12);
    };
    if (here_known) add(here, value[i]);
    for (const double seam : {0.0, once_round})
      if (here_known && next_known && here < seam && next >= seam) add(seam, between(seam));
    if (!here_known) miss(here, middle);
    if (!next_known) miss(middle, next);
    if (!next_known) open = false;
  }
  return curve;
}

double draw_closed(Canvas& canvas, const Panel& panel, const std::vector<const RoundCurve*>& curves) {
  double top = panel.area.bottom - 8.0;
  for (std::size_t l = 0; l < curves.size(); ++l) {
    if (curves[l]->missing.empty()) continue;
    const double middle = top - 0.5 * closed_row;
    for (const auto& [from, to] : curves[l]->missing) {
      const Rect band{panel.at(from, 0.0).x(), top - closed_row + 4.0, panel.at(to, 0.0).x(), top};
      canvas.fill(band, ink::grid);
      const TextStyle style{.size = letter::small, .across = Across::centre, .upright = Upright::centre};
      if (canvas.text_size("closed", style).x() < band.width()) canvas.text(band.centre(), "closed", style);
    }
    canvas.marker({panel.area.left - 30.0, middle}, load_style(l, 1).marker, 11.0, load_style(l, 1).colour, false);
    top -= closed_row;
  }
  return panel.area.bottom - top;
}

Axis round_bone_axis() { return {0.0, once_round, 45.0}; }

void draw_places_round(Canvas& canvas, const Panel& panel, double below) {
  constexpr std::array<const char*, 5> words{"near cortex", "+y side", "far cortex", "\u2212y side",
                                             "near cortex"};
  for (std::size_t k = 0; k < words.size(); ++k) {
    const double angle = 90.0 * static_cast<double>(k), x = panel.at(angle, 0.0).x();
    canvas.text({x, panel.area.bottom - below}, fmt::format("{:.0f}°", angle),
                {.size = letter::small, .across = Across::centre, .upright = Upright::top});
    canvas.text({x, panel.area.bottom - below - 38.0}, words[k],
                {.across = Across::centre, .upright = Upright::top});
  }
}

}  // namespace gapstrain::viz
