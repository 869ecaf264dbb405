#include "viz/canvas.h"

#include <vtkBrush.h>
#include <vtkContext2D.h>
#include <vtkPen.h>
#include <vtkRenderingCoreEnums.h>
#include <vtkTextProperty.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain::viz {

namespace {

float single(double value) { return static_cast<float>(value); }

std::vector<Pixel> regular_polygon(const Pixel& centre, double radius, int corners, double first_angle) {
  std::vector<Pixel> points;
  for (int k = 0; k < corners; ++k) {
    const double angle = first_angle + 2.0 * std::numbers::pi * k / corners;
    points.push_back(centre + radius * Pixel(std::cos(angle), std::sin(angle)));
  }
  return points;
}

// Drawn and skipped lengths in turn. VTK's own line patterns start anew at every point of a polyline.
std::vector<std::vector<Pixel>> dashes(const std::vector<Pixel>& points, double drawn, double skipped) {
  std::vector<std::vector<Pixel>> pieces;
  bool drawing = true;
  double left = drawn;
  std::vector<Pixel> piece{points.front()};
  for (std::size_t i = 1; i < points.size(); ++i) {
    Pixel from = points[i - 1];
    double length = (points[i] - from).norm();
    while (length > left) {
      const Pixel at = from + (points[i] - from) * (left / length);
      if (drawing) {
        piece.push_back(at);
        pieces.push_back(piece);
      }
      piece.assign(1, at);
      length -= left;
      from = at;
      drawing = !drawing;
      left = drawing ? drawn : skipped;
    }
    left -= length;
    if (drawing) piece.push_back(points[i]);
  }
  if (drawing && piece.size() > 1) pieces.push_back(piece);
  return pieces;
}

}  // namespace

std::vector<float> Canvas::in_context(const std::vector<Pixel>& points) const {
  std::vector<float> flat;
  for (const auto& point : points)
    flat.insert(flat.end(), {single(scale_ * point.x()), single(scale_ * point.y())});
  return flat;
}

void Canvas::use_text(const TextStyle& style) {
  vtkTextProperty* property = context_.GetTextProp();
  property->SetFontFamilyToArial();
  property->SetFontSize(static_cast<int>(std::lround(scale_ * style.size)));
  property->SetBold(style.bold);
  property->SetColor(style.colour.red, style.colour.green, style.colour.blue);
  property->SetOpacity(style.colour.opacity);
  property->SetJustificationToLeft();
  property->SetVerticalJustificationToBottom();
}

void Canvas::use_line(const LineStyle& style) {
  context_.GetPen()->SetLineType(vtkPen::SOLID_LINE);
  context_.GetPen()->SetWidth(single(scale_ * style.width));
  context_.GetPen()->SetColorF(style.colour.red, style.colour.green, style.colour.blue, style.colour.opacity);
}

void Canvas::text(const Pixel& place, const std::string& text, const TextStyle& style) {
  if (text.empty()) return;
  const Eigen::Vector2d size = text_size(text, style);
  const auto part_before = [](auto alignment) { return 0.5 * static_cast<double>(alignment); };
  const Pixel corner = place - size.cwiseProduct(Pixel(part_before(style.across), part_before(style.upright)));
  // On whole pixels letters are sharp; between them VTK would also wrap a faint row of the text round to its far
  // side.
  context_.DrawString(std::round(single(scale_ * corner.x())), std::round(single(scale_ * corner.y())),
                      text.c_str());
}

Eigen::Vector2d Canvas::text_size(const std::string& text, const TextStyle& style) {
  use_text(style);
  float bounds[4];
  context_.ComputeStringBounds(text.c_str(), bounds);
  return Eigen::Vector2d(bounds[2], bounds[3]) / scale_;
}

void Canvas::line(const Pixel& from, const Pixel& to, const LineStyle& style) { polyline({from, to}, style); }

void Canvas::polyline(const std::vector<Pixel>& points, const LineStyle& style) {
  if (points.size() < 2) return;
  use_line(style);
  const auto draw = [&](const std::vector<Pixel>& piece) {
    auto flat = in_context(piece);
    context_.DrawPoly(flat.data(), static_cast<int>(piece.size()));
  };
  if (style.dash == Dash::solid) {
    draw(points);
    // VTK leaves wedges open where wide pieces meet.
    if (style.width > 2.0)
      for (std::size_t i = 1; i + 1 < points.size(); ++i) disc(points[i], 0.5 * style.width, style.colour);
    return;
  }
  const bool dashed = style.dash == Dash::dashed;
  for (const auto& piece : dashes(points, style.width * (dashed ? 5.0 : 1.4), style.width * (dashed ? 3.0 : 2.0)))
    draw(piece);
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

void Canvas::polygon(const std::vector<Pixel>& convex, const Colour& colour) {
  context_.GetPen()->SetLineType(vtkPen::NO_PEN);
  context_.GetBrush()->SetColorF(colour.red, colour.green, colour.blue, colour.opacity);
  auto flat = in_context(convex);
  context_.DrawPolygon(flat.data(), static_cast<int>(convex.size()));
}

void Canvas::disc(const Pixel& centre, double radius, const Colour& colour) {
  polygon(regular_polygon(centre, radius, std::clamp(static_cast<int>(radius * 3.0), 8, 72), 0.0), colour);
}

void Canvas::dots(const std::vector<Pixel>& centres, double radius, const Colour& colour) {
  if (centres.empty()) return;
  use_line({.colour = colour, .width = 2.0 * radius});
  auto flat = in_context(centres);
  context_.DrawMarkers(VTK_MARKER_CIRCLE, false, flat.data(), static_cast<int>(centres.size()));
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
