// Limits and marked values in the charts of studies.
#pragma once

#include "viz/drawing/chart.h"
#include "viz/drawing/side_names.h"
#include "viz/study/study_pictures.h"

#include <vector>

namespace gapstrain::viz {

// Bands before the panel's grid, lines after it. Level: on the y axis; upright: on the x axis.
enum class Direction { level, upright };
void draw_limit_bands(Canvas& canvas, const Panel& panel, const std::vector<Limit>& limits, Direction direction);
void draw_limit_lines(Canvas& canvas, const Panel& panel, const std::vector<Limit>& limits, Direction direction);
std::vector<SideName> limit_names(const std::vector<Limit>& limits, const Axis& axis);

// Upright lines with their names and values at the panel's top; limits are named there, too.
void draw_marked_values(Canvas& canvas, const Panel& panel, const std::vector<MarkedValue>& marked,
                        const std::vector<Limit>& limits);

}  // namespace gapstrain::viz
