// Papers give few dimensions. Those that a public copy or memory gives are said under "known" in the table of
// statements; all others are ours, of the class that the paper names.
#include "models/evidence/bench_sizes.h"

#include "models/evidence/bench_loads.h"
#include "models/evidence/bench_models.h"

#include <cmath>

namespace gapstrain::models {

namespace {

constexpr double steel = 190e3, titanium = 105e3;                           // MPa, as the metals of material.cpp
constexpr double composite = 17e3, polyacetal_modulus = 2.9e3, dog = 20e3;  // MPa; handbook values, from memory

const std::vector<std::string_view> held_ways{bench_load::axial_held, bench_load::axial_guided,
                                              bench_load::torsion_gripped};
const std::vector<std::string_view> guided_ways{bench_load::axial_guided, bench_load::torsion_gripped};

BenchSizes shaft_sizes(std::string_view name, double gap, double standoff, double axial) {
  return {.name = name,
          .stands_for = "a human shaft",
          .tube = {26, 3.5, 320, composite},
          .bar = {12, 18, 16, 5, 5.5, 4.4, titanium},
          .gap = gap,
          .standoff = standoff,
          .before_fracture = 6,
          .axial = axial,
          .moment = 1000,
          .more_loads = {bench_load::axial_guided, bench_load::torsion_gripped, bench_load::axial_free,
                         bench_load::head_to_knee},
          .line_aside = 40};
}
BenchSizes humerus(std::string_view name, double standoff) {
  return {.name = name,
          .stands_for = "a human humerus",
          .tube = {21, 3, 240, composite},
          .bar = {8, 13, 11, 3.5, 4, 2.9, steel},
          .gap = 5,
          .standoff = standoff,
          .before_fracture = 4,
          .axial = 100,
          .moment = 1000,
          .more_loads = guided_ways};
}
BenchSizes polyacetal_sizes(std::string_view name, double standoff) {
  return {.name = name,
          .stands_for = "a bone surrogate",
          .tube = {20, 3, 240, polyacetal_modulus},
          .bar = {12, 13, 11, 3.5, 4, 2.9, steel},
          .gap = 10,
          .standoff = standoff,
          .before_fracture = 6,
          .axial = 200,
          .moment = 1000,
          .more_loads = held_ways};
}
BenchSizes toy_bone(std::string_view name, double standoff) {
  return {.name = name,
          .stands_for = "a toy dog's bone",
          .tube = {9, 1.3, 100, polyacetal_modulus},
          .bar = {12, 6, 5.5, 1.5, 2, 1.5, steel},
          .gap = 2,
          .standoff = standoff,
          .before_fracture = 6,
          .axial = 20,
          .moment = 100,
          .more_loads = {bench_load::torsion_gripped}};
}
BenchSizes dog_femur(std::string_view name, double standoff) {
  return {.name = name,
          .stands_for = "a small dog's femur",
          .tube = {13, 2, 150, dog},
          .bar = {12, 8, 6.5, 2, 2.6, 1.9, steel},
          .gap = 3,
          .standoff = standoff,
          .before_fracture = 6,
          .axial = 100,
          .moment = 500,
          .more_loads = {bench_load::aside, bench_load::aside_held},
          .line_aside = 15};
}
BenchSizes dog_tibia(std::string_view name, BenchScrews screws) {
  return {.name = name,
          .stands_for = "a dog's tibia",
          .tube = {14, 2.3, 190, dog},
          .bar = {10, 13, 11, 3.5, 4, 2.9, steel},
          .gap = 10,
          .standoff = 1,
          .before_fracture = 5,
          .axial = 100,
          .moment = 1000,
          .screws = screws,
          .more_loads = guided_ways};
}
BenchSizes cylinder_sizes(std::string_view name, BenchScrews screws, double standoff) {
  return {.name = name,
          .stands_for = "a synthetic cylinder",
          .tube = {20, 3, 180, composite},
          .bar = {7, 13, 10, 3, 4, 2.9, steel},
          .gap = 10,
          .standoff = standoff,
          .before_fracture = 3.5,
          .axial = 100,
          .moment = 1000,
          .screws = screws,
          .more_loads = guided_ways,
          .preload = 1500};  // 1500 to 2500 N for 3.5 mm, from memory
}
BenchSizes bridge_sizes(std::string_view name, double modulus) {
  return {.name = name,
          .stands_for = "a synthetic bone model",
          .tube = {20, 3, 190, composite},
          .bar = {10, 13, 11, 3.5, 4, 2.9, modulus},
          .gap = 47,
          .standoff = 1,
          .before_fracture = 5,
          .axial = 100,
          .moment = 1000,
          .more_loads = held_ways};
}
// The four distal holes stand for the condyles' cluster.
BenchSizes human_femur(std::string_view name, double modulus, BenchScrews screws, double standoff) {
  return {.name = name,
          .stands_for = "a human femur, fractured distally",
          .tube = {28, 5, 440, composite},
          .bar = {17, 20, 16, 5, 5.5, 4.4, modulus},
          .gap = 10,
          .standoff = standoff,
          .before_fracture = 13,
          .axial = 100,
          .moment = 1000,
          .screws = screws,
          .more_loads = {bench_load::torsion_gripped, bench_load::head_to_knee, bench_load::head_to_knee_held},
          .line_aside = 40,
          .preload = 2000};  // 2000 to 3000 N for 4.5 mm, from memory
}
BenchSizes human_tibia(std::string_view name, double modulus, double standoff) {
  return {.name = name,
          .stands_for = "a composite human tibia",
          .tube = {25, 4, 320, composite},
          .bar = {14, 14, 13.5, 4.6, 5, 4.3, modulus},
          .gap = 20,
          .standoff = standoff,
          .before_fracture = 7,
          .axial = 100,
          .moment = 1000,
          .more_loads = {bench_load::axial_held, bench_load::axial_guided, bench_load::axial_free,
                         bench_load::torsion_gripped}};
}
BenchSizes toy_radius(std::string_view name, double before_fracture) {
  return {.name = name,
          .stands_for = "a toy dog's radius",
          .tube = {7, 1.1, 90, dog},
          .bar = {9, 5, 4.2, 1.2, 1.6, 1.2, steel},
          .gap = 1,
          .standoff = 0,
          .before_fracture = before_fracture,
          .axial = 20,
          .moment = 50,
          .more_loads = {bench_load::axial_guided}};
}
BenchSizes closed_radius(std::string_view name, const BenchBar& bar) {
  return {.name = name,
          .stands_for = "a dog's radius, osteotomy closed",
          .tube = {13, 2.2, 160, dog},
          .bar = bar,
          .gap = 0,
          .standoff = 0,
          .before_fracture = 0.5 * bar.holes,
          .axial = 200,
          .moment = 500,
          .more_loads = {bench_load::axial_guided}};
}

}  // namespace

const std::vector<BenchSizes>& bench_sizes() {
  using enum BenchScrews;
  using namespace bench;  // NOLINT: names of models
  static const std::vector<BenchSizes> sizes{
      shaft_sizes(shaft, 6, 2, 100),
      shaft_sizes(shaft_off, 6, 6, 100),
      shaft_sizes(closing_shaft, 1, 2, 1000),
      shaft_sizes(closing_shaft_wider, 1.2, 2, 1000),
      humerus(humerus_flush, 0),
      humerus(humerus_near, 2),
      humerus(humerus_far, 5),
      polyacetal_sizes(polyacetal, 1),
      polyacetal_sizes(polyacetal_on, 0),
      {.name = short_fragment,
       .stands_for = "a bone surrogate",
       .tube = {20, 3, 195, polyacetal_modulus},
       .bar = {12, 13, 11, 3.5, 4, 2.9, steel},
       .gap = 1,
       .standoff = 1,
       .before_fracture = 9,
       .axial = 100,
       .moment = 1000,
       .more_loads = {bench_load::hard},
       .hard_moment = 10000},
      toy_bone(toy, 1),
      toy_bone(toy_off, 3),
      {.name = toy_reduced,
       .stands_for = "a toy dog's bone",
       .tube = {9, 1.3, 90, polyacetal_modulus},
       .bar = {8, 6, 5.5, 1.5, 2, 1.5, steel},
       .gap = 0,
       .standoff = 1,
       .before_fracture = 5,
       .axial = 20,
       .moment = 100,
       .more_loads = {bench_load::torsion_gripped}},
      dog_femur(femur, 0),
      dog_femur(femur_off, 1),
      dog_tibia(tibia, locking),
      dog_tibia(tibia_one, near_cortex),
      dog_tibia(tibia_innermost, near_cortex_innermost),
      cylinder_sizes(cylinder, locking, 1),
      cylinder_sizes(cylinder_one, near_cortex, 1),
      cylinder_sizes(cylinder_cortical, cortical, 0),
      bridge_sizes(bridge, steel),
      bridge_sizes(bridge_titanium, titanium),
      human_femur(human_femur_steel, steel, locking, 1),
      human_femur(human_femur_titanium, titanium, locking, 1),
      human_femur(human_femur_one, steel, near_cortex_shaft, 1),
      human_femur(human_femur_cortical, steel, cortical_shaft, 0),
      human_tibia(human_tibia_near, steel, 2),
      human_tibia(human_tibia_far, steel, 30),
      human_tibia(human_tibia_far_titanium, titanium, 30),
      {.name = surrogate,
       .stands_for = "a surrogate of a strong femoral shaft",
       .tube = {27, 5, 250, composite},
       .bar = {11, 18, 17.5, 5.6, 5.5, 4, steel},
       .gap = 10,
       .standoff = 1,
       .before_fracture = 5.5,
       .axial = 100,
       .moment = 1000,
       .more_loads = held_ways},
      {.name = bridged_humerus,
       .stands_for = "a human humerus, comminuted",
       .tube = {22, 4, 300, composite},
       .bar = {10, 16, 13.5, 4.6, 5, 3, steel},
       .gap = 30,
       .standoff = 0,
       .before_fracture = 5,
       .axial = 100,
       .moment = 1000,
       .more_loads = guided_ways},
      toy_radius(radius_open_over, 5.5),
      toy_radius(radius_open_beside, 6),
      closed_radius(closed_radius_front, {6, 12, 10, 3.3, 3.6, 2.4, steel}),
      closed_radius(closed_radius_side, {8, 9, 8, 2.5, 2.8, 1.9, steel}),
  };
  return sizes;
}

bool has_bone_under(const BenchSizes& sizes, int hole) {
  const double distance = (hole - 0.5 - sizes.before_fracture) * sizes.bar.pitch;
  return std::abs(distance) - 0.5 * sizes.gap > 1.1 * sizes.bar.core;
}

}  // namespace gapstrain::models
