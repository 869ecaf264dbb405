// Working length.
#include "models/evidence/trend_measures.h"

#include <algorithm>
#include <numeric>

namespace gapstrain::models {

using namespace bench;  // NOLINT: names of models
using bench_load::tension, bench_load::compression;

Holes both_sides(const std::vector<int>& places, int last) {
  Holes holes;
  for (const int place : places) {
    holes.push_back(last + 1 - place);
    holes.push_back(last + place);
  }
  std::sort(holes.begin(), holes.end());
  return holes;
}

std::vector<SetUp> in_rigs(std::initializer_list<Rig> rigs, Measures (*measure)(Benches&, const Rig&)) {
  std::vector<SetUp> set_ups;
  for (const Rig& rig : rigs)
    set_ups.push_back({std::string(rig.name), [rig, measure](Benches& benches) { return measure(benches, rig); }});
  return set_ups;
}

std::vector<SetUp> as_tested(std::string name, Measures (*measure)(Benches&)) {
  return {{std::move(name), measure}};
}

Measures one_hole_omitted(Benches& benches, const Rig& rig) {
  const Compared omitted{benches, shaft, both_sides({2, 4, 6}, 6), both_sides({1, 4, 6}, 6)};
  return {{"axial flexibility, one hole a side left out over none", 1.0 / omitted.stiffness(rig.axial), 1.6, 2.2},
          {"torsional flexibility, likewise", 1.0 / omitted.stiffness(rig.torsion), 1.6, 2.2}};
}

Measures two_more_empty(Benches& benches, const Rig& rig) {
  // The distal fragment's four innermost holes stand for the condyles' cluster.
  const Compared longer{benches, shaft, {1, 2, 3, 7, 8, 9, 10}, {1, 3, 5, 7, 8, 9, 10}};
  return {{"axial stiffness, two more holes left out on one side over control", longer.stiffness(rig.axial), 0.40,
           0.70}};
}

Measures unsupported_span(Benches& benches, const Rig& rig) {
  const Holes longest = both_sides({4, 5, 6}, 6);
  const Compared longer{benches, shaft, longest, both_sides({1, 5, 6}, 6)};
  const Compared open{benches, shaft, longest, both_sides({2, 5, 6}, 6)};
  return {{"peak plate stress, axial, working length 126 over 18 mm", longer.stress(rig.axial), 1.05, {}},
          {"the same, 126 over 54 mm, both with empty holes", open.stress(rig.axial)}};
}

Measures closing_span(Benches& benches, const Rig& rig) {
  const Holes closest = both_sides({1, 5, 6}, 6);
  double lowest = 1e9, touching = 0.0;
  for (const int place : {2, 3, 4}) {
    const Compared longer{benches, closing_shaft, both_sides({place, 5, 6}, 6), closest};
    lowest = std::min(lowest, longer.stress(rig.axial));
    touching = std::max(touching, benches.under({closing_shaft, longer.these, rig.axial}).closed);
  }
  return {{"lowest peak plate stress of working lengths 54, 90, 126 mm over that of 18 mm", lowest, {}, 0.95},
          {"largest share of the edge that touches", touching}};
}

namespace {

Measures plane_model(Benches& benches, std::string_view model, std::string_view load) {
  const Compared longer{benches, model, both_sides({3, 5, 6}, 6), both_sides({1, 5, 6}, 6)};
  return {{"largest motion at the gap, working length 90 over 18 mm", longer.motion(load), something, {}},
          {"peak plate stress, likewise", longer.stress(load), {}, less}};
}

double mean_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

// The femur's condyles, with the shaft's two outermost screws and one more.
Holes up_to(int innermost) { return {1, 2, innermost, 14, 15, 16, 17}; }

}  // namespace

std::vector<SetUp> plane_model_set_ups() {
  const auto set_up = [](const char* name, std::string_view model, std::string_view load) {
    return SetUp{name, [model, load](Benches& benches) { return plane_model(benches, model, load); }};
  };
  return {set_up("gap 1 mm, balls on the bone's axis", closing_shaft, bench_load::axial),
          set_up("gap 1.2 mm, balls on the bone's axis", closing_shaft_wider, bench_load::axial),
          set_up("gap 1.2 mm, one end held, the other free", closing_shaft_wider, bench_load::axial_free)};
}

Measures contact_hides(Benches& benches, const Rig& rig) {
  const Holes two = both_sides({5, 6}, 6), five = both_sides({2, 3, 4, 5, 6}, 6);
  const Compared touching{benches, femur, two, five}, clear{benches, femur_off, two, five};
  return {{"axial stiffness, two over five screws a fragment, plate on bone", touching.stiffness(rig.axial), 0.85,
           1.15},
          {"the same with the plate 1 mm off", clear.stiffness(rig.axial)}};
}

// Gauges between holes 6 and 7, over the gap, 4 and 5, 2 and 3.
Measures gap_gauge(Benches& benches, const Rig& rig) {
  const Holes six_open = both_sides({4, 5, 6}, 6), two_open = both_sides({2, 3, 4, 5, 6}, 6);
  const auto read = [&](const Holes& holes) {
    return benches.gauges({polyacetal_on, holes, rig.axial}, {78, 52, 26});
  };
  const auto open = read(six_open), filled = read(two_open);
  const double elsewhere_open = mean_of({open[1], open[2]}), elsewhere_filled = mean_of({filled[1], filled[2]});
  return {{"strain over the gap, six holes open over two", open[0] / filled[0], 0.85, 1.15},
          {"strain of the other two gauges, likewise", elsewhere_open / elsewhere_filled, something, {}},
          {"strain over the gap over that of the others, six open", open[0] / elsewhere_open, something, {}},
          {"the same, two open", filled[0] / elsewhere_filled, something, {}}};
}

Measures six_gauges(Benches& benches, const Rig& rig) {
  const std::vector<double> places{39, 52, 65, 78, 91, 104};
  const auto strain = [&](const Holes& holes) {
    return mean_of(benches.gauges({polyacetal, holes, rig.axial}, places));
  };
  const Holes longer = both_sides({4, 5, 6}, 6), shorter = both_sides({2, 5, 6}, 6);
  const Compared peak{benches, polyacetal, longer, shorter};
  return {{"mean strain of six gauges between holes, 200 N, working length 91 over 39 mm",
           strain(longer) / strain(shorter),
           something,
           {}},
          {"peak plate stress, likewise", peak.stress(rig.axial)}};
}

Measures reduced(Benches& benches, const Rig& rig) {
  const Compared shorter{benches, toy_reduced, {1, 3, 5, 6, 7, 8}, {1, 2, 3, 6, 7, 8}};
  return {{"stiffness in compression bending, short over long working length",
           shorter.stiffness(compression),
           something,
           {}},
          {"stiffness in torsion, likewise", shorter.stiffness(rig.torsion), something, {}}};
}

Measures toy_working_length(Benches& benches, const Rig& rig) {
  const Compared shorter{benches, toy, both_sides({1, 5, 6}, 6), both_sides({4, 5, 6}, 6)};
  return {{"stiffness in compression bending, working length 6 over 42 mm",
           shorter.stiffness(compression),
           something,
           {}},
          {"stiffness in torsion, likewise", shorter.stiffness(rig.torsion), something, {}},
          {"peak plate stress in compression bending, likewise", shorter.stress(compression), {}, less}};
}

const Holes short_working{1, 5, 9, 10, 12}, long_working{1, 5, 7, 11, 12};

Measures before_touching(Benches& benches) {
  const Compared shorter{benches, short_fragment, short_working, long_working};
  return {{"stiffness in compression bending, short over long working length",
           shorter.stiffness(compression),
           something,
           {}},
          {"peak plate stress, likewise", shorter.stress(compression), {}, less},
          {"stiffness in tension bending before contact, likewise", shorter.stiffness(tension), something, {}}};
}

Measures after_touching(Benches& benches) {
  const BenchState before{short_fragment, long_working, tension},
      after{short_fragment, long_working, bench_load::hard};
  const LoadOutcome &light = benches.under(before), &hard = benches.under(after);
  return {{"stiffness at 10 over 1 N m in tension bending, long working length",
           benches.stiffness_ratio(after, before),
           1.05,
           {}},
          {"peak plate stress a N m, likewise", (hard.peak_stress / light.peak_stress).value() / 10.0, {}, 0.95},
          {"share of the edge that touches", hard.closed}};
}

Measures strain_at_fracture(Benches& benches, const Rig& rig) {
  const Compared longer{benches, human_femur_steel, up_to(7), up_to(12)};
  return {{"largest gap strain, working length 140 over 40 mm", longer.gap_strain(rig.axial), 1.31, 2.44}};
}

Measures motion_of_long_span(Benches& benches, const Rig& rig) {
  const Compared longer{benches, human_femur_steel, up_to(5), up_to(9)};
  return {{"axial motion at the bone's axis, working length 180 over 100 mm",
           longer.axial_motion(rig.axial),
           something,
           {}},
          {"largest motion sideways, likewise", longer.shear(rig.axial), something, {}}};
}

Measures motion_of_spans(Benches& benches, const Rig& rig) {
  const Compared longer{benches, human_femur_titanium, up_to(9), up_to(12)};
  return {{"axial motion at the bone's axis, working length 100 over 40 mm", longer.axial_motion(rig.axial),
           something, 1.31},
          {"largest motion sideways, likewise", longer.shear(rig.axial), something, {}}};
}

Measures spans_far_off(Benches& benches, const Rig& rig) {
  const auto over_nearest = [&](int place) {
    return Compared{benches, human_tibia_far, both_sides({place, 6, 7}, 7), both_sides({2, 6, 7}, 7)}.stiffness(
        rig.axial);
  };
  return {{"axial stiffness, innermost screws in the second place over the first", over_nearest(3), 0.57, 0.87},
          {"the same, third place", over_nearest(4)},
          {"the same, fourth place", over_nearest(5), 0.44, 0.82}};
}

Measures open_hole(Benches& benches, const Rig& rig) {
  const Holes holes{3, 4, 5, 7, 8, 9};
  const BenchState over{radius_open_over, holes, rig.axial}, beside{radius_open_beside, holes, rig.axial};
  return {
      {"axial stiffness, open hole over the gap over beside it", benches.stiffness_ratio(over, beside), {}, less},
      {"gap strain, likewise",
       benches.under(over).gap_strain().value() / benches.under(beside).gap_strain().value(),
       something,
       {}}};
}

}  // namespace gapstrain::models
