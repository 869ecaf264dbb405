#include "models/patient/intact_strain.h"
#include "tests/models/geometry/sample_bones.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

constexpr double pi = std::numbers::pi;

}  // namespace

TEST_CASE("a tube's section has the closed form's area and inertia", "[models][patient]") {
  const BoneShape round(round_bone(150.0, 14.0, 2.5), Aspect::medial);
  const TubeSection tube = tube_section(round.section(70.0));
  CHECK(tube.area == Approx(pi / 4.0 * (14.0 * 14.0 - 9.0 * 9.0)).epsilon(1e-12));
  CHECK(tube.inertia_y == Approx(pi / 64.0 * (std::pow(14.0, 4) - std::pow(9.0, 4))).epsilon(1e-12));
  CHECK(tube.inertia_z == Approx(tube.inertia_y).epsilon(1e-12));
  CHECK(tube.middle_area == Approx(pi * 5.75 * 5.75).epsilon(1e-12));
  CHECK(tube.middle_length == Approx(2.0 * pi * 5.75).epsilon(1e-12));
}

TEST_CASE("an elliptic tube's section is what lies within the wall's thickness of its surface",
          "[models][patient]") {
  const BoneSection section =
      BoneShape(bone(150.0, {station(75.0, 14.0, 9.0, 1.9)}), Aspect::cranial).section(70.0);
  double area = 0.0, inertia_y = 0.0, inertia_z = 0.0;
  constexpr double cell = 0.04;
  for (double y = -7.0 + 0.5 * cell; y < 7.0; y += cell)
    for (double z = -4.5 + 0.5 * cell; z < 4.5; z += cell) {
      const double depth = section.outer().depth({y, z});
      if (depth < 0.0 || depth > 1.9) continue;
      area += cell * cell;
      inertia_y += cell * cell * z * z;
      inertia_z += cell * cell * y * y;
    }
  const TubeSection tube = tube_section(section);
  CHECK(tube.area == Approx(area).epsilon(2e-3));
  CHECK(tube.inertia_y == Approx(inertia_y).epsilon(2e-3));
  CHECK(tube.inertia_z == Approx(inertia_z).epsilon(2e-3));
  // Steiner's formulas of a parallel curve join area, length and wall.
  CHECK(tube.area == Approx(1.9 * tube.middle_length).epsilon(1e-9));
  const double outer_length = tube.middle_length + 1.9 * pi;
  CHECK(tube.middle_area == Approx(pi * 7.0 * 4.5 - 0.95 * outer_length + pi * 0.95 * 0.95).epsilon(1e-9));
}

TEST_CASE("pure bending stretches one side as much as it presses the other, along the shaft",
          "[models][patient]") {
  const double modulus = 17300.0, inertia = pi / 64.0 * (std::pow(14.0, 4) - std::pow(9.0, 4));
  LoadCase load;
  load.supports = cantilever();
  load.bending_z = 1500.0 * newton_mm;  // -y is stretched
  const IntactStrain found = intact_strain(round_bone(150.0, 14.0, 2.5), Aspect::medial, load);
  const double expected = 1500.0 * 7.0 / (modulus * inertia);
  CHECK(found.tension.principal == Approx(expected).epsilon(1e-9));
  CHECK(found.compression.principal == Approx(-expected).epsilon(1e-9));
  CHECK(found.tension.around.value() == Approx(-pi / 2.0));
  CHECK(found.compression.around.value() == Approx(pi / 2.0));
  CHECK(found.tension.to_shaft.value() == Approx(0.0).margin(1e-12));
  CHECK(found.compression.to_shaft.value() == Approx(0.0).margin(1e-12));
  CHECK(found.shear == 0.0);
}

TEST_CASE("pure torsion strains at 45 degrees to the shaft, half the shear either way", "[models][patient]") {
  const double shear_modulus = 17300.0 / (2.0 * 1.31);
  const double polar = pi / 32.0 * (std::pow(14.0, 4) - std::pow(9.0, 4));
  LoadCase load;
  load.torsion = 3000.0 * newton_mm;
  for (const double sense : {1.0, -1.0}) {
    load.torsion = sense * 3000.0 * newton_mm;
    const IntactStrain found = intact_strain(round_bone(150.0, 14.0, 2.5), Aspect::medial, load);
    const double shear = 3000.0 * 7.0 / polar / shear_modulus;
    CHECK(found.shear == Approx(shear).epsilon(1e-9));
    CHECK(found.tension.principal == Approx(0.5 * shear).epsilon(1e-9));
    CHECK(found.compression.principal == Approx(-0.5 * shear).epsilon(1e-9));
    CHECK(found.tension.to_shaft.value() == Approx(pi / 4.0));
    CHECK(found.compression.to_shaft.value() == Approx(pi / 4.0));
  }
}

TEST_CASE("strain of a round bone is N / EA + M c / EI, with torsion by Mohr's circle", "[models][patient]") {
  const Bone tube = round_bone(150.0, 14.0, 2.5);
  const double modulus = 17300.0, contraction = 0.31, shear_modulus = modulus / (2.0 * 1.31);
  const double area = pi / 4.0 * (196.0 - 81.0), inertia = pi / 64.0 * (std::pow(14.0, 4) - std::pow(9.0, 4));
  LoadCase load;
  load.axial_compression = 240.0 * newton;
  load.ball_offset_z = -8.0 * mm;
  load.ball_distance = 5.0 * mm;
  const double pressed = 240.0 / (modulus * area) + 240.0 * 8.0 * 7.0 / (modulus * inertia);
  const double stretched = -240.0 / (modulus * area) + 240.0 * 8.0 * 7.0 / (modulus * inertia);
  const IntactStrain bent = intact_strain(tube, Aspect::medial, load);
  CHECK(bent.compression.principal == Approx(-pressed).epsilon(1e-9));
  CHECK(bent.tension.principal == Approx(stretched).epsilon(1e-9));
  CHECK(std::abs(bent.compression.around.value()) == Approx(pi));  // the load line's side, away from the plate
  CHECK(bent.tension.around.value() == Approx(0.0).margin(1e-12));

  load.torsion = 3000.0 * newton_mm;
  const IntactStrain twisted = intact_strain(tube, Aspect::medial, load);
  const double shear = 3000.0 * 7.0 / (2.0 * inertia) / shear_modulus;
  CHECK(twisted.shear == Approx(shear).epsilon(1e-9));
  for (const bool of_tension : {true, false}) {
    const auto& found = of_tension ? twisted.tension : twisted.compression;
    const double along = of_tension ? stretched : -pressed, sign = of_tension ? 1.0 : -1.0;
    CHECK(found.longitudinal == Approx(along).epsilon(1e-9));
    // The strains along, across and between, turned by the angle: no shear is left, and this is what they come to.
    const double across = -contraction * along, angle = found.to_shaft.value();
    const double turned = along * std::pow(std::cos(angle), 2) + across * std::pow(std::sin(angle), 2) +
                          sign * shear * std::sin(angle) * std::cos(angle);
    const double left = -(along - across) * std::sin(2.0 * angle) + sign * shear * std::cos(2.0 * angle);
    CHECK(found.principal == Approx(turned).epsilon(1e-9));
    CHECK(left == Approx(0.0).margin(1e-12));
  }
}

TEST_CASE("a bow adds its height to the load line's offset", "[models][patient]") {
  Bone bowed = bone(160.0, {station(0.0, 13.0, 10.0, 2.0), station(80.0, 13.0, 10.0, 2.0, 0.0, 3.0),
                            station(160.0, 13.0, 10.0, 2.0)});
  LoadCase load;
  load.axial_compression = 200.0 * newton;
  load.ball_offset_z = -6.0 * mm;
  const IntactStrain found = intact_strain(bowed, Aspect::cranial, load);
  CHECK(found.compression.position.value() == Approx(80.0));
  Bone straight = bone(160.0, {station(80.0, 13.0, 10.0, 2.0)});
  load.ball_offset_z = -9.0 * mm;
  const IntactStrain expected = intact_strain(straight, Aspect::cranial, load);
  CHECK(found.compression.principal == Approx(expected.compression.principal).epsilon(1e-9));
}
