// What a picture says of a result it says in every picture alike.
#include "tests/viz/picture_file.h"
#include "viz/study/study_pictures.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gapstrain::viz;
using gapstrain::tests::display;
using gapstrain::tests::drawn;
using gapstrain::tests::ink_of;
using gapstrain::tests::PictureFile;
namespace fs = std::filesystem;

TEST_CASE("a logarithmic axis keeps to the decades round the value that decides", "[viz][study]") {
  // One decade of damage a week, from 1e-9: it comes above a thousandth after six of ten weeks.
  std::vector<double> weeks, damage;
  for (int week = 0; week <= 10; ++week) {
    weeks.push_back(week);
    damage.push_back(std::pow(10.0, week - 9));
  }
  const auto draw = [&](std::optional<double> decisive) {
    CurveChart chart{
        {"Race", ""}, {"weeks"}, {{{"damage", true, decisive}, {{"plate", weeks, damage, {}, {}}}, {}}}};
    return drawn([&](const fs::path& png) { draw_curves(display(), chart, png); });
  };
  const auto whole = draw(std::nullopt), cut = draw(1.0);
  CHECK(cut.has_white_border(8));
  CHECK(ink_of(cut, 0) < 0.7 * ink_of(whole, 0));
  CHECK(ink_of(cut, 0) > 0.3 * ink_of(whole, 0));
}

TEST_CASE("dots within and outside the limits have the colours of what holds and what fails", "[viz][study]") {
  ScatterChart chart{{"Layouts", ""}, {"x"}, {"y"}, {}, {}, {}, {}, {}};
  chart.clouds = {{"outside the limits", {1.0, 2.0}, {3.0, 4.0}, Meaning::fails},
                  {"within the limits", {3.0, 4.0}, {1.0, 2.0}, Meaning::holds}};
  const auto picture = drawn([&](const fs::path& png) { draw_scatter(display(), chart, png); });
  CHECK(picture.share_near(colour_of(Meaning::holds), 0.3) > 1e-4);
  CHECK(picture.share_near(colour_of(Meaning::fails), 0.3) > 1e-4);
  for (std::size_t colour = 0; colour < curve_colours.size(); ++colour) CHECK(ink_of(picture, colour) == 0.0);
}
