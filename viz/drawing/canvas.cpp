#include "viz/drawing/canvas.h"

#include <cairo.h>
#include <boost/locale/encoding_utf.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain::viz {

namespace {

// Liberation Sans has Arial's widths; Fontconfig finds the nearest where it is missing.
constexpr const char* font_family = "Liberation Sans";
// Of the letters' size: how far capitals and letters with a foot reach from the line.
constexpr double above_line = 0.73, below_line = 0.215;

std::vector<Pixel> regular_polygon(const Pixel& centre, double radius, int corners, double first_angle) {
  std::vector<Pixel> points;
  for (int k = 0; k < corners; ++k) {
    const double angle = first_angle + 2.0 * std::numbers::pi * k / corners;
    points.push_back(centre + radius * Pixel(std::cos(angle), std::sin(angle)));
  }
  return points;
}

// A context that meets other bytes than UTF-8 draws nothing any more.
std::string valid_utf8(const std::string& text) { return boost::locale::conv::utf_to_utf<char>(text); }

}  // namespace

Canvas::Canvas(_cairo& context, double height) : context_(context), height_(height) {
  cairo_set_line_join(&context_, CAIRO_LINE_JOIN_ROUND);
  // Letters keep their widths at any scale, so that what fits in one format fits in all.
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  cairo_set_font_options(&context_, options);
  cairo_font_options_destroy(options);
}

void Canvas::use_font(const TextStyle& style) {
  cairo_select_font_face(&context_, font_family, CAIRO_FONT_SLANT_NORMAL,
                         style.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size(&context_, style.size);
}

void Canvas::use_colour(const Colour& colour) {
  cairo_set_source_rgba(&context_, colour.red, colour.green, colour.blue, colour.opacity);
}

void Canvas::trace(const std::vector<Pixel>& points) {
  cairo_new_path(&context_);
  for (const auto& point : points) cairo_line_to(&context_, point.x(), height_ - point.y());
}

void Canvas::text(const Pixel& place, const std::string& text, const TextStyle& style) {
  if (text.empty()) return;
  const Eigen::Vector2d size = text_size(text, style);
  const auto part_before = [](auto alignment) { return 0.5 * static_cast<double>(alignment); };
  const Pixel corner = place - size.cwiseProduct(Pixel(part_before(style.across), part_before(style.upright)));
  use_colour(style.colour);
  cairo_move_to(&context_, corner.x(), height_ - corner.y() - below_line * style.size);
  cairo_show_text(&context_, valid_utf8(text).c_str());
}

Eigen::Vector2d Canvas::text_size(const std::string& text, const TextStyle& style) {
  use_font(style);
  cairo_text_extents_t extents;
  cairo_text_extents(&context_, valid_utf8(text).c_str(), &extents);
  return {extents.x_advance, (above_line + below_line) * style.size};
}

void Canvas::line(const Pixel& from, const Pixel& to, const LineStyle& style) { polyline({from, to}, style); }

void Canvas::polyline(const std::vector<Pixel>& points, const LineStyle& style) {
  if (points.size() < 2) return;
  const bool dashed = style.dash == Dash::dashed;
  const double pattern[2] = {style.width * (dashed ? 5.0 : 1.4), style.width * (dashed ? 3.0 : 2.0)};
  cairo_set_dash(&context_, pattern, style.dash == Dash::solid ? 0 : 2, 0.0);
  cairo_set_line_width(&context_, style.width);
  use_colour(style.colour);
  trace(points);
  cairo_stroke(&context_);
}

void Canvas::fill(const Rect& rect, const Colour& colour) {
  polygon({{rect.left, rect.bottom}, {rect.right, rect.bottom}, {rect.right, rect.top}, {rect.left, rect.top}},
          colour);
}

void Canvas::frame(const Rect& rect, const LineStyle& style) {
  const double half = 0.5 * style.width;
  line({rect.left - half, rect.bottom}, {rect.right + half, rect.bottom}, style);
  line({rect.left - half, rect.top}, {rect.right + half, rect.top}, style);
  line({rect.left, rect.bottom}, {rect.left, rect.top}, style);
  line({rect.right, rect.bottom}, {rect.right, rect.top}, style);
}

void Canvas::polygon(const std::vector<Pixel>& corners, const Colour& colour) {
  use_colour(colour);
  trace(corners);
  cairo_fill(&context_);
}

void Canvas::disc(const Pixel& centre, double radius, const Colour& colour) {
  use_colour(colour);
  cairo_new_path(&context_);
  cairo_arc(&context_, centre.x(), height_ - centre.y(), radius, 0.0, 2.0 * std::numbers::pi);
  cairo_fill(&context_);
}

void Canvas::dots(const std::vector<Pixel>& centres, double radius, const Colour& colour) {
  for (const auto& centre : centres) disc(centre, radius, colour);
}

void Canvas::ring(const Pixel& centre, double radius, const LineStyle& style) {
  auto points = regular_polygon(centre, radius, std::clamp(static_cast<int>(radius * 3.0), 8, 72), 0.0);
  points.push_back(points.front());
  polyline(points, style);
}

void Canvas::marker(const Pixel& centre, Marker marker, double radius, const Colour& colour, bool hollow) {
  const auto shape = [&](double r) {
    switch (marker) {
      case Marker::square:
        return regular_polygon(centre, 1.2 * r, 4, std::numbers::pi / 4.0);
      case Marker::diamond:
        return regular_polygon(centre, 1.3 * r, 4, 0.0);
      case Marker::triangle:
        return regular_polygon(centre, 1.3 * r, 3, std::numbers::pi / 2.0);
      default:
        return regular_polygon(centre, r, 24, 0.0);
    }
  };
  if (marker == Marker::none) return;
  polygon(shape(radius), colour);
  if (hollow) polygon(shape(0.58 * radius), ink::white);
}

}  // namespace gapstrain::viz
