// A sheet of named rows over one axis of values: what charts of bars stand on.
#pragma once

#include "viz/study/study_sheet.h"

#include <string>
#include <vector>

namespace gapstrain::viz {

// Rows from the top down beside their names, the axis of the values below.
struct RowSheet {
  int height = 0;
  double legend_top = 0.0;
  Panel panel;

  double row() const { return panel.area.height() / panel.y.high; }
  double middle(std::size_t r) const { return panel.area.top - row() * (static_cast<double>(r) + 0.5); }
};

// A sheet as high as the rows need.
RowSheet row_sheet(const Axis& x, std::size_t rows, double row_height);

// Frame, numbers and names; bands behind the rows are drawn before, lines and bars after.
void draw_rows(Canvas& canvas, const RowSheet& sheet, const std::string& x_name,
               const std::vector<std::string>& names);

// Entries in the one row there is for them.
void draw_row_legend(Canvas& canvas, const RowSheet& sheet, std::vector<LegendEntry> entries);

// A number beside the end of a bar, on a ground that covers the grid.
void draw_value(Canvas& canvas, const Pixel& end, const std::string& text, bool at_right);

}  // namespace gapstrain::viz
