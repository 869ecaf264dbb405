#include "viz/compared/compared_pictures.h"

#include "tests/viz/picture_file.h"
#include "tests/viz/sample.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <stdexcept>

using namespace gapstrain;
namespace fs = std::filesystem;

namespace {

using tests::display;
using tests::drawn;

// The sample with its lengths along the bone, its stress and its motion scaled, moved along x.
models::LoadFields changed(double length, double shift, double load) {
  auto fields = tests::sample_fields();
  for (auto& shell : fields.shells) {
    auto mesh = std::make_shared<mesh::ShellMesh>(*shell.mesh);
    mesh->nodes.col(0) = length * mesh->nodes.col(0).array() + shift;
    shell.mesh = mesh;
    for (auto* moved : {&shell.displacements, &shell.rotations}) *moved *= load;
    for (auto* stress : {&shell.von_mises_top, &shell.von_mises_middle, &shell.von_mises_bottom}) *stress *= load;
  }
  for (auto& screw : fields.screws) {
    for (auto& point : screw.axis) point.x() = length * point.x() + shift;
    for (auto& moved : screw.displacements) moved *= load;
    for (auto& stress : screw.stress) stress *= load;
  }
  return fields;
}

tests::PictureFile side_by_side(const std::vector<models::LoadFields>& fields, const std::string& name = "one") {
  std::vector<models::LoadFindings> findings;
  for (const auto& each : fields) findings.push_back(tests::sample_load_findings(each));
  std::vector<viz::ComparedConstruct> constructs;
  for (std::size_t c = 0; c < fields.size(); ++c) constructs.push_back({name, &fields[c], &findings[c]});
  return drawn([&](const fs::path& png) { viz::draw_side_by_side(display(), constructs, png); });
}

// Columns in which something of the bone's colour shows between two shares of the height, from below.
std::pair<int, int> bone_columns(const tests::PictureFile& picture, double from, double to) {
  int left = picture.width, right = -1;
  for (int row = static_cast<int>(from * picture.height); row < static_cast<int>(to * picture.height); ++row)
    for (int column = 0; column < picture.width; ++column) {
      const auto& pixel = picture.pixels[static_cast<std::size_t>(row * picture.width + column)];
      const bool bone = pixel[0] > 215 && pixel[0] < 245 && pixel[0] - pixel[2] > 6 && pixel[0] - pixel[2] < 40;
      if (!bone) continue;
      left = std::min(left, column);
      right = std::max(right, column);
    }
  return {left, right};
}

std::vector<viz::ComparedConstruct> with_names(const std::vector<models::LoadFindings>& findings) {
  std::vector<viz::ComparedConstruct> constructs;
  for (const auto& each : findings) constructs.push_back({"a construct", nullptr, &each});
  return constructs;
}

tests::PictureFile gap_strain(const std::vector<models::LoadFindings>& findings) {
  return drawn([&](const fs::path& png) { viz::draw_gap_strain_compared(display(), with_names(findings), png); });
}

void close(models::GapFindings& gap) {
  for (auto& point : gap.edge) point.axial_strain = point.shear_strain = std::nullopt;
  gap.axial_strain = gap.shear_strain = std::nullopt;
}

}  // namespace

TEST_CASE("compared constructs are drawn one under another, none cut off", "[viz][pictures]") {
  int before = 0;
  for (const std::size_t count : {2U, 3U, 4U}) {
    const auto picture =
        side_by_side(std::vector<models::LoadFields>(count, tests::sample_fields()),
                     "a name so long that it has "
                     "to be written smaller than the others, and shortened where even that is of no help: it goes "
                     "on and on, and on again, without an end");
    CHECK(picture.width == 2000);
    CHECK(picture.height > before + 300);
    CHECK(picture.has_white_border(8));
    CHECK(picture.share_not_white() > 0.15);
    before = picture.height;
  }
}

TEST_CASE("compared constructs share one colour range", "[viz][pictures]") {
  // Where the other bears five times as much, its peak alone has the high colours.
  const auto alike = side_by_side({changed(1.0, 0.0, 1.0), changed(1.0, 0.0, 1.0)});
  const auto weaker = side_by_side({changed(1.0, 0.0, 1.0), changed(1.0, 0.0, 0.2)});
  CHECK(tests::scale_share(alike, 0.5) > 5e-4);
  CHECK(tests::scale_share(weaker, 0.5) < 0.6 * tests::scale_share(alike, 0.5));
  CHECK(tests::scale_share(weaker, 0.5) > 0.4 * tests::scale_share(alike, 0.5));
}

TEST_CASE("compared constructs share scale and place of their proximal ends", "[viz][pictures]") {
  // The lower one is 0.6 times as long and lies elsewhere along x.
  const auto picture = side_by_side({changed(1.0, 0.0, 1.0), changed(0.6, 40.0, 1.0)});
  const auto [upper_left, upper_right] = bone_columns(picture, 0.62, 0.95);
  const auto [lower_left, lower_right] = bone_columns(picture, 0.22, 0.50);
  CHECK(std::abs(upper_left - lower_left) <= 4);
  const double ratio = static_cast<double>(lower_right - lower_left) / (upper_right - upper_left);
  CHECK(ratio == Approx(0.6).margin(0.03));  // the sections' width in this view and the deformation do not scale
}

TEST_CASE("many long labels of one construct stay out of the next", "[viz][pictures]") {
  auto fields = tests::sample_fields();
  const auto one = fields.screws.front();
  const auto plain = side_by_side({fields, fields});
  fields.screws.clear();
  for (int k = 0; k < 20; ++k) {
    fields.screws.push_back(one);
    fields.screws.back().label = "screw number " + std::to_string(k + 1);
    for (auto& point : fields.screws.back().axis) point.x() += 5.1 * k;
  }
  const auto crowded = side_by_side({fields, fields});
  CHECK(crowded.height >= plain.height + 2 * 2 * 34);  // three rows of labels at the least
  CHECK(crowded.has_white_border(8));
}

TEST_CASE("strain of compared constructs is a curve each over the healing windows", "[viz][pictures]") {
  const auto fields = tests::sample_fields();
  std::vector<models::LoadFindings> findings;
  for (const double scale : {1.0, -0.5, 1.7}) findings.push_back(tests::sample_load_findings(fields, scale));
  const auto picture = gap_strain(findings);
  CHECK(picture.width == 2000);
  CHECK(picture.has_white_border(8));
  for (std::size_t curve = 0; curve < 3; ++curve)
    CHECK(picture.share_near(viz::curve_colours[curve], 0.02) > 1e-3);
  CHECK(picture.share_near(viz::curve_colours[3], 0.02) == 0.0);
  CHECK(picture.share_not_white() > 0.3);  // the windows are shaded
}

TEST_CASE("where a compared construct is closed all round motion is drawn for all", "[viz][pictures]") {
  const auto fields = tests::sample_fields();
  std::vector<models::LoadFindings> findings{tests::sample_load_findings(fields),
                                             tests::sample_load_findings(fields, -0.5)};
  close(findings[1].gap);
  const auto picture = gap_strain(findings);
  CHECK(picture.has_white_border(8));
  CHECK(picture.share_not_white() < 0.2);  // no windows: they are of strain
  for (std::size_t curve = 0; curve < 2; ++curve)
    CHECK(picture.share_near(viz::curve_colours[curve], 0.02) > 1e-3);
}

TEST_CASE("where a compared construct is closed in part its row is grey there", "[viz][pictures]") {
  const auto fields = tests::sample_fields();
  std::vector<models::LoadFindings> findings(2, tests::sample_load_findings(fields));
  const auto open = gap_strain(findings);
  for (auto& point : findings[1].gap.edge)
    if (point.around.value() < 2.2) point.axial_strain = std::nullopt;
  const auto part = gap_strain(findings);
  CHECK(part.share_near(viz::ink::grid, 0.01) > open.share_near(viz::ink::grid, 0.01) + 0.003);
}

TEST_CASE("one construct or five are not compared in one picture", "[viz][pictures]") {
  const auto fields = tests::sample_fields();
  const auto findings = tests::sample_load_findings(fields);
  for (const std::size_t count : {0U, 1U, 5U}) {
    const std::vector<viz::ComparedConstruct> constructs(count, {"one", &fields, &findings});
    CHECK_THROWS_AS(viz::draw_side_by_side(display(), constructs, "unused.png"), std::invalid_argument);
    CHECK_THROWS_AS(viz::draw_gap_strain_compared(display(), constructs, "unused.png"), std::invalid_argument);
  }
}
