// Text that keeps to its room: smaller, shortened or on several lines.
#pragma once

#include "viz/drawing/canvas.h"

#include <string>
#include <vector>

namespace gapstrain::viz {

// The place nearest to the wanted one; the higher bound where a text too long for its room leaves none between.
double kept_between(double wanted, double low, double high);

// The largest size, from the wanted one down to `smallest`, at which the text fits.
TextStyle fitted(Canvas& canvas, const std::string& text, TextStyle style, double width, int smallest = 16);

// The text, or its beginning with an ellipsis.
std::string shortened(Canvas& canvas, const std::string& text, const TextStyle& style, double width);

// Broken between words into at most `lines`, each within the width; what does not fit is shortened.
std::vector<std::string> wrapped(Canvas& canvas, const std::string& text, const TextStyle& style, double width,
                                 std::size_t lines);

// Text in lines at the largest size, down to `smallest`, at which all of it fits; shortened where none does.
struct FittedLines {
  std::vector<std::string> lines;
  TextStyle style;
};
FittedLines fitted_lines(Canvas& canvas, const std::string& text, TextStyle style, double width, std::size_t lines,
                         int smallest = letter::small);

// Lines one above the other, their middle at the place; `style.across` holds for each.
void draw_lines(Canvas& canvas, const Pixel& middle, const std::vector<std::string>& lines, TextStyle style);

}  // namespace gapstrain::viz
