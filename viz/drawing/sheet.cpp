#include "viz/drawing/sheet.h"

#include "viz/drawing/text_fit.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::viz {

void draw_head(Canvas& canvas, double picture_height, const std::string& title, const std::string& subtitle) {
  const double width = picture_width - 2.0 * sheet::margin;
  const auto large = fitted(canvas, title, {.size = letter::title, .upright = Upright::top, .bold = true}, width);
  const auto usual = fitted(canvas, subtitle, {.colour = ink::quiet_text, .upright = Upright::top}, width);
  canvas.text({sheet::margin, picture_height - 32.0}, title, large);
  canvas.text({sheet::margin, picture_height - 94.0}, subtitle, usual);
}

void draw_caution(Canvas& canvas) {
  canvas.text({sheet::margin, 20.0},
              "Calculated from simplified geometry. Not a medical device; the licensed surgeon decides.",
              {.size = letter::small, .colour = ink::quiet_text});
}

ColourRange colour_range(double largest) {
  if (!(largest > 0.0)) return {};
  const double step = round_step(largest, 8);
  return {step * std::ceil(largest / step * (1.0 - 1e-9)), step};
}

void draw_colour_legend(Canvas& canvas, double top, const ColourRange& range, const std::optional<ScaleMark>& mark,
                        const std::string& quantity) {
  constexpr double bar_height = 36.0;
  constexpr int strips = 256;
  const Rect bar{400.0, top - 44.0 - bar_height, picture_width - 400.0, top - 44.0};
  canvas.text({bar.left, top}, quantity, fitted(canvas, quantity, {.upright = Upright::top}, bar.width()));
  for (int k = 0; k < strips; ++k) {
    const double left = bar.left + bar.width() * k / strips;
    canvas.fill({left, bar.bottom, bar.right, bar.top},  // over the former one, so that no seam shows
                scale_colour(static_cast<double>(k) / (strips - 1)));
  }
  const auto place = [&](double value) {
    return bar.left + bar.width() * (value - range.low) / (range.high - range.low);
  };
  for (const double tick : ticks_within(range.low, range.high, range.step)) {
    canvas.line({place(tick), bar.bottom - 10.0}, {place(tick), bar.bottom}, {.width = 2.0});
    canvas.text({place(tick), bar.bottom - 14.0}, tick_text(tick, range.step),
                {.size = letter::small, .across = Across::centre, .upright = Upright::top});
  }
  if (!mark) return;
  const double x = place(std::min(mark->value, range.high));
  canvas.polygon({{x, bar.top + 2.0}, {x + 11.0, bar.top + 20.0}, {x - 11.0, bar.top + 20.0}}, ink::text);
  // Beside the quantity's name, which stands at the left.
  const double half = 0.5 * canvas.text_size(mark->name, {.size = letter::small}).x();
  const double least = bar.left + canvas.text_size(quantity).x() + 30.0 + half;
  canvas.text({kept_between(x, std::min(least, bar.right), bar.right + 300.0 - half), bar.top + 22.0}, mark->name,
              {.size = letter::small, .across = Across::centre});
}

void draw_length_bar(Canvas& canvas, const Pixel& centre, double pixels_per_mm, double wanted,
                     const std::string& remark) {
  const double length = round_below(wanted / pixels_per_mm);
  const double half = 0.5 * length * pixels_per_mm;
  const Pixel left = centre - Pixel(half, 0.0), right = centre + Pixel(half, 0.0), tick(0.0, 9.0);
  canvas.line(left, right, {.width = 4.0});
  canvas.line(left - tick, left + tick, {.width = 4.0});
  canvas.line(right - tick, right + tick, {.width = 4.0});
  canvas.text(centre + Pixel(0.0, 12.0), fmt::format("{} mm{}", tick_text(length, length), remark),
              {.size = letter::small, .across = Across::centre});
}

void draw_bone_directions(Canvas& canvas, double y) {
  const auto arrow = [&](const Pixel& tip, double direction) {
    const Pixel back(-26.0 * direction, 0.0), side(0.0, 11.0);
    canvas.polygon({tip, tip + back + side, tip + back - side}, ink::text);
  };
  arrow({sheet::margin, y}, -1.0);
  canvas.text({sheet::margin + 38.0, y}, "proximal", {.upright = Upright::centre});
  arrow({picture_width - sheet::margin, y}, 1.0);
  canvas.text({picture_width - sheet::margin - 38.0, y}, "distal",
              {.across = Across::right, .upright = Upright::centre});
}

namespace {

Rect box_of(Canvas& canvas, const Label& label) {
  const double half_width = 0.5 * canvas.text_size(label.text, label.style).x(),
               half_height = 0.5 * label.style.size;
  return {label.place.x() - half_width, label.place.y() - half_height, label.place.x() + half_width,
          label.place.y() + half_height};
}

}  // namespace

std::vector<Label> moved_apart(Canvas& canvas, std::vector<Label> labels, double row) {
  constexpr double clearance = 12.0;
  std::sort(labels.begin(), labels.end(),
            [](const Label& a, const Label& b) { return a.place.x() < b.place.x(); });
  std::vector<Rect> taken;
  for (auto& label : labels) {
    label.style.across = Across::centre;
    label.style.upright = Upright::centre;
    const double half_width = 0.5 * box_of(canvas, label).width();
    label.place.x() = kept_between(label.place.x(), half_width + 8.0, picture_width - half_width - 8.0);
    const auto touches = [&](const Rect& other) {
      const Rect own = box_of(canvas, label);
      return own.left < other.right + clearance && other.left < own.right + clearance && own.bottom < other.top &&
             other.bottom < own.top;
    };
    while (std::any_of(taken.begin(), taken.end(), touches)) label.place.y() += row;
    taken.push_back(box_of(canvas, label));
  }
  return labels;
}

void draw_labels(Canvas& canvas, const std::vector<Label>& labels, double row) {
  const auto placed = moved_apart(canvas, labels, row);
  for (const auto& label : placed) {
    const double end = label.place.y() - std::copysign(0.5 * label.style.size + 2.0, row);
    canvas.line(label.subject, {label.place.x(), end}, {.colour = ink::leader, .width = 2.0});
  }
  for (const auto& label : placed) {
    if (label.on_white) canvas.fill(box_of(canvas, label), ink::white);
    canvas.text(label.place, label.text, label.style);
  }
}

}  // namespace gapstrain::viz
