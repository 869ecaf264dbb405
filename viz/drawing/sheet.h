// What every picture carries round its subject: title, caution, and the scales of a scene.
#pragma once

#include "viz/drawing/canvas.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::viz {

namespace sheet {
inline constexpr double margin = 60.0;
inline constexpr double head_height = 150.0;  // title and subtitle
inline constexpr double caution_height = 64.0;
inline constexpr double legend_height = 148.0;     // colour legend
inline constexpr double row_of_directions = 70.0;  // arrows of the view, below the bodies
inline constexpr double legend_row = 50.0;         // one entry of a legend of lines
}  // namespace sheet

void draw_head(Canvas& canvas, double picture_height, const std::string& title, const std::string& subtitle);
void draw_caution(Canvas& canvas);

// Top of the colour scale for a largest value: a whole number of tick steps.
struct ColourRange {
  double high = 1.0, step = 1.0;
  double low = 0.0;
};
ColourRange colour_range(double largest);

// A value on the scale, with its name over the pointer.
struct ScaleMark {
  double value = 0.0;
  std::string name;
};

// Level bar with its top edge at `top`, `mark` (if there is one) pointed at.
void draw_colour_legend(Canvas& canvas, double top, const ColourRange& range, const std::optional<ScaleMark>& mark,
                        const std::string& quantity);

// Round length, about `wanted` pixels long, written above the middle.
void draw_length_bar(Canvas& canvas, const Pixel& centre, double pixels_per_mm, double wanted,
                     const std::string& remark);

// Arrows with the words at both ends of a row.
void draw_bone_directions(Canvas& canvas, double y);

struct Label {
  Pixel subject;  // where its leader ends
  Pixel place;    // middle of the text, as near as it may come to the subject
  std::string text;
  TextStyle style;
  bool on_white = false;  // on a ground that covers what is behind
};

// Labels that would touch are moved outward, by `row` pixels a time, up for positive. From left to right.
std::vector<Label> moved_apart(Canvas& canvas, std::vector<Label> labels, double row);

// Writes labels, moved apart, with leaders.
void draw_labels(Canvas& canvas, const std::vector<Label>& labels, double row);

}  // namespace gapstrain::viz
