#include "viz/study/study_sheet.h"

#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace gapstrain::viz {

namespace {

// Without most of what lies beyond the values up to the next tick, when that is much.
Axis trimmed(const Axis& axis, double low, double high) {
  constexpr double much = 0.05, kept = 0.02;  // shares of the axis
  Axis shorter = axis;
  const double from = axis.share(low), to = axis.share(high);
  const auto value = [&](double share) {
    return axis.logarithmic ? axis.low * std::pow(axis.high / axis.low, share)
                            : axis.low + share * (axis.high - axis.low);
  };
  if (from > much && axis.low != 0.0) shorter.low = value(from - kept);
  if (to < 1.0 - much && axis.high != 0.0) shorter.high = value(to + kept);
  return to > from && shorter.ticks().size() > 2 ? shorter : axis;
}

}  // namespace

bool Range::takes(double value) const { return std::isfinite(value) && (!logarithmic || value > 0.0); }

void Range::add(double value) {
  if (!takes(value)) {
    ++left_out;
    return;
  }
  low = empty ? value : std::min(low, value);
  high = empty ? value : std::max(high, value);
  empty = false;
}

void Range::add(const std::vector<double>& values) {
  for (const double value : values) add(value);
}

void Range::add_limits(const std::vector<Limit>& limits) {
  // Not farther than the values' largest size, on a logarithmic axis than a decade.
  const double reach = std::max(std::abs(low), std::abs(high));
  const auto near = [&](double end) {
    if (empty) return true;
    return logarithmic ? 10.0 * end > low && end < 10.0 * high : end > low - reach && end < high + reach;
  };
  Range wider = *this;
  for (const auto& limit : limits)
    for (const double end : {limit.low, limit.high})
      if (std::isfinite(end) && near(end)) wider.add(end);
  wider.left_out = left_out;
  *this = wider;
}

Axis Range::axis(int parts, double room) const {
  if (empty) return logarithmic ? Axis{1.0, 10.0, 0.5, true} : Axis{0.0, 1.0, 0.5};
  if (logarithmic) {
    const double factor = std::pow(high / low, room);
    return trimmed(logarithmic_axis(low / factor, high * factor, parts), low, high);
  }
  const double more = room * (high - low);
  const double least = low >= 0.0 ? std::max(low - more, 0.0) : low - more;
  const double most = high <= 0.0 ? std::min(high + more, 0.0) : high + more;
  return trimmed(close_axis(least, most, parts), least, most);
}

Axis Range::tight_axis(int parts) const {
  if (empty || logarithmic) return axis(parts);
  return trimmed(close_axis(low, high, parts, 0.0), low, high);
}

void check_same_length(std::size_t one, std::size_t other, const std::string& what) {
  if (one != other) throw std::invalid_argument(fmt::format("{} differ in length: {} and {}", what, one, other));
}

double numbers_room(Canvas& canvas, const Axis& y) {
  double widest = 0.0;
  for (const double tick : y.ticks())
    widest = std::max(widest, canvas.text_size(y.text(tick), {.size = letter::small}).x());
  return sheet::margin + std::max(widest, 40.0) + 20.0;
}

std::string first_of(std::size_t shown, std::size_t all, const std::string& what) {
  return all > shown ? fmt::format("First {} of {} {}", shown, all, what) : "";
}

std::string left_out_remark(std::size_t count, const std::string& what) {
  return count > 0 ? fmt::format("{} {}{} without a value left out", count, what, count > 1 ? "s" : "") : "";
}

std::string with_remarks(std::string subtitle, const std::vector<std::string>& remarks) {
  for (const auto& remark : remarks) {
    if (remark.empty()) continue;
    if (!subtitle.empty()) subtitle += ". ";
    subtitle += remark;
  }
  return subtitle;
}

namespace {

constexpr double after_sample = 16.0, between_entries = 60.0;

double width_of(Sample sample) { return sample == Sample::none ? 0.0 : sample == Sample::dot ? 26.0 : 90.0; }

// Left ends of the entries, y downward from the legend's top.
std::vector<Pixel> legend_places(Canvas& canvas, const std::vector<LegendEntry>& entries) {
  std::vector<Pixel> places;
  Pixel next(sheet::margin, -0.5 * sheet::legend_row);
  for (const auto& entry : entries) {
    const double width = width_of(entry.sample) + after_sample + canvas.text_size(entry.text).x();
    if (next.x() > sheet::margin && next.x() + width > picture_width - sheet::margin)
      next = {sheet::margin, next.y() - sheet::legend_row};
    places.push_back(next);
    next.x() += width + between_entries;
  }
  return places;
}

}  // namespace

double legend_height(Canvas& canvas, const std::vector<LegendEntry>& entries) {
  return entries.empty() ? 0.0 : 0.5 * sheet::legend_row - legend_places(canvas, entries).back().y();
}

void draw_legend(Canvas& canvas, double top, const std::vector<LegendEntry>& entries) {
  const auto places = legend_places(canvas, entries);
  for (std::size_t e = 0; e < entries.size(); ++e) {
    const auto& [text, style, sample] = entries[e];
    const Pixel left = places[e] + Pixel(0.0, top), middle_place = left + Pixel(0.5 * width_of(sample), 0.0);
    if (sample == Sample::curve) draw_sample(canvas, left, width_of(sample), style);
    if (sample == Sample::dot) canvas.marker(middle_place, style.marker, 11.0, style.colour, style.hollow);
    if (sample == Sample::bar)
      draw_bar(canvas, {left.x(), left.y() - 15.0, left.x() + width_of(sample), left.y() + 15.0}, style);
    const double x = left.x() + width_of(sample) + after_sample;
    canvas.text({x, left.y()}, shortened(canvas, text, {}, picture_width - sheet::margin - x),
                {.upright = Upright::centre});
  }
}

void draw_bar(Canvas& canvas, const Rect& bar, const CurveStyle& style) {
  Rect ordered{std::min(bar.left, bar.right), bar.bottom, std::max(bar.left, bar.right), bar.top};
  canvas.fill(ordered, style.colour);
  constexpr double frame = 4.0;
  if (!style.hollow || ordered.width() <= 2.0 * frame) return;
  canvas.fill({ordered.left + frame, ordered.bottom + frame, ordered.right - frame, ordered.top - frame},
              ink::white);
}

void draw_interval(Canvas& canvas, const Pixel& from, const Pixel& to, double half_tick) {
  if (!from.allFinite() || !to.allFinite()) return;
  const LineStyle style{.colour = ink::text, .width = 4.0};
  const Pixel along = to - from;
  const Pixel tick =
      along.norm() > 0.0 ? Pixel(half_tick * Pixel(-along.y(), along.x()).normalized()) : Pixel(0.0, 0.0);
  canvas.line(from, to, style);
  canvas.line(from - tick, from + tick, style);
  canvas.line(to - tick, to + tick, style);
}

void draw_nothing(Canvas& canvas, const Rect& area) {
  const std::string text = "There is nothing to draw: no values.";
  const TextStyle style{.across = Across::centre, .upright = Upright::centre, .bold = true};
  const Pixel half = 0.5 * canvas.text_size(text, style) + Pixel(12.0, 8.0);
  const Pixel low = area.centre() - half, high = area.centre() + half;
  canvas.fill({low.x(), low.y(), high.x(), high.y()}, ink::white);
  canvas.text(area.centre(), text, style);
}

}  // namespace gapstrain::viz
