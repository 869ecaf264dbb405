#include "viz/study/study_limits.h"

#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/ticks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace gapstrain::viz {

namespace {

// Grey, since colour says which curve; the first the darkest, an order that survives a black-and-white print.
constexpr std::array<Colour, 3> tints{{{0.87, 0.88, 0.89}, {0.92, 0.93, 0.93}, {0.96, 0.96, 0.97}}};

bool is_line(const Limit& limit) { return limit.low == limit.high; }

std::string limit_text(const Limit& limit) {
  if (is_line(limit)) return fmt::format("{}: {}", limit.name, number_text(limit.low));
  if (!std::isfinite(limit.low)) return fmt::format("{}: up to {}", limit.name, number_text(limit.high));
  if (!std::isfinite(limit.high)) return fmt::format("{}: above {}", limit.name, number_text(limit.low));
  return fmt::format("{}: {} to {}", limit.name, number_text(limit.low), number_text(limit.high));
}

double middle(const Axis& axis, const Limit& limit) {
  const auto share = [&](double end, double otherwise) {
    if (!std::isfinite(end)) return otherwise;
    const double value = axis.share(end);
    return std::isnan(value) ? 0.0 : std::clamp(value, 0.0, 1.0);  // below zero on a logarithmic axis
  };
  return 0.5 * (share(limit.low, 0.0) + share(limit.high, 1.0));
}

bool beyond(const Axis& axis, const Limit& limit) {
  return (std::isfinite(limit.low) && limit.low > axis.high) ||
         (std::isfinite(limit.high) && limit.high < axis.low);
}

}  // namespace

void draw_limit_bands(Canvas& canvas, const Panel& panel, const std::vector<Limit>& limits, Direction direction) {
  const bool level = direction == Direction::level;
  const Axis& axis = level ? panel.y : panel.x;
  std::size_t bands = 0;
  for (const auto& limit : limits) {
    if (is_line(limit)) continue;
    const Colour& tint = tints[std::min(bands++, tints.size() - 1)];
    if (beyond(axis, limit)) continue;
    const double least = axis.logarithmic ? std::max(limit.low, axis.low) : limit.low;
    const double from = std::isfinite(limit.low) ? std::max(axis.share(least), 0.0) : 0.0;
    const double to = std::isfinite(limit.high) ? std::min(axis.share(limit.high), 1.0) : 1.0;
    Rect band = panel.area;
    if (level) {
      band.bottom = panel.area.bottom + from * panel.area.height();
      band.top = panel.area.bottom + to * panel.area.height();
    } else {
      band.left = panel.area.left + from * panel.area.width();
      band.right = panel.area.left + to * panel.area.width();
    }
    canvas.fill(band, tint);
  }
}

void draw_limit_lines(Canvas& canvas, const Panel& panel, const std::vector<Limit>& limits, Direction direction) {
  const bool level = direction == Direction::level;
  const Axis& axis = level ? panel.y : panel.x;
  for (const auto& limit : limits) {
    if (!is_line(limit) || !(limit.low >= axis.low && limit.low <= axis.high)) continue;
    const Pixel at = panel.at(level ? panel.x.low : limit.low, level ? limit.low : panel.y.low);
    const Pixel end = level ? Pixel(panel.area.right, at.y()) : Pixel(at.x(), panel.area.top);
    canvas.line(at, end, {.colour = ink::text, .width = 5.0, .dash = Dash::dashed});
  }
}

std::vector<SideName> limit_names(const std::vector<Limit>& limits, const Axis& axis) {
  std::vector<SideName> names;
  for (const auto& limit : limits) {
    const double share = middle(axis, limit);
    const double value = axis.logarithmic ? axis.low * std::pow(axis.high / axis.low, share)
                                          : axis.low + share * (axis.high - axis.low);
    names.push_back({value, limit_text(limit) + (beyond(axis, limit) ? ", beyond the axis" : ""), {}});
  }
  return names;
}

void draw_marked_values(Canvas& canvas, const Panel& panel, const std::vector<MarkedValue>& marked,
                        const std::vector<Limit>& limits) {
  constexpr double row = 42.0, from_top = 32.0;
  const Rect& area = panel.area;
  std::vector<Label> labels;
  const auto add = [&](double x, const std::string& text, bool bold) {
    const TextStyle style{.size = letter::small, .bold = bold};
    const double half = std::min(0.5 * canvas.text_size(text, style).x() + 6.0, 0.5 * area.width());
    labels.push_back({{x, area.top - from_top + 0.5 * style.size + 2.0},
                      {kept_between(x, area.left + half, area.right - half), area.top - from_top},
                      shortened(canvas, text, style, area.width()),
                      style,
                      true});
  };
  for (const auto& mark : marked) {
    if (!(mark.value >= panel.x.low && mark.value <= panel.x.high)) continue;
    const double x = panel.at(mark.value, panel.y.low).x();
    canvas.line({x, area.bottom}, {x, area.top}, {.colour = ink::text, .width = 4.0, .dash = Dash::dotted});
    add(x, fmt::format("{}: {}", mark.name, number_text(mark.value)), false);
  }
  draw_limit_lines(canvas, panel, limits, Direction::upright);
  for (const auto& limit : limits)
    add(area.left + middle(panel.x, limit) * area.width(),
        limit_text(limit) + (beyond(panel.x, limit) ? ", beyond the axis" : ""), true);
  draw_labels(canvas, labels, -row);
}

}  // namespace gapstrain::viz
