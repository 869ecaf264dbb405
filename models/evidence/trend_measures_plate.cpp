// The plate: distance from the bone, length, metal, plane of bending; and what a test does to it.
#include "models/evidence/trend_measures.h"

#include <algorithm>
#include <numeric>

namespace gapstrain::models {

using namespace bench;  // NOLINT: names of models
using bench_load::compression;

namespace {

// N/mm. Bottlang et al. 2009, J Bone Joint Surg Am 91:1985, table I.
constexpr double measured_axial = 2900.0;
const Holes first_third_fifth{1, 3, 5, 7, 9, 11};

}  // namespace

Measures six_off(Benches& benches, const Rig& rig) {
  const Holes holes = both_sides({2, 4, 6}, 6);
  return {{"axial stiffness, plate 6 mm off over 2 mm",
           stiffness_between(benches, shaft_off, shaft, holes, rig.axial), 0.82, 0.93},
          {"torsional stiffness, likewise", stiffness_between(benches, shaft_off, shaft, holes, rig.torsion), 0.82,
           0.93}};
}

Measures flush_and_off(Benches& benches, const Rig& rig) {
  const Holes holes = both_sides({1, 2, 4}, 4);
  const auto over_flush = [&](std::string_view model, std::string_view load) {
    return stiffness_between(benches, model, humerus_flush, holes, load);
  };
  return {{"axial stiffness, plate 2 mm off over flush", over_flush(humerus_near, rig.axial), 0.9, 1.1},
          {"torsional stiffness, likewise", over_flush(humerus_near, rig.torsion), 0.9, 1.1},
          {"axial stiffness, plate 5 mm off over flush", over_flush(humerus_far, rig.axial), {}, 0.9},
          {"torsional stiffness, likewise", over_flush(humerus_far, rig.torsion), {}, 0.9}};
}

Measures toy_distance(Benches& benches, const Rig& rig) {
  const Holes holes = both_sides({2, 5, 6}, 6);
  return {
      {"stiffness in compression bending, plate 3 mm off over 1 mm",
       stiffness_between(benches, toy_off, toy, holes, compression), 0.95, 1.05},
      {"stiffness in torsion, likewise", stiffness_between(benches, toy_off, toy, holes, rig.torsion), {}, less}};
}

Measures far_off(Benches& benches, const Rig& rig) {
  const Holes holes = both_sides({2, 4, 6, 7}, 7);
  const auto ratio = [&](std::string_view load) {
    return stiffness_between(benches, human_tibia_far, human_tibia_near, holes, load);
  };
  return {{"axial stiffness, plate 30 mm off over 2 mm", ratio(rig.axial), {}, less},
          {"torsional stiffness, likewise", ratio(rig.torsion), {}, less}};
}

Measures shorter_plate(Benches& benches, const Rig& rig) {
  const Compared shorter{benches, shaft, both_sides({2, 3, 4}, 6), both_sides({2, 4, 6}, 6)};
  return {
      {"axial stiffness, three screws over four holes a side over six", shorter.stiffness(rig.axial), {}, 0.95},
      {"torsional stiffness, likewise", shorter.stiffness(rig.torsion), 0.95, 1.05}};
}

Measures twelve_holes(Benches& benches) {
  const Holes twelve{1, 8, 9, 10, 11, 12}, six_holes{7, 8, 9, 10, 11, 12};
  const Compared ten{benches, short_fragment, twelve, {3, 8, 9, 10, 11, 12}};
  const Compared six{benches, short_fragment, twelve, six_holes};
  // Between the six-hole plate's holes.
  const auto strain = [&](const Holes& holes) {
    const auto gauges = benches.gauges({short_fragment, holes, compression}, {91, 104, 117, 130, 143});
    return std::accumulate(gauges.begin(), gauges.end(), 0.0);
  };
  return {{"stiffness in compression bending, 12 holes over 6", six.stiffness(compression), something, {}},
          {"the same, 12 holes over 10", ten.stiffness(compression), something, {}},
          {"mean plate strain between holes, 12 holes over 6", strain(twelve) / strain(six_holes), {}, less},
          {"peak plate stress, likewise", six.stress(compression)}};
}

Measures thirteen_holes(Benches& benches, const Rig& rig) {
  const Compared longer{benches, human_femur_steel, {1, 6, 12, 14, 15, 16, 17}, {9, 10, 12, 14, 15, 16, 17}};
  return {{"axial stiffness, 13 holes in the shaft over 5", longer.stiffness(rig.axial), something, 1.32}};
}

Measures metal_far_off(Benches& benches, const Rig& rig) {
  const Holes holes = both_sides({2, 4, 6, 7}, 7);
  const auto ratio = [&](std::string_view load) {
    return stiffness_between(benches, human_tibia_far, human_tibia_far_titanium, holes, load);
  };
  return {{"axial stiffness, steel over titanium", ratio(rig.axial), 0.97, 1.27},
          {"torsional stiffness, likewise", ratio(rig.torsion), 0.92, 1.22}};
}

Measures metal_of_femur(Benches& benches, const Rig& rig) {
  const auto ratio = [&](std::string_view load) {
    return stiffness_between(benches, human_femur_titanium, human_femur_steel, {1, 6, 12, 14, 15, 16, 17}, load);
  };
  return {{"axial stiffness, titanium over steel", ratio(rig.axial), 0.44, 0.82},
          {"torsional stiffness, likewise", ratio(rig.torsion), 0.64, 0.94}};
}

Measures metal_in_torsion(Benches& benches, const Rig& rig) {
  return {{"torsional stiffness, titanium over steel",
           stiffness_between(benches, bridge_titanium, bridge, {1, 2, 3, 8, 9, 10}, rig.torsion),
           {},
           less}};
}

Measures edge_over_flat(Benches& benches) {
  const Holes holes{1, 3, 4, 7, 8, 10};
  return {{"bending stiffness, plate on its edge over on its flat",
           benches.stiffness_ratio({bridged_humerus, holes, bench_load::edge},
                                   {bridged_humerus, holes, bench_load::tension}),
           1.42, 2.64}};
}

Measures closed_radius(Benches& benches, const Rig& rig) {
  const double front = benches.stiffness({closed_radius_front, {1, 2, 3, 4, 5, 6}, rig.axial});
  const double side = benches.stiffness({closed_radius_side, {1, 2, 4, 5, 7, 8}, rig.axial});
  return {{"axial stiffness, osteotomy plated and closed over intact",
           front / benches.intact_axial_stiffness(closed_radius_front), 0.85, 1.15},
          {"axial stiffness, larger over smaller plate", front / side, 0.85, 1.15}};
}

Measures ways_to_hold(Benches& benches) {
  std::vector<double> stiffness;
  for (const Rig& rig : {on_balls, held_and_ball, held_and_guided, from_free_end})
    stiffness.push_back(benches.gap_stiffness({human_tibia_near, both_sides({2, 4, 6, 7}, 7), rig.axial}));
  const auto [softest, stiffest] = std::minmax_element(stiffness.begin(), stiffness.end());
  return {{"stiffness over the gap, stiffest over softest of four ways", *stiffest / *softest, 4.2, 7.8}};
}

Measures near_over_far(Benches& benches, const Rig& rig) {
  const LoadOutcome& gap = benches.under({human_femur_steel, {1, 6, 12, 14, 15, 16, 17}, rig.axial});
  return {{"axial motion, near over far cortex", (gap.near_motion / gap.far_motion).value(), 0.36, 0.68}};
}

Measures locked_stiffness(Benches& benches, const Rig& rig) {
  const double ours = benches.stiffness({surrogate, first_third_fifth, rig.axial});
  return {{"axial stiffness, kN/mm", 1e-3 * ours, 2.03, 3.77}};
}

Measures bonded_too_stiff(Benches& benches, const Rig& rig) {
  const double ours = benches.stiffness({surrogate, first_third_fifth, rig.axial});
  return {{"axial stiffness, ours over measured", ours / measured_axial, something, {}}};
}

}  // namespace gapstrain::models
