// A panel with axes, and curves in it.
#pragma once

#include "viz/canvas.h"

#include <string>
#include <vector>

namespace gapstrain::viz {

struct Axis {
  double low = 0.0, high = 1.0;
  double step = 1.0;  // between ticks
};

// Covers the values and zero with round limits in at most `parts` steps.
Axis round_axis(double low, double high, int parts);

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

// Ticks, grid, the zero line and the y axis' name above the panel's upper left corner.
void draw_panel(Canvas& canvas, const Panel& panel, const std::string& y_name);

// Numbers under the panel, with the axis' name below them.
void draw_x_numbers(Canvas& canvas, const Panel& panel, const std::string& x_name);

// Cut off at the panel's edges.
void draw_curve(Canvas& canvas, const Panel& panel, const std::vector<double>& x, const std::vector<double>& y,
                const CurveStyle& style);

// A short piece of the curve, `width` pixels long, with one marker.
void draw_sample(Canvas& canvas, const Pixel& left, double width, const CurveStyle& style);

// Moves places apart to at least `spacing`, keeping their order, each as near to where it was as a sweep finds.
std::vector<double> spread(std::vector<double> places, double spacing, double low, double high);

}  // namespace gapstrain::viz
