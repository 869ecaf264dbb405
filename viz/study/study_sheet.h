// What the charts of studies share: axes over values, legends, remarks and bars.
#pragma once

#include "viz/drawing/chart.h"
#include "viz/study/study_pictures.h"

#include <string>
#include <vector>

namespace gapstrain::viz {

namespace study {
inline constexpr int height = 1330;
inline constexpr double under_panel = 110.0;  // numbers and the axis' name
}  // namespace study

// Collects what an axis has to cover.
struct Range {
  bool logarithmic = false;
  double low = 0.0, high = 0.0;
  bool empty = true;
  std::size_t left_out = 0;  // values without a place on the axis

  bool takes(double value) const;  // whether it has a place
  void add(double value);
  void add(const std::vector<double>& values);
  // Also the finite ends of limits that are not far away.
  void add_limits(const std::vector<Limit>& limits);
  // With room for the share of the span more on both sides, not across zero. Ends need not be ticks.
  Axis axis(int parts, double room = 0.0) const;
  // The same without zero, unless it lies between the values.
  Axis tight_axis(int parts) const;
};

// @throw std::invalid_argument naming what differs.
void check_same_length(std::size_t one, std::size_t other, const std::string& what);

// Pixels between the picture's left edge and the panel, for the numbers of the axis.
double numbers_room(Canvas& canvas, const Axis& y);

// "First 8 of 12 curves"; empty when all are shown.
std::string first_of(std::size_t shown, std::size_t all, const std::string& what);
// The subtitle with every remark that is not empty.
std::string with_remarks(std::string subtitle, const std::vector<std::string>& remarks);
// "3 points without a value left out"; empty for none. `what` is one of them.
std::string left_out_remark(std::size_t count, const std::string& what);

enum class Sample { curve, dot, bar, none };
struct LegendEntry {
  std::string text;
  CurveStyle style;
  Sample sample = Sample::curve;
};
// Side by side in as many rows as it takes.
double legend_height(Canvas& canvas, const std::vector<LegendEntry>& entries);
void draw_legend(Canvas& canvas, double top, const std::vector<LegendEntry>& entries);

// Filled, or hollow with a frame, as the style's markers.
void draw_bar(Canvas& canvas, const Rect& bar, const CurveStyle& style);

// With a tick at either end, `half_tick` pixels to each side; nothing where an end has no place.
void draw_interval(Canvas& canvas, const Pixel& from, const Pixel& to, double half_tick);

void draw_nothing(Canvas& canvas, const Rect& area);

}  // namespace gapstrain::viz
