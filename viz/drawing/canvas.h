// Drawing in the plane: lines, shapes and text in pixels, origin at the lower left.
#pragma once

#include "viz/drawing/colour.h"

#include <Eigen/Core>

#include <string>
#include <vector>

struct _cairo;

namespace gapstrain::viz {

using Pixel = Eigen::Vector2d;

struct Rect {
  double left = 0.0, bottom = 0.0, right = 0.0, top = 0.0;
  double width() const { return right - left; }
  double height() const { return top - bottom; }
  Pixel centre() const { return {0.5 * (left + right), 0.5 * (bottom + top)}; }
};

// Heights of letters in pixels. Over A5's width of 210 mm a picture of 2000 pixels prints 34 pixels as 10 points.
namespace letter {
inline constexpr int title = 46;
inline constexpr int body = 34;
inline constexpr int small = 28;
}  // namespace letter

// Which part of the text lies at the given place; in steps of half its size.
enum class Across { left, centre, right };
enum class Upright { bottom, centre, top };

struct TextStyle {
  int size = letter::body;
  Colour colour = ink::text;
  Across across = Across::left;
  Upright upright = Upright::bottom;
  bool bold = false;
};

enum class Dash { solid, dashed, dotted };
enum class Marker { none, circle, square, triangle, diamond };

struct LineStyle {
  Colour colour = ink::text;
  double width = 3.0;
  Dash dash = Dash::solid;
};

class Canvas {
 public:
  // The context's y runs downward from the picture's upper edge, `height` above the origin here.
  Canvas(_cairo& context, double height);

  void text(const Pixel& place, const std::string& text, const TextStyle& style = {});
  Eigen::Vector2d text_size(const std::string& text, const TextStyle& style = {});  // width, height

  void line(const Pixel& from, const Pixel& to, const LineStyle& style = {});
  void polyline(const std::vector<Pixel>& points, const LineStyle& style);
  void fill(const Rect& rect, const Colour& colour);
  void frame(const Rect& rect, const LineStyle& style);
  void polygon(const std::vector<Pixel>& corners, const Colour& colour);
  void disc(const Pixel& centre, double radius, const Colour& colour);
  // Many small round dots at once; translucent ones grow darker where they lie on each other.
  void dots(const std::vector<Pixel>& centres, double radius, const Colour& colour);
  void ring(const Pixel& centre, double radius, const LineStyle& style);
  void marker(const Pixel& centre, Marker marker, double radius, const Colour& colour, bool hollow);

 private:
  void use_font(const TextStyle& style);
  void use_colour(const Colour& colour);
  void trace(const std::vector<Pixel>& points);

  _cairo& context_;
  double height_;
};

}  // namespace gapstrain::viz
