// Charts over the angle round the bone: one curve style a load, places named on the axis, what is closed in grey.
#pragma once

#include "viz/drawing/chart.h"

#include <Eigen/Core>

#include <utility>
#include <vector>

namespace gapstrain::viz {

inline constexpr std::size_t most_loads = curve_colours.size();

// Solid, with the load's colour and marker at about twelve of `points` places. @pre load < most_loads
CurveStyle load_style(std::size_t load, std::size_t points);

// Values over rising degrees, 0 to 360, in pieces: broken where there is nothing to show.
struct RoundCurve {
  struct Piece {
    std::vector<double> around, values;
  };
  std::vector<Piece> pieces;
  std::vector<std::pair<double, double>> missing;  // the degrees between them

  void draw(Canvas& canvas, const Panel& panel, const CurveStyle& style) const;
};

// Closes the curve over 0 and 360 degrees between its last and its first place; a value that is no number is
// missing, half way to its neighbours.
RoundCurve round_curve(const std::vector<double>& degrees, const std::vector<double>& values);

// Under the panel a row for each curve with missing places, one load's after another: grey where they are, as the
// faces touch there. Returns the rows' height in pixels.
inline constexpr double closed_row = 40.0;
double draw_closed(Canvas& canvas, const Panel& panel, const std::vector<const RoundCurve*>& curves);

// 0 to 360 degrees, named by the cortex there, `below` pixels under the panel.
Axis round_bone_axis();
void draw_places_round(Canvas& canvas, const Panel& panel, double below);

}  // namespace gapstrain::viz
