// Names at a panel's right edge, of what ends or lies there.
#pragma once

#include "viz/drawing/chart.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::viz {

struct SideName {
  double value = 0.0;  // on the y axis
  std::string text;
  std::optional<CurveStyle> sample;  // a leader to the value without
};

// Pixels the names take beside the panel, at most a third of the picture: longer ones are wrapped or shortened.
double side_room(Canvas& canvas, const std::vector<SideName>& names);

// Each as near to its value as the others let it be; smaller when there are many. Beyond the picture nothing is
// drawn.
void draw_side_names(Canvas& canvas, const Panel& panel, const std::vector<SideName>& names);

}  // namespace gapstrain::viz
