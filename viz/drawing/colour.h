// Colours of the pictures, and the scale that turns a stress into one.
#pragma once

#include <array>

namespace gapstrain::viz {

struct Colour {
  double red = 0.0, green = 0.0, blue = 0.0;  // sRGB, 0 to 1
  double opacity = 1.0;
};

// Relative luminance of an sRGB colour, 0 to 1. IEC 61966-2-1 with the weights of ITU-R BT.709.
double luminance(const Colour& colour);

// Colour at a share of the scale, 0 to 1; beyond, the scale's end. Lightness rises evenly with the share, so the
// order survives any colour blindness and a black-and-white print. Control points of viridis (S. van der Walt and
// N. Smith 2015, released under CC0), linear between.
Colour scale_colour(double share);

namespace ink {
inline constexpr Colour white{1.0, 1.0, 1.0};
inline constexpr Colour text{0.13, 0.13, 0.15};
inline constexpr Colour quiet_text{0.38, 0.39, 0.42};
inline constexpr Colour leader{0.62, 0.63, 0.66};
inline constexpr Colour grid{0.80, 0.81, 0.83};
inline constexpr Colour bone{0.87, 0.85, 0.79};
inline constexpr Colour metal{0.70, 0.72, 0.75};
}  // namespace ink

// What is said of a result. Only then do green and vermillion appear, the same in every picture, and never without
// the word; Okabe & Ito, Color Universal Design, 2008: bluish green and vermillion stay apart for colour-blind
// readers.
enum class Meaning { holds, fails, not_trusted };
constexpr Colour colour_of(Meaning meaning) {
  switch (meaning) {
    case Meaning::holds:
      return {0.0, 158.0 / 255, 115.0 / 255};
    case Meaning::fails:
      return {213.0 / 255, 94.0 / 255, 0.0};
    case Meaning::not_trusted:
      break;
  }
  return {0.55, 0.56, 0.58};
}

// Colours of curves, which say only which one it is. They stay apart for colour-blind readers and in black and
// white. Okabe & Ito 2008: blue, reddish purple, sky blue; the third is the indigo of P. Tol, Colour schemes, SRON
// 2021.
inline constexpr std::array<Colour, 4> curve_colours{{{0.0, 114.0 / 255, 178.0 / 255},
                                                      {204.0 / 255, 121.0 / 255, 167.0 / 255},
                                                      {51.0 / 255, 34.0 / 255, 136.0 / 255},
                                                      {86.0 / 255, 180.0 / 255, 233.0 / 255}}};

}  // namespace gapstrain::viz
