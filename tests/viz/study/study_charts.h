// Charts of studies for tests, and how they are drawn and looked at.
#pragma once

#include "tests/viz/picture_file.h"
#include "viz/study/study_pictures.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace gapstrain::tests {

using namespace viz;  // NOLINT: this file is nothing but charts
namespace fs = std::filesystem;

inline constexpr int head_rows = 140;  // title and subtitle

inline PictureFile scatter(const ScatterChart& chart) {
  return drawn([&](const fs::path& png) { draw_scatter(display(), chart, png); });
}
inline PictureFile curves(const CurveChart& chart) {
  return drawn([&](const fs::path& png) { draw_curves(display(), chart, png); });
}
inline PictureFile map(const MapChart& chart) {
  return drawn([&](const fs::path& png) { draw_map(display(), chart, png); });
}
inline PictureFile swings(const SwingChart& chart) {
  return drawn([&](const fs::path& png) { draw_swings(display(), chart, png); });
}
inline PictureFile bars(const BarChart& chart) {
  return drawn([&](const fs::path& png) { draw_bars(display(), chart, png); });
}
inline PictureFile histogram(const HistogramChart& chart) {
  return drawn([&](const fs::path& png) { draw_histogram(display(), chart, png); });
}
inline PictureFile effects(const EffectsChart& chart) {
  return drawn([&](const fs::path& png) { draw_effects(display(), chart, png); });
}

inline void check_whole(const PictureFile& picture) {
  CHECK(picture.width == 2000);
  CHECK(picture.has_white_border(8));
  CHECK(picture.share_not_white() > 0.005);  // a frame and words at least
}

inline void check_says_nothing(const PictureFile& picture) {
  check_whole(picture);
  CHECK(picture.says("There is nothing to draw: no values."));
}

inline bool same_below_head(const PictureFile& one, const PictureFile& other) {
  if (one.height != other.height) return false;
  const auto end = static_cast<std::ptrdiff_t>(one.height - head_rows) * one.width;
  return std::equal(one.pixels.begin(), one.pixels.begin() + end, other.pixels.begin());
}

inline const std::string long_name =
    "a name so long that it would run out of every picture, were it not broken into lines or shortened, whatever "
    "the width of the letters and the place where it stands";

inline std::vector<double> even(double from, double to, std::size_t count) {
  std::vector<double> values;
  for (std::size_t i = 0; i < count; ++i)
    values.push_back(from + (to - from) * static_cast<double>(i) / static_cast<double>(count - 1));
  return values;
}

inline ScatterChart some_layouts() {
  ScatterChart chart;
  chart.words = {"Layouts", "Every fifth"};
  chart.x = {"working length, mm"};
  chart.y = {"largest stress, MPa"};
  chart.clouds = {{"layouts", {20.0, 60.0, 95.0, 130.0}, {210.0, 260.0, 500.0, 610.0}}};
  return chart;
}

inline CurveChart some_curves(std::size_t count) {
  CurveChart chart;
  chart.x = {"working length, mm"};
  chart.panels = {{{"largest stress, MPa"}, {}, {}}};
  for (std::size_t c = 0; c < count; ++c) {
    const double share = static_cast<double>(c) / static_cast<double>(std::max<std::size_t>(count, 1));
    chart.panels[0].curves.push_back({"gap " + std::to_string(c),
                                      even(10.0, 130.0, 25),
                                      even(100.0 + 500.0 * share, 130.0 + 500.0 * share, 25),
                                      {},
                                      {}});
  }
  return chart;
}

inline EffectsChart some_effects(const std::vector<double>& sizes) {
  EffectsChart chart;
  chart.y = {"largest stress, MPa"};
  chart.mean = 400.0;
  for (const double size : sizes)
    chart.factors.push_back({"factor of " + std::to_string(size),
                             {{"low", {400.0 - size, 390.0 - size, 410.0 - size}},
                              {"high", {400.0 + size, 390.0 + size, 410.0 + size}}}});
  return chart;
}

}  // namespace gapstrain::tests
