#include "models/evidence/bench_models.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <optional>

namespace gapstrain::models {

namespace {

constexpr double steel = 190e3, titanium = 105e3;                           // MPa, as the metals of material.cpp
constexpr double composite = 17e3, polyacetal_modulus = 2.9e3, dog = 20e3;  // MPa; handbook values, from memory

enum class Held { both_cortices, near_cortex, near_cortex_innermost };

// One bench test's tube, plate, screws and loads. mm, N, N mm, MPa.
struct Tube {
  double outer, wall, length, modulus;
};
struct Bar {
  int holes;
  double pitch, width, thickness, hole, core, modulus;  // hole: across; core: of its screws
};
struct Sizes {
  std::string_view name, stands_for;
  Tube tube;
  Bar bar;
  double gap, standoff;
  double before_fracture;  // holes on the proximal fragment; half of one lies over the gap and stays empty
  double axial, moment;
  Held held = Held::both_cortices;
  double hard_moment = 0.0;  // 0: no such load
  double line_aside = 0.0;   // of the load, away from the plate; 0: no such load
};

Sizes shaft_sizes(std::string_view name, double gap, double standoff, double axial) {
  return {.name = name,
          .stands_for = "a human shaft",
          .tube = {26, 3.5, 320, composite},
          .bar = {12, 18, 16, 5, 5.5, 4.4, titanium},
          .gap = gap,
          .standoff = standoff,
          .before_fracture = 6,
          .axial = axial,
          .moment = 1000};
}
Sizes humerus(std::string_view name, double standoff) {
  return {.name = name,
          .stands_for = "a human humerus",
          .tube = {21, 3, 240, composite},
          .bar = {8, 13, 11, 3.5, 4, 2.9, steel},
          .gap = 5,
          .standoff = standoff,
          .before_fracture = 4,
          .axial = 100,
          .moment = 1000};
}
Sizes toy_bone(std::string_view name, double standoff) {
  return {.name = name,
          .stands_for = "a toy dog's bone",
          .tube = {9, 1.3, 100, polyacetal_modulus},
          .bar = {12, 6, 5.5, 1.5, 2, 1.5, steel},
          .gap = 2,
          .standoff = standoff,
          .before_fracture = 6,
          .axial = 20,
          .moment = 100};
}
Sizes dog_femur(std::string_view name, double standoff) {
  return {.name = name,
          .stands_for = "a small dog's femur",
          .tube = {13, 2, 150, dog},
          .bar = {12, 8, 6.5, 2, 2.6, 1.9, steel},
          .gap = 3,
          .standoff = standoff,
          .before_fracture = 6,
          .axial = 100,
          .moment = 500,
          .line_aside = 15};
}
Sizes dog_tibia(std::string_view name, Held held) {
  return {.name = name,
          .stands_for = "a dog's tibia",
          .tube = {14, 2.3, 190, dog},
          .bar = {10, 13, 11, 3.5, 4, 2.9, steel},
          .gap = 10,
          .standoff = 1,
          .before_fracture = 5,
          .axial = 100,
          .moment = 1000,
          .held = held};
}
Sizes cylinder_sizes(std::string_view name, Held held) {
  return {.name = name,
          .stands_for = "a synthetic cylinder",
          .tube = {20, 3, 180, composite},
          .bar = {7, 13, 10, 3, 4, 2.9, steel},
          .gap = 10,
          .standoff = 1,
          .before_fracture = 3.5,
          .axial = 100,
          .moment = 1000,
          .held = held};
}

const std::vector<Sizes> models{
    shaft_sizes(bench::shaft, 6, 2, 100),
    shaft_sizes(bench::shaft_off, 6, 6, 100),
    shaft_sizes(bench::closing_shaft, 1, 2, 1000),
    humerus(bench::humerus_flush, 0),
    humerus(bench::humerus_near, 2),
    humerus(bench::humerus_far, 5),
    Sizes{.name = bench::polyacetal,
          .stands_for = "a bone surrogate",
          .tube = {20, 3, 240, polyacetal_modulus},
          .bar = {12, 13, 11, 3.5, 4, 2.9, steel},
          .gap = 10,
          .standoff = 1,
          .before_fracture = 6,
          .axial = 200,
          .moment = 1000},
    Sizes{.name = bench::short_fragment,
          .stands_for = "a bone surrogate",
          .tube = {20, 3, 195, polyacetal_modulus},
          .bar = {12, 13, 11, 3.5, 4, 2.9, steel},
          .gap = 1,
          .standoff = 1,
          .before_fracture = 9,
          .axial = 100,
          .moment = 1000,
          .hard_moment = 10000},
    toy_bone(bench::toy, 1),
    toy_bone(bench::toy_off, 3),
    Sizes{.name = bench::toy_reduced,
          .stands_for = "a toy dog's bone",
          .tube = {9, 1.3, 90, polyacetal_modulus},
          .bar = {8, 6, 5.5, 1.5, 2, 1.5, steel},
          .gap = 0,
          .standoff = 1,
          .before_fracture = 5,
          .axial = 20,
          .moment = 100},
    dog_femur(bench::femur, 0),
    dog_femur(bench::femur_off, 1),
    dog_tibia(bench::tibia, Held::both_cortices),
    dog_tibia(bench::tibia_one, Held::near_cortex),
    dog_tibia(bench::tibia_innermost, Held::near_cortex_innermost),
    cylinder_sizes(bench::cylinder, Held::both_cortices),
    cylinder_sizes(bench::cylinder_one, Held::near_cortex),
};

std::vector<LoadCase> loads_of(const Sizes& sizes) {
  std::vector<LoadCase> loads;
  const auto add = [&](std::string_view name, Force axial, Moment bending, Moment torsion) {
    LoadCase load;
    load.name = name;
    load.axial_compression = axial;
    load.bending_y = bending;
    load.torsion = torsion;
    loads.push_back(load);
  };
  const Force no_force = 0.0 * newton, axial = sizes.axial * newton;
  const Moment none = 0.0 * newton_mm, moment = sizes.moment * newton_mm;
  add(bench_load::axial, axial, none, none);
  add(bench_load::torsion, no_force, none, moment);
  add(bench_load::tension, no_force, moment, none);
  add(bench_load::compression, no_force, -moment, none);
  if (sizes.hard_moment > 0.0) add(bench_load::hard, no_force, sizes.hard_moment * newton_mm, none);
  if (sizes.line_aside > 0.0) {
    add(bench_load::aside, axial, none, none);
    loads.back().ball_offset_z = -sizes.line_aside * mm;
  }
  return loads;
}

std::string dimensions_of(const Sizes& sizes) {
  return fmt::format(
      "in place of {}, tube {:g} mm across, wall {:g}, {:g} long, {:g} GPa; plate {:g} x {:g}, {} holes {:g} "
      "apart, "
      "{:g} GPa, {:g} off the bone; locking screws, core {:g}; gap {:g}; axial {:g} N, moments {:g} N m{}",
      sizes.stands_for, sizes.tube.outer, sizes.tube.wall, sizes.tube.length, sizes.tube.modulus / 1e3,
      sizes.bar.width, sizes.bar.thickness, sizes.bar.holes, sizes.bar.pitch, sizes.bar.modulus / 1e3,
      sizes.standoff, sizes.bar.core, sizes.gap, sizes.axial, sizes.moment / 1e3,
      sizes.hard_moment > 0.0 ? fmt::format(", hard {:g} N m", sizes.hard_moment / 1e3) : std::string{});
}

Screw screw_in(int hole, const Sizes& sizes, const Metal& metal) {
  Screw screw;
  screw.label = fmt::format("S{}", hole);
  screw.hole = hole;
  screw.size = {"bench", 1.15 * sizes.bar.core * mm, sizes.bar.core * mm, 0.3 * sizes.bar.core * mm, "invented"};
  screw.material = metal;
  screw.cortices = sizes.held == Held::near_cortex ? 1 : 2;
  return screw;
}

// Nearer to an edge of the gap its spot would not be all on bone.
bool has_bone_under(const Sizes& sizes, double distance_to_fracture) {
  return std::abs(distance_to_fracture) - 0.5 * sizes.gap > 1.1 * sizes.bar.core;
}

BenchModel build(const Sizes& sizes, double refinement) {
  BenchModel model{std::string(sizes.name), dimensions_of(sizes), {}};
  Construct& construct = model.construct;
  construct.name = model.name;
  construct.mesh.refinement = refinement;
  Bone& bone = construct.bone;
  bone.name = "tube";
  bone.length = sizes.tube.length * mm;
  bone.stations = {
      {0.5 * bone.length, sizes.tube.outer * mm, sizes.tube.outer * mm, sizes.tube.wall * mm, 0.0 * mm, 0.0 * mm}};
  bone.cortex = isotropic_cortex("bench", sizes.tube.modulus * mpa, 0.3, "invented, of the class the paper names");

  Plate& plate = only(construct.plates);
  plate.length = sizes.bar.holes * sizes.bar.pitch * mm;
  plate.sections = {{0.0 * mm, sizes.bar.width * mm, sizes.bar.thickness * mm}};
  for (int k = 0; k < sizes.bar.holes; ++k)
    plate.holes.push_back(
        {(k + 0.5) * sizes.bar.pitch * mm, HoleShape::round, sizes.bar.hole * mm, sizes.bar.hole * mm});
  plate.material = {"bench", sizes.bar.modulus * mpa, 0.3, std::nullopt, "handbook value, from memory"};
  plate.proximal_end = 0.5 * (bone.length - plate.length);
  plate.standoff = sizes.standoff * mm;

  const double fracture = sizes.before_fracture * sizes.bar.pitch;
  only(construct.fractures).position = plate.proximal_end + fracture * mm;
  only(construct.fractures).gap = sizes.gap * mm;
  construct.loads = loads_of(sizes);
  std::vector<Screw>& screws = construct.screws;
  for (int hole = 1; hole <= sizes.bar.holes; ++hole)
    if (has_bone_under(sizes, (hole - 0.5) * sizes.bar.pitch - fracture))
      screws.push_back(screw_in(hole, sizes, plate.material));
  number_screws(screws);
  if (sizes.held == Held::near_cortex_innermost) {
    const auto distal = std::find_if(screws.begin(), screws.end(),
                                     [&](const Screw& screw) { return screw.hole > sizes.before_fracture; });
    (distal - 1)->cortices = 1;
    distal->cortices = 1;
  }
  return model;
}

}  // namespace

std::vector<std::string_view> bench_model_names() {
  std::vector<std::string_view> names;
  for (const auto& sizes : models) names.push_back(sizes.name);
  return names;
}

BenchModel bench_model(std::string_view name, double refinement) {
  const auto found = std::find_if(models.begin(), models.end(), [&](const auto& m) { return m.name == name; });
  assert(found != models.end());
  return build(*found, refinement);
}

}  // namespace gapstrain::models
