#include "viz/study/row_sheet.h"

#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/window.h"

#include <algorithm>

namespace gapstrain::viz {

namespace {

constexpr double names_width = 520.0;

}  // namespace

RowSheet row_sheet(const Axis& x, std::size_t rows, double row_height) {
  const double most = std::max<double>(static_cast<double>(rows), 1.0);
  RowSheet sheet;
  sheet.legend_top = sheet::caution_height + 16.0 + sheet::legend_row;
  const double bottom = sheet.legend_top + study::under_panel;
  const double rows_height = std::clamp(most * row_height, 260.0, 1500.0);
  sheet.height = static_cast<int>(bottom + rows_height + 40.0 + sheet::head_height);
  sheet.panel = {{sheet::margin + names_width + 20.0, bottom, picture_width - 120.0, bottom + rows_height},
                 x,
                 {0.0, most, 2.0 * most}};
  return sheet;
}

void draw_rows(Canvas& canvas, const RowSheet& sheet, const std::string& x_name,
               const std::vector<std::string>& names) {
  draw_upright_grid(canvas, sheet.panel);
  canvas.frame(sheet.panel.area, {.colour = ink::leader, .width = 2.0});
  draw_x_numbers(canvas, sheet.panel, x_name);
  const bool two_lines = sheet.row() >= 2.3 * letter::small;
  const TextStyle style{.size = two_lines ? letter::body : letter::small, .across = Across::right};
  for (std::size_t r = 0; r < names.size(); ++r) {
    const auto [lines, own] = fitted_lines(canvas, names[r], style, names_width, two_lines ? 2 : 1);
    draw_lines(canvas, {sheet.panel.area.left - 20.0, sheet.middle(r)}, lines, own);
  }
}

void draw_row_legend(Canvas& canvas, const RowSheet& sheet, std::vector<LegendEntry> entries) {
  constexpr double sample_and_gaps = 170.0;
  const double each =
      (picture_width - 2.0 * sheet::margin) / static_cast<double>(entries.size()) - sample_and_gaps;
  if (legend_height(canvas, entries) > sheet::legend_row)
    for (auto& entry : entries) entry.text = shortened(canvas, entry.text, {}, each);
  draw_legend(canvas, sheet.legend_top, entries);
}

void draw_value(Canvas& canvas, const Pixel& end, const std::string& text, bool at_right) {
  const TextStyle style{.size = letter::small, .upright = Upright::centre};
  const double width = canvas.text_size(text, style).x();
  const double left = end.x() + (at_right ? 12.0 : -12.0 - width);
  canvas.fill({left - 4.0, end.y() - 13.0, left + width + 4.0, end.y() + 13.0}, ink::white);
  canvas.text({left, end.y()}, text, style);
}

}  // namespace gapstrain::viz
