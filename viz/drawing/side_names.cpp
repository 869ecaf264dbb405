#include "viz/drawing/side_names.h"

#include "viz/drawing/text_fit.h"
#include "viz/drawing/window.h"

#include <algorithm>

namespace gapstrain::viz {

namespace {

constexpr double sample_width = 90.0;
constexpr double before_sample = 24.0, before_text = 16.0;
constexpr double before_all = before_sample + sample_width + before_text;
constexpr double border = 24.0;  // left of the picture's right edge
constexpr double most_room = 600.0;
constexpr double name_line_height = 38.0, between_names = 14.0;

}  // namespace

double side_room(Canvas& canvas, const std::vector<SideName>& names) {
  double widest = 0.0;
  for (const auto& name : names) widest = std::max(widest, canvas.text_size(name.text).x());
  return std::min(before_all + widest + border, most_room);
}

void draw_side_names(Canvas& canvas, const Panel& panel, const std::vector<SideName>& names) {
  if (names.empty()) return;
  const Rect& area = panel.area;
  const double x = area.right + before_all, width = picture_width - border - x;
  const double most_height = area.height() / static_cast<double>(names.size());
  TextStyle style{.size = std::clamp(static_cast<int>(0.8 * most_height), 16, letter::body)};
  const auto lines = static_cast<std::size_t>(std::clamp(most_height / name_line_height, 1.0, 3.0));
  for (const auto& name : names)
    style = fitted_lines(canvas, name.text, style, width, lines).style;  // one for all

  std::vector<std::vector<std::string>> texts;
  std::vector<double> middles;
  std::size_t most_lines = 1;
  for (const auto& name : names) {
    texts.push_back(wrapped(canvas, name.text, style, width, lines));
    most_lines = std::max(most_lines, texts.back().size());
    middles.push_back(std::clamp(panel.at(panel.x.high, name.value).y(), area.bottom, area.top));
  }
  const double row = std::min(name_line_height * static_cast<double>(most_lines) + between_names, most_height);
  const auto places = spread(middles, row, area.bottom + 0.5 * row, area.top - 0.5 * row);
  for (std::size_t n = 0; n < names.size(); ++n) {
    const Pixel left(area.right + before_sample, places[n]);
    if (names[n].sample)
      draw_sample(canvas, left, sample_width, *names[n].sample);
    else
      canvas.line({area.right + 6.0, middles[n]}, {x - before_text, places[n]},
                  {.colour = ink::leader, .width = 3.0});
    draw_lines(canvas, {x, places[n]}, texts[n], style);
  }
}

}  // namespace gapstrain::viz
