// Pictures for the talk before the operation: what each part has in hand, and the plan on one page. As PNG files:
// white ground, legible in print, colour-blind-safe, apart in black and white. Each is written beside its target
// and renamed.
// @throw std::filesystem::filesystem_error with the path when a file cannot be written.
#pragma once

#include "models/parts/construct.h"
#include "models/review/plan.h"
#include "viz/display.h"

#include <filesystem>
#include <string>
#include <vector>

namespace gapstrain::viz {

struct MarginBar {
  std::string name;
  double factor = 0.0;      // strength over demand: below 1 it fails
  bool indicative = false;  // drawn hollow
};

struct MarginChart {
  std::string title, subtitle;
  std::vector<MarginBar> bars;  // in any order
};

// Bars from the line at 1, where a part fails, worst first, on a logarithmic axis of a tenth to a hundred at the
// most; what lies beyond ends at its edge with an arrow. Of more than fifteen the rest is counted, and so are
// factors that are no numbers.
void draw_margins(const Display&, const MarginChart& chart, const std::filesystem::path& png);

// The plan on an A4 page, 2000 pixels wide: the plate from the side, true to scale, with its holes, bends and
// screws of the length to order; the screws as a table; steps and notes. What finds no room is counted. The plan
// is the construct's.
void draw_plan(const Display&, const models::Construct& construct, const models::Plan& plan,
               const std::filesystem::path& png);

}  // namespace gapstrain::viz
