#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"
#include "viz/study/study_sheet.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::viz {

namespace {

constexpr int level_digits = 6;

void hatch(Canvas& canvas, const Rect& area) {
  constexpr double apart = 22.0;
  canvas.fill(area, {0.93, 0.93, 0.94});
  // From a place common to all areas, so that neighbours fit together.
  const double first = apart * std::ceil((area.left - area.top) / apart);
  for (double line = first; line < area.right - area.bottom; line += apart) {
    const double offset = line - (area.left - area.bottom);
    const double right = std::max(offset, 0.0), up = std::max(-offset, 0.0);
    const double length = std::min(area.width() - right, area.height() - up);
    const Pixel from(area.left + right, area.bottom + up);
    canvas.line(from, from + Pixel(length, length), {.colour = ink::leader, .width = 3.0});
  }
}

struct Grid {
  Rect area;
  std::size_t columns = 0, rows = 0;

  Rect cell(std::size_t column, std::size_t row) const {
    const auto part = [](double from, double length, std::size_t k, std::size_t count) {
      return std::round(from + length * static_cast<double>(k) / static_cast<double>(count));
    };
    return {part(area.left, area.width(), column, columns), part(area.bottom, area.height(), row, rows),
            part(area.left, area.width(), column + 1, columns), part(area.bottom, area.height(), row + 1, rows)};
  }
};

// Numbers of the levels at their rows or columns, only as many as do not touch.
void draw_levels(Canvas& canvas, const Grid& grid, const MapChart& chart) {
  const TextStyle across{.size = letter::small, .across = Across::centre, .upright = Upright::top};
  double free_from = -1e9;
  for (std::size_t c = 0; c < grid.columns; ++c) {
    const std::string text = number_text(chart.x_values[c], level_digits);
    const double x = grid.cell(c, 0).centre().x(), half = 0.5 * canvas.text_size(text, across).x();
    if (x - half < free_from) continue;
    canvas.text({x, grid.area.bottom - 14.0}, text, across);
    free_from = x + half + 30.0;
  }
  free_from = -1e9;
  for (std::size_t r = 0; r < grid.rows; ++r) {
    const double y = grid.cell(0, r).centre().y();
    if (y - 0.5 * letter::small < free_from) continue;
    canvas.text({grid.area.left - 14.0, y}, number_text(chart.y_values[r], level_digits),
                {.size = letter::small, .across = Across::right, .upright = Upright::centre});
    free_from = y + 0.5 * letter::small + 16.0;
  }
}

void draw_cells(Canvas& canvas, const Grid& grid, const Eigen::MatrixXd& outcomes, const ColourRange& range) {
  const TextStyle style{.size = letter::small, .across = Across::centre, .upright = Upright::centre, .bold = true};
  double widest = 0.0;
  for (const double outcome : outcomes.reshaped())
    widest = std::max(widest, canvas.text_size(number_text(outcome), style).x());
  for (std::size_t r = 0; r < grid.rows; ++r)
    for (std::size_t c = 0; c < grid.columns; ++c) {
      const Rect cell = grid.cell(c, r);
      const double outcome = outcomes(static_cast<Eigen::Index>(r), static_cast<Eigen::Index>(c));
      if (!std::isfinite(outcome)) {
        hatch(canvas, cell);
        continue;
      }
      const Colour colour = scale_colour((outcome - range.low) / (range.high - range.low));
      canvas.fill(cell, colour);
      if (cell.width() < widest + 8.0 || cell.height() < 1.2 * letter::small) continue;
      TextStyle own = style;
      own.colour = luminance(colour) < 0.2 ? ink::white : ink::text;
      canvas.text(cell.centre(), number_text(outcome), own);
    }
}

}  // namespace

void draw_map(const Display& display, const MapChart& chart, const std::filesystem::path& file) {
  const Grid levels{{}, chart.x_values.size(), chart.y_values.size()};
  check_same_length(levels.columns, static_cast<std::size_t>(chart.outcomes.cols()), "x values and columns");
  check_same_length(levels.rows, static_cast<std::size_t>(chart.outcomes.rows()), "y values and rows");
  Range range;
  for (const double outcome : chart.outcomes.reshaped()) range.add(outcome);
  const bool nothing = levels.columns == 0 || levels.rows == 0;
  const Axis scale = range.tight_axis(8);

  Window window(display, study::height);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, study::height, chart.words.title, chart.words.subtitle);
    double left = 40.0;
    for (const double value : chart.y_values)
      left = std::max(left, canvas.text_size(number_text(value, level_digits), {.size = letter::small}).x());
    const double legend_top = sheet::caution_height + sheet::legend_height;
    Grid grid = levels;
    grid.area = {sheet::margin + left + 20.0, legend_top + study::under_panel + 10.0, picture_width - 100.0,
                 study::height - sheet::head_height - 60.0};
    const Rect& area = grid.area;
    if (nothing)
      draw_nothing(canvas, area);
    else
      draw_cells(canvas, grid, chart.outcomes, {scale.high, scale.step, scale.low});
    canvas.frame(area, {.colour = ink::leader, .width = 2.0});
    draw_levels(canvas, grid, chart);
    canvas.text({area.left, area.top + 12.0}, chart.y.name,
                fitted(canvas, chart.y.name, {.bold = true}, area.width()));
    canvas.text({area.centre().x(), area.bottom - 56.0}, chart.x.name,
                fitted(canvas, chart.x.name, {.across = Across::centre, .upright = Upright::top}, area.width()));
    if (!range.empty)
      draw_colour_legend(canvas, legend_top, {scale.high, scale.step, scale.low}, std::nullopt, chart.outcome);
    if (range.left_out > 0) {
      const double bottom = legend_top - 80.0;
      hatch(canvas, {sheet::margin, bottom, sheet::margin + 90.0, bottom + 36.0});
      canvas.text({sheet::margin + 106.0, bottom + 18.0}, "no outcome",
                  {.size = letter::small, .upright = Upright::centre});
    }
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
