// Pictures for the talk before the operation: what each part has in hand, and the plan on one page. As PNG files:
// white ground, legible in print, colour-blind-safe, apart in black and white. Each is written beside its target
// and renamed.
// @throw std::filesystem::filesystem_error with the path when a file cannot be written.
#pragma once

#include "models/parts/construct.h"
#include "models/plan/plan.h"
#include "viz/drawing/display.h"

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

namespace gapstrain::viz {

struct MarginRow {
  std::string name;
  std::vector<double> factors;  // strength over demand, below 1 it fails; one of each construct
  bool indicative = false;      // drawn hollow
};

struct MarginChart {
  std::string title, subtitle;
  std::vector<MarginRow> rows;          // in any order
  std::vector<std::string> constructs;  // none for one alone, whose bars say by colour what holds and what fails
};

// Bars from the line at 1, where a part fails, worst first, on a logarithmic axis of a tenth to a hundred at the
// most: twice and half the strength are equally far from the line. What lies beyond ends at the axis' edge with an
// arrow. Of more than fifteen rows the rest is counted, and so are factors that are no numbers.
// @throw std::invalid_argument for more than four constructs, or a row without a factor of each.
void draw_margins(const Display&, const MarginChart& chart, const std::filesystem::path& file);

// What the page says of itself: "side", "date", "program" and so on, with their values.
using PlanFacts = std::vector<std::pair<std::string, std::string>>;

// The plan on an A4 page to print: facts, the plate from the side, true to scale, with its holes, bends and screws
// of the length to order (where there is none, "measure"); the screws as a table; steps and notes; lines to write
// on. What finds no room is counted. The plan is the construct's.
void draw_plan(const Display&, const models::Construct& construct, const models::Plan& plan,
               const PlanFacts& facts, const std::filesystem::path& file);

}  // namespace gapstrain::viz
