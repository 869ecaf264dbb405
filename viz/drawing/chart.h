// A panel with axes, and curves in it.
#pragma once

#include "viz/drawing/canvas.h"

#include <string>
#include <vector>

namespace gapstrain::viz {

struct Axis {
  double low = 0.0, high = 1.0;
  double step = 1.0;  // between ticks; on a logarithmic axis in decades, below one: at 1, 2 and 5
  bool logarithmic = false;

  double share(double value) const;  // 0 at low, 1 at high
  std::vector<double> ticks() const;
  std::string text(double tick) const;
};

// Covers the values and zero with round limits in at most `parts` steps.
Axis round_axis(double low, double high, int parts);

// The same without zero, unless it would leave less than a share of `near` of the axis empty. Equal values get
// room on both sides.
Axis close_axis(double low, double high, int parts, double near = 0.3);

// Limits of 1, 2 or 5 times a power of ten. @pre 0 < low <= high
Axis logarithmic_axis(double low, double high, int parts);

struct Panel {
  Rect area;
  Axis x, y;
  Pixel at(double x_value, double y_value) const;
};

struct CurveStyle {
  Colour colour = ink::text;
  Dash dash = Dash::solid;
  Marker marker = Marker::none;
  bool hollow = false;
  double width = 5.0;
  std::size_t first_marker = 0, markers_apart = 1;  // in points
};

// Eight series that stay apart in colour and in black and white: the first four solid with filled markers, the
// others dashed with hollow ones, at about twelve of `points` places. @pre series < most_series
inline constexpr std::size_t most_series = 2 * curve_colours.size();
CurveStyle series_style(std::size_t series, std::size_t points);

// Of dots and bars with a meaning: filled circle, square, hollow diamond.
CurveStyle style_of(Meaning meaning);

// The grid lines of one direction; those across with their numbers if wanted.
void draw_upright_grid(Canvas& canvas, const Panel& panel);
void draw_level_grid(Canvas& canvas, const Panel& panel, bool numbers);

// Ticks, grid, the zero line and the y axis' name above the panel's upper left corner.
void draw_panel(Canvas& canvas, const Panel& panel, const std::string& y_name);

// Numbers under the panel, with the axis' name below them.
void draw_x_numbers(Canvas& canvas, const Panel& panel, const std::string& x_name);

// Cut off at the panel's lower and upper edge, broken where a value is no number.
void draw_curve(Canvas& canvas, const Panel& panel, const std::vector<double>& x, const std::vector<double>& y,
                const CurveStyle& style);

// A short piece of the curve, `width` pixels long, with one marker.
void draw_sample(Canvas& canvas, const Pixel& left, double width, const CurveStyle& style);

// Moves places apart to at least `spacing`, keeping their order, each as near to where it was as a sweep finds.
std::vector<double> spread(std::vector<double> places, double spacing, double low, double high);

}  // namespace gapstrain::viz
