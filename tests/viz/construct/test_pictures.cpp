#include "viz/construct/pictures.h"

#include "tests/viz/picture_file.h"
#include "tests/viz/sample.h"
#include "tests/viz/sample_steps.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>

using namespace gapstrain;
namespace fs = std::filesystem;

namespace {

using tests::display;
using tests::drawn;

// Near the colour only, since a scene is shaded a little.
}  // namespace

TEST_CASE("the construct is drawn over the picture's width in the scale's colours", "[viz][pictures]") {
  const auto fields = tests::sample_fields();
  const auto picture = drawn([&](const fs::path& png) {
    viz::draw_construct(display(), fields, tests::sample_load_findings(fields), png);
  });
  CHECK(picture.width == 2000);
  CHECK(picture.height > 700);
  CHECK(picture.height < 1500);
  CHECK(picture.share_not_white() > 0.15);
  CHECK(picture.share_not_white() < 0.60);
  for (const double value : {0.1, 0.2, 0.4, 0.5}) CHECK(tests::scale_share(picture, value) > 5e-4);
  CHECK(tests::scale_share(picture, 0.9) > 1e-5);  // the peak itself is a small spot
  CHECK(picture.has_white_border(8));
}

TEST_CASE("a larger load of the same shape looks the same but for its numbers", "[viz][pictures]") {
  // The shown deformation and the colour scale follow the largest values, so only text may differ.
  const auto once = tests::sample_fields();
  auto tenfold = once;
  for (auto& shell : tenfold.shells) {
    for (auto* moved : {&shell.displacements, &shell.rotations}) *moved *= 10.0;
    for (auto* stress : {&shell.von_mises_top, &shell.von_mises_middle, &shell.von_mises_bottom}) *stress *= 10.0;
  }
  for (auto& screw : tenfold.screws) {
    for (auto& moved : screw.displacements) moved *= 10.0;
    for (auto& stress : screw.stress) stress *= 10.0;
  }
  const auto draw = [&](const models::LoadFields& fields) {
    return drawn([&](const fs::path& png) {
      viz::draw_construct(display(), fields, tests::sample_load_findings(once), png);
    });
  };
  const auto first = draw(once), second = draw(tenfold);
  REQUIRE(first.height == second.height);
  std::size_t differing = 0;
  for (std::size_t i = 0; i < first.pixels.size(); ++i) differing += first.pixels[i] != second.pixels[i] ? 1 : 0;
  CHECK(first.says("; largest displacement "));
  CHECK(first.words != second.words);
  CHECK(static_cast<double>(differing) / static_cast<double>(first.pixels.size()) < 0.02);
}

TEST_CASE("a construct without load is drawn too, all at the scale's lowest colour", "[viz][pictures]") {
  auto fields = tests::sample_fields();
  for (auto& shell : fields.shells) {
    shell.displacements.setZero();
    shell.rotations.setZero();
    for (auto* stress : {&shell.von_mises_top, &shell.von_mises_middle, &shell.von_mises_bottom})
      stress->setZero();
  }
  for (auto& screw : fields.screws) std::fill(screw.stress.begin(), screw.stress.end(), 0.0);
  const auto picture = drawn([&](const fs::path& png) {
    viz::draw_construct(display(), fields, tests::sample_load_findings(fields), png);
  });
  CHECK(picture.share_not_white() > 0.15);
  CHECK(tests::scale_share(picture, 0.0) > 0.01);
  for (const double value : {0.2, 0.4, 0.5, 0.9}) CHECK(tests::scale_share(picture, value) < 1e-5);
}

TEST_CASE("the hottest hole is seen from the face that is hottest", "[viz][pictures]") {
  for (const auto face : {models::PlateFace::top, models::PlateFace::bottom}) {
    const auto fields = tests::sample_fields(face);
    const auto findings = tests::sample_load_findings(fields);
    REQUIRE(findings.plate.peak.face == face);
    const auto picture =
        drawn([&](const fs::path& png) { viz::draw_hottest_hole(display(), fields, findings, png); });
    CHECK(picture.width == 2000);
    CHECK(picture.share_not_white() > 0.3);
    CHECK(picture.share_not_white() < 0.8);
    // The other face reaches 0.81 of the peak only, so it shows less of the colours near the peak's.
    auto wrong_side = findings;
    wrong_side.plate.peak.face =
        face == models::PlateFace::top ? models::PlateFace::bottom : models::PlateFace::top;
    const auto other =
        drawn([&](const fs::path& png) { viz::draw_hottest_hole(display(), fields, wrong_side, png); });
    CHECK(tests::scale_share(picture, 0.9) > 2.0 * tests::scale_share(other, 0.9));
  }
}

TEST_CASE("gap strain of several loads is drawn with the healing windows", "[viz][pictures]") {
  const auto findings = tests::sample_findings();
  const auto picture = drawn([&](const fs::path& png) { viz::draw_gap_strain(display(), findings, png); });
  CHECK(picture.width == 2000);
  CHECK(picture.has_white_border(8));
  for (std::size_t load = 0; load < findings.loads.size(); ++load)
    CHECK(picture.share_near(viz::curve_colours[load], 0.02) > 1e-3);
  CHECK(picture.share_near(viz::curve_colours[3], 0.02) == 0.0);  // there is no fourth load
  CHECK(picture.share_not_white() > 0.3);                         // the windows are shaded
}

TEST_CASE("gap strain is drawn whatever its size and number of loads", "[viz][pictures]") {
  const auto fields = tests::sample_fields();
  for (const double scale : {0.0, 1e-3, 1.0, 60.0}) {
    models::Findings findings;
    findings.construct = "sizes";
    for (int load = 0; load < 6; ++load)
      findings.loads.push_back(tests::sample_load_findings(fields, scale * (1.0 + 0.3 * load)));
    const auto picture = drawn([&](const fs::path& png) { viz::draw_gap_strain(display(), findings, png); });
    CHECK(picture.has_white_border(8));
    for (const auto& colour : viz::curve_colours) CHECK(picture.share_near(colour, 0.02) > 2e-4);
  }
}

TEST_CASE("where the faces touch gap strain is grey instead of a curve", "[viz][pictures]") {
  const viz::Colour grey = viz::ink::grid;
  auto findings = tests::sample_findings();
  findings.loads.resize(1);
  const auto draw = [&] {
    return drawn([&](const fs::path& png) { viz::draw_gap_strain(display(), findings, png); });
  };
  const auto open = draw();
  auto& edge = findings.loads[0].gap.edge;
  for (auto& point : edge)
    if (point.around.value() < 2.2) point.axial_strain = point.shear_strain = std::nullopt;
  const auto part = draw();
  for (auto& point : edge) point.axial_strain = point.shear_strain = std::nullopt;
  findings.loads[0].gap.axial_strain = findings.loads[0].gap.shear_strain = std::nullopt;
  const auto closed = draw();
  CHECK(closed.has_white_border(8));
  // A third of the edge is closed, and the curve has so much less ink there. The legend keeps its sample.
  CHECK(part.share_near(viz::curve_colours[0], 0.02) < 0.8 * open.share_near(viz::curve_colours[0], 0.02));
  CHECK(closed.share_near(viz::curve_colours[0], 0.02) < 0.2 * open.share_near(viz::curve_colours[0], 0.02));
  const double open_grey = open.share_near(grey, 0.01);
  CHECK(part.share_near(grey, 0.01) > open_grey + 0.003);
  CHECK(closed.share_near(grey, 0.01) > open_grey + 0.012);
}

TEST_CASE("pressure of the faces is drawn for the steps and every load", "[viz][pictures]") {
  auto findings = tests::sample_findings();
  findings.compression = tests::sample_compression();
  for (std::size_t l = 0; l < findings.loads.size(); ++l)
    findings.loads[l].face = tests::sample_face(19.1 - 4.0 * static_cast<double>(l), -9.0);
  findings.loads[0].force_left = 0.87;
  findings.loads[1].gapes = true;
  const auto picture = drawn([&](const fs::path& png) { viz::draw_face_pressure(display(), findings, png); });
  CHECK(picture.width == 2000);
  CHECK(picture.has_white_border(8));
  for (std::size_t load = 0; load < findings.loads.size(); ++load)
    CHECK(picture.share_near(viz::curve_colours[load], 0.02) > 1e-3);
  CHECK(picture.share_near(viz::curve_colours[3], 0.02) == 0.0);
  findings.compression = {};
  for (auto& load : findings.loads) load.face = {};
  CHECK_NOTHROW(drawn([&](const fs::path& png) { viz::draw_face_pressure(display(), findings, png); }));
}

TEST_CASE("steps are drawn with what is new, what is held and the force on one scale", "[viz][pictures]") {
  auto findings = tests::sample_compression();
  auto steps = tests::sample_step_fields();
  const auto draw = [&] {
    return drawn([&](const fs::path& png) { viz::draw_steps(display(), findings, steps, png); });
  };
  using tests::ink_of;
  const auto picture = draw();
  CHECK(picture.width == 2000);
  CHECK(picture.has_white_border(8));
  for (const std::size_t colour : {0U, 1U, 2U}) CHECK(ink_of(picture, colour) > 2e-4);
  // Without wires and clamps there is no green, with half the force in one step less of the bars.
  for (auto& step : steps) step.holds.clear();
  steps[4].force *= 0.5;
  const auto other = draw();
  CHECK(ink_of(other, 2) == 0.0);
  CHECK(ink_of(other, 0) < ink_of(picture, 0));
}

TEST_CASE("labels of a step that crowd get room under the steps' titles", "[viz][pictures]") {
  const auto findings = tests::sample_compression();
  auto steps = tests::sample_step_fields();
  const auto draw = [&] {
    return drawn([&](const fs::path& png) { viz::draw_steps(display(), findings, steps, png); });
  };
  const int before = draw().height;
  const auto step = std::find_if(steps.begin(), steps.end(), [](const auto& s) { return !s.holds.empty(); });
  REQUIRE(step != steps.end());
  step->holds.resize(1);
  step->holds.front().label = "a clamp with a long name";
  for (int more = 0; more < 4; ++more) step->holds.push_back(step->holds.front());
  CHECK(draw().height >= before + 3 * 28);  // each moved up by a row at the least
}

TEST_CASE("steps are drawn whatever their number and however little of them is known", "[viz][pictures]") {
  const auto one = tests::sample_step_fields()[2];
  for (const std::size_t count : {1U, 2U, 7U, 30U}) {
    models::CompressionFindings findings;
    findings.steps.resize(count);
    std::vector<models::StepFields> steps(count, one);
    for (auto& screw : steps[0].screws) {
      screw.stress.clear();
      screw.displacements.clear();
    }
    const auto picture = drawn([&](const fs::path& png) { viz::draw_steps(display(), findings, steps, png); });
    CHECK(picture.has_white_border(8));
    CHECK(picture.share_not_white() > 0.08);
  }
  models::CompressionFindings findings;
  findings.steps.resize(1);
  std::vector<models::StepFields> steps(1);
  CHECK_THROWS_AS(viz::draw_steps(display(), findings, steps, "unused.png"), std::invalid_argument);
}

TEST_CASE("prebend is drawn with both cortices and the sufficient height", "[viz][pictures]") {
  auto prebend = tests::sample_prebend();
  const auto picture = drawn([&](const fs::path& png) { viz::draw_prebend(display(), prebend, png); });
  CHECK(picture.width == 2000);
  CHECK(picture.has_white_border(8));
  for (std::size_t curve = 0; curve < 3; ++curve)
    CHECK(picture.share_near(viz::curve_colours[curve], 0.02) > 1e-3);
  prebend.curve.resize(1);
  prebend.sufficient = prebend.curve[0];
  CHECK_NOTHROW(drawn([&](const fs::path& png) { viz::draw_prebend(display(), prebend, png); }));
}

TEST_CASE("forces and stress along the plate are drawn with every curve", "[viz][pictures]") {
  const auto findings = tests::sample_load_findings(tests::sample_fields());
  const auto picture = drawn([&](const fs::path& png) { viz::draw_along_plate(display(), findings, png); });
  CHECK(picture.width == 2000);
  CHECK(picture.has_white_border(8));
  for (std::size_t curve = 0; curve < 3; ++curve)
    CHECK(picture.share_near(viz::curve_colours[curve], 0.02) > 1e-3);
}

TEST_CASE("a picture that cannot be written is a fault that names the file", "[viz][pictures]") {
  const fs::path png = "/nowhere/at all/picture.png";
  const auto findings = tests::sample_findings();
  try {
    viz::draw_gap_strain(display(), findings, png);
    FAIL("no fault");
  } catch (const fs::filesystem_error& error) {
    CHECK(error.path1() == png);
    CHECK(std::string(error.what()).find(png.string()) != std::string::npos);
    CHECK(error.code() == std::errc::no_such_file_or_directory);
  }
}

TEST_CASE("a picture replaces an older one", "[viz][pictures]") {
  const tests::OwnFolder folder;
  const fs::path png = folder.path / "picture.png";
  std::ofstream(png) << "an older file";
  viz::draw_gap_strain(display(), tests::sample_findings(), png);
  CHECK(tests::read_picture(png).width == 2000);
}

TEST_CASE("fields without a plate are refused in words", "[viz][pictures]") {
  auto fields = tests::sample_fields();
  const auto findings = tests::sample_load_findings(fields);
  fields.shells.erase(fields.shells.begin());
  CHECK_THROWS_AS(viz::draw_construct(display(), fields, findings, "unused.png"), std::invalid_argument);
}
