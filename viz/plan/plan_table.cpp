#include "viz/plan/plan_table.h"

#include "models/parts/words.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/window.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace gapstrain::viz {

namespace {

constexpr std::size_t most_screws = 24;
constexpr double head_row = 84.0, row_height = 48.0;

struct Column {
  const char* name;
  const char* unit;
  double width;
};
constexpr std::array<Column, 11> columns{{{"step", "", 90.0},
                                          {"screw", "", 200.0},
                                          {"hole", "", 110.0},
                                          {"kind", "", 240.0},
                                          {"size", "", 280.0},
                                          {"cortices", "", 150.0},
                                          {"depth", "mm", 170.0},
                                          {"order", "mm", 130.0},
                                          {"drill", "mm", 120.0},
                                          {"gliding", "mm", 130.0},
                                          {"tilt along,", "across, °", 260.0}}};
constexpr double table_width() {
  double width = 0.0;
  for (const auto& column : columns) width += column.width;
  return width;
}
static_assert(table_width() == picture_width - 2.0 * sheet::margin);

std::string optional_length(const std::optional<models::Length>& length) {
  return length ? length_text(*length) : "–";
}

std::string tilt_text(const models::OrderedScrew& order) {
  const std::string along = degrees_text(order.tilt_along), across = degrees_text(order.tilt_across);
  return along == "0" && across == "0" ? "–" : along + ", " + across;
}

void draw_row(Canvas& canvas, double y, const models::OrderedScrew& order) {
  const std::array<std::string, columns.size()> texts{
      "",
      order.label,
      order.hole > 0 ? std::to_string(order.hole) : "beside",
      models::name_of(order.kind),
      order.size,
      std::to_string(order.cortices),
      fmt::format("{}{:.1f}", order.length ? "" : "est. ", order.measured.value()),
      order.length ? length_text(*order.length) : "measure",
      optional_length(order.drill),
      optional_length(order.gliding),
      tilt_text(order)};
  double x = sheet::margin;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const std::string_view name = columns[c].name;
    const bool with_marker = name == "kind", to_order = name == "order";
    const double indent = with_marker ? 40.0 : 0.0, room = columns[c].width - indent - 14.0;
    if (with_marker) canvas.marker({x + 14.0, y}, head_shape(order.kind), 12.0, ink::text, order.hole == 0);
    const TextStyle style =
        fitted(canvas, texts[c], {.size = letter::small, .upright = Upright::centre, .bold = to_order}, room, 22);
    canvas.text({x + indent, y}, shortened(canvas, texts[c], style, room), style);
    x += columns[c].width;
  }
  draw_step_ring(canvas, {sheet::margin + step_ring_radius + 4.0, y}, order.step);
}

}  // namespace

double plan_table_height(std::size_t screws) {
  return head_row +
         row_height * static_cast<double>(std::min(screws, most_screws) + (screws > most_screws ? 1 : 0)) + 10.0;
}

void draw_plan_table(Canvas& canvas, double top, const std::vector<models::OrderedScrew>& screws) {
  double x = sheet::margin;
  const TextStyle quiet{.size = letter::small, .colour = ink::quiet_text, .upright = Upright::centre};
  for (const auto& [name, unit, width] : columns) {
    canvas.text({x, top - 20.0}, name, fitted(canvas, name, quiet, width - 8.0));
    canvas.text({x, top - 54.0}, unit, quiet);
    x += width;
  }
  double y = top - head_row;
  canvas.line({sheet::margin, y + 4.0}, {picture_width - sheet::margin, y + 4.0}, {.width = 3.0});
  const std::size_t shown = std::min(screws.size(), most_screws);
  for (std::size_t s = 0; s < shown; ++s) {
    if (s % 2 == 1)
      canvas.fill({sheet::margin - 8.0, y - row_height, picture_width - sheet::margin + 8.0, y},
                  {0.94, 0.95, 0.96});
    draw_row(canvas, y - 0.5 * row_height, screws[s]);
    y -= row_height;
  }
  if (shown < screws.size())
    canvas.text({sheet::margin, y - 0.5 * row_height}, fmt::format("and {} more screws", screws.size() - shown),
                quiet);
}

}  // namespace gapstrain::viz
