#include "viz/drawing/colour.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::viz {

namespace {

// Every ninth part of the scale.
constexpr std::array<std::array<int, 3>, 10> viridis{{{0x44, 0x01, 0x54},
                                                      {0x48, 0x28, 0x78},
                                                      {0x3e, 0x49, 0x89},
                                                      {0x31, 0x68, 0x8e},
                                                      {0x26, 0x82, 0x8e},
                                                      {0x1f, 0x9e, 0x89},
                                                      {0x35, 0xb7, 0x79},
                                                      {0x6e, 0xce, 0x58},
                                                      {0xb5, 0xde, 0x2b},
                                                      {0xfd, 0xe7, 0x25}}};

double linear_light(double channel) {
  return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

}  // namespace

double luminance(const Colour& colour) {
  return 0.2126 * linear_light(colour.red) + 0.7152 * linear_light(colour.green) +
         0.0722 * linear_light(colour.blue);
}

Colour scale_colour(double share) {
  const double place = std::clamp(share, 0.0, 1.0) * static_cast<double>(viridis.size() - 1);
  const auto below = std::min(static_cast<std::size_t>(place), viridis.size() - 2);
  const double part = place - static_cast<double>(below);
  const auto channel = [&](std::size_t c) {
    return (viridis[below][c] * (1.0 - part) + viridis[below + 1][c] * part) / 255.0;
  };
  return {channel(0), channel(1), channel(2), 1.0};
}

}  // namespace gapstrain::viz
