#include "models/patient/allometry.h"
#include "models/patient/gait.h"
#include "models/patient/intact_strain.h"
#include "models/patient/starting_plate.h"
#include "tests/models/geometry/sample_bones.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

constexpr double pi = std::numbers::pi;

Bone estimated_bone(const Patient& patient) {
  const BoneSizes sizes = complete_sizes(patient, {});
  Bone estimated = bone(sizes.length.value.value(), {});
  estimated.stations = {{0.5 * sizes.length.value, sizes.width_mediolateral.value, sizes.width_craniocaudal.value,
                         sizes.cortex.value, 0.0 * mm, 0.0 * mm}};
  estimated.cortex = find_cortex("canine-femur").value();
  return estimated;
}

IntactStrain trot_strain(LongBone name, double mass) {
  const Patient patient{Species::dog, name, mass * kilogram};
  return largest_intact_strain(estimated_bone(patient), usual_aspect(name),
                               gait_loads(patient).at(static_cast<std::size_t>(Activity::trot)).load);
}

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

TEST_CASE("strain of a round bone is N / EA + M c / EI, with torsion by Mohr's circle", "[models][patient]") {
  const Bone tube = round_bone(150.0, 14.0, 2.5);
  const double modulus = 17300.0, contraction = 0.31, shear_modulus = modulus / (2.0 * 1.31);
  const double area = pi / 4.0 * (196.0 - 81.0), inertia = pi / 64.0 * (std::pow(14.0, 4) - std::pow(9.0, 4));
  LoadCase load;
  load.axial_compression = 240.0 * newton;
  load.ball_offset_z = -8.0 * mm;
  load.ball_distance = 5.0 * mm;
  const IntactStrain bent = largest_intact_strain(tube, Aspect::medial, load);
  const double expected = 240.0 / (modulus * area) + 240.0 * 8.0 * 7.0 / (modulus * inertia);
  CHECK(bent.longitudinal == Approx(-expected).epsilon(1e-9));
  CHECK(bent.principal == Approx(expected).epsilon(1e-9));
  CHECK(std::abs(bent.around.value()) == Approx(pi));  // the load line's side, away from the plate

  load.torsion = 3000.0 * newton_mm;
  const IntactStrain twisted = largest_intact_strain(tube, Aspect::medial, load);
  const double shear = 3000.0 * 7.0 / (2.0 * inertia) / shear_modulus;
  CHECK(twisted.shear == Approx(shear).epsilon(1e-9));
  const double middle = 0.5 * (1.0 - contraction) * expected, radius = 0.5 * (1.0 + contraction) * expected;
  CHECK(twisted.principal == Approx(middle + std::hypot(radius, 0.5 * shear)).epsilon(1e-9));

  LoadCase edge;
  edge.support = Support::cantilever;
  edge.bending_z = 1500.0 * newton_mm;  // -y is stretched
  const IntactStrain sideways = largest_intact_strain(tube, Aspect::medial, edge);
  CHECK(sideways.principal == Approx(1500.0 * 7.0 / (modulus * inertia)).epsilon(1e-9));
  CHECK(std::abs(sideways.around.value()) == Approx(pi / 2.0));
}

TEST_CASE("a bow adds its height to the load line's offset", "[models][patient]") {
  Bone bowed = bone(160.0, {station(0.0, 13.0, 10.0, 2.0), station(80.0, 13.0, 10.0, 2.0, 0.0, 3.0),
                            station(160.0, 13.0, 10.0, 2.0)});
  LoadCase load;
  load.axial_compression = 200.0 * newton;
  load.ball_offset_z = -6.0 * mm;
  const IntactStrain found = largest_intact_strain(bowed, Aspect::cranial, load);
  CHECK(found.position.value() == Approx(80.0));
  Bone straight = bone(160.0, {station(80.0, 13.0, 10.0, 2.0)});
  load.ball_offset_z = -9.0 * mm;
  CHECK(found.principal == Approx(largest_intact_strain(straight, Aspect::cranial, load).principal).epsilon(1e-9));
}

TEST_CASE("a trotting dog's bones are strained as living ones are", "[models][patient]") {
  // Principal strains of vigorous gaits, 1000 to 3500 microstrain in many species; their likeness: Rubin & Lanyon
  // 1982, J Exp Biol 101:187; figures from memory.
  const PublishedRange& range = published_trot_strain();
  for (const LongBone name : {LongBone::radius, LongBone::tibia})
    for (const double mass : {5.0, 18.0, 30.0}) {
      const IntactStrain found = trot_strain(name, mass);
      INFO(name_of(name) << " of a dog of " << mass << " kg: " << 1e6 * found.principal << " microstrain");
      CHECK(found.principal > range.low);
      CHECK(found.principal < range.high);
    }
}

TEST_CASE("a trotting dog's tibia is pulled at 30 to 60 degrees to its shaft", "[models][patient]") {
  // Bouvier & Hylander 1984, Acta Anat 118:187: gauges on two dogs' tibiae.
  const IntactStrain found = trot_strain(LongBone::tibia, 18.0);
  const double contraction = find_cortex("canine-femur").value().poissons_ratio_lt;
  // Mohr: twice the angle from the shaft to the principal strain of the longitudinal strain's sign.
  const double near = 0.5 * std::atan2(found.shear, (1.0 + contraction) * std::abs(found.longitudinal));
  const double to_shaft = 180.0 / pi * (found.longitudinal < 0.0 ? pi / 2.0 - near : near);
  CHECK(to_shaft > 30.0);
  CHECK(to_shaft < 60.0);
}
