#include "tests/models/constructs.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <random>
#include <stdexcept>

namespace gapstrain::tests {

using namespace models;  // NOLINT: this file is nothing but parts

namespace {

LoadCase named_load(const std::string& name) {
  LoadCase load;
  load.name = name;
  return load;
}

Metal metal(double youngs_modulus, double nu) {
  return {"test metal", youngs_modulus * mpa, nu, 800.0 * mpa, "made up for tests"};
}

}  // namespace

Construct plated_tube(const TubeSizes& sizes) {
  Construct construct;
  construct.name = "plated tube";
  construct.second_order = SecondOrderEffects::never;
  construct.bone.name = "tube";
  construct.bone.length = sizes.length * mm;
  const Length outer = sizes.outer * mm, middle = 0.5 * construct.bone.length;
  construct.bone.stations = {{middle, outer, outer, 0.5 * (sizes.outer - sizes.inner) * mm, 0.0 * mm, 0.0 * mm}};
  construct.bone.cortex = isotropic_cortex("tube", sizes.bone_modulus * mpa, 0.3, "made up for tests");
  Plate& plate = only(construct.plates);
  plate.length = sizes.plate_length * mm;
  plate.sections = {{0.0 * mm, sizes.plate_width * mm, sizes.plate_thickness * mm}};
  plate.material = metal(sizes.metal_modulus, 0.3);
  plate.proximal_end = middle - 0.5 * plate.length;
  plate.standoff = sizes.standoff * mm;
  // Holes from proximal to distal: outermost to innermost, then back out.
  for (int side = -1; side <= 1; side += 2) {
    for (int step = 0; step < sizes.holes_a_side; ++step) {
      const int k = side < 0 ? sizes.holes_a_side - 1 - step : step;
      const Length place = 0.5 * plate.length + side * (sizes.first_hole + sizes.pitch * k) * mm;
      plate.holes.push_back({place, HoleShape::round, sizes.hole * mm, sizes.hole * mm});
      if (std::find(sizes.screws.begin(), sizes.screws.end(), k) == sizes.screws.end()) continue;
      Screw screw;
      screw.hole = static_cast<int>(plate.holes.size());
      screw.label = fmt::format("S{}", screw.hole);
      screw.size = {"test size", std::max(sizes.hole, sizes.core) * mm, sizes.core * mm, 1.0 * mm,
                    "made up for tests"};
      screw.material = plate.material;
      screw.cortices = sizes.cortices;
      screw.tilt_along = -side * sizes.tilt * degree;
      construct.screws.push_back(screw);
    }
  }
  number_screws(construct.screws);
  only(construct.fractures).position = middle;
  only(construct.fractures).gap = sizes.gap * mm;

  LoadCase axial = named_load("axial"), bending = named_load("bending"), torsion = named_load("torsion");
  axial.ball_distance = 4.0 * mm;
  axial.axial_compression = 100.0 * newton;
  bending.ball_distance = 4.0 * mm;
  bending.bending_y = 1000.0 * newton_mm;
  torsion.supports = cantilever();
  torsion.torsion = 1000.0 * newton_mm;
  construct.loads = {axial, bending, torsion};
  return construct;
}

Construct random_construct(unsigned seed) {
  std::mt19937 random(seed);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const auto coin = [&](double chance) { return between(0.0, 1.0) < chance; };

  Construct construct;
  construct.name = fmt::format("random construct {}", seed);
  construct.second_order = SecondOrderEffects::never;
  Bone& bone = construct.bone;
  bone.name = "random bone";
  const double width = between(10.0, 18.0), depth = width * between(0.75, 1.3);
  const double wall = std::min(width, depth) * between(0.14, 0.2);
  bone.length = between(8.0, 11.0) * width * mm;
  const double bow = coin(0.5) ? between(0.0, 0.02) * bone.length.value() : 0.0;
  for (const double place : {0.1, 0.5, 0.9})
    bone.stations.push_back({place * bone.length, width * between(0.95, 1.08) * mm,
                             depth * between(0.95, 1.08) * mm, wall * mm, 0.0 * mm,
                             (place == 0.5 ? bow : 0.0) * mm});
  bone.cortex = isotropic_cortex("random", between(14000.0, 20000.0) * mpa, 0.3, "made up for tests");
  bone.cortex.transverse_modulus = between(0.6, 1.0) * bone.cortex.longitudinal_modulus;

  Plate& plate = only(construct.plates);
  const double hole = width * between(0.2, 0.26), pitch = hole * between(3.0, 3.8);
  const int holes = 8;
  plate.length = (holes * pitch) * mm;
  plate.sections = {{0.0 * mm, hole * between(2.3, 2.8) * mm, hole * between(0.7, 0.95) * mm}};
  for (int k = 0; k < holes; ++k)
    plate.holes.push_back({(k + 0.5) * pitch * mm, HoleShape::round, hole * mm, hole * mm});
  plate.material = metal(between(100000.0, 200000.0), 0.31);
  plate.aspect = std::array{Aspect::cranial, Aspect::caudal, Aspect::medial, Aspect::lateral}[random() % 4];
  plate.proximal_end = 0.5 * (bone.length - plate.length);
  plate.standoff = between(0.5, 2.0) * mm;

  const std::array<std::array<int, 6>, 4> layouts = {
      {{1, 2, 3, 6, 7, 8}, {1, 3, 6, 8, 0, 0}, {1, 2, 6, 8, 0, 0}, {2, 3, 6, 7, 8, 0}}};
  for (const int place : layouts[random() % 4]) {
    if (place == 0) continue;
    Screw screw;
    screw.label = fmt::format("S{}", place);
    screw.hole = place;
    screw.size = {"random", hole * mm, 0.8 * hole * mm, 0.4 * hole * mm, "made up for tests"};
    screw.material = metal(plate.material.youngs_modulus.value(), 0.31);
    screw.cortices = coin(0.25) ? 1 : 2;
    if (coin(0.4)) screw.tilt_across = between(-8.0, 8.0) * degree;
    if (coin(0.4)) screw.tilt_along = between(-5.0, 5.0) * degree;
    construct.screws.push_back(screw);
  }
  number_screws(construct.screws);
  only(construct.fractures).position = 0.5 * bone.length;
  only(construct.fractures).gap = between(0.08, 0.3) * pitch * mm;
  if (coin(0.5)) only(construct.fractures).obliquity = between(5.0, 20.0) * degree;
  only(construct.fractures).direction = between(0.0, 6.2) * radian;
  if (coin(0.5))
    only(construct.fractures).tissue = Tissue{"random", between(0.2, 800.0) * mpa, 0.3, "made up for tests"};

  LoadCase combined = named_load("combined"), torsion = named_load("torsion");
  combined.ball_distance = between(0.0, 5.0) * mm;
  combined.ball_offset_y = between(-2.0, 2.0) * mm;
  combined.axial_compression = between(50.0, 200.0) * newton;
  combined.bending_z = between(-900.0, 900.0) * newton_mm;
  torsion.supports = cantilever();
  torsion.torsion = between(200.0, 1500.0) * newton_mm;
  torsion.transverse_z = between(-9.0, 9.0) * newton;
  construct.loads = {combined, torsion};
  construct.mesh.refinement = 0.5;

  for (const auto& problem : check(construct))
    if (problem.severity == Severity::error)
      throw std::logic_error(
          fmt::format("random construct {} is not sound: {}: {}", seed, problem.where, problem.message));
  return construct;
}

}  // namespace gapstrain::tests
