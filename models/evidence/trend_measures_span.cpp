// Working length.
#include "models/evidence/trend_measures.h"

#include <algorithm>

namespace gapstrain::models {

using namespace bench;  // NOLINT: names of models
using bench_load::axial, bench_load::torsion, bench_load::tension, bench_load::compression;

Holes both_sides(const std::vector<int>& places, int last) {
  Holes holes;
  for (const int place : places) {
    holes.push_back(last + 1 - place);
    holes.push_back(last + place);
  }
  std::sort(holes.begin(), holes.end());
  return holes;
}

std::vector<Measure> one_hole_omitted(Benches& benches) {
  const Compared omitted{benches, shaft, both_sides({2, 4, 6}, 6), both_sides({1, 4, 6}, 6)};
  return {{"axial flexibility, one hole a side left out over none", 1.0 / omitted.stiffness(axial), 1.6, 2.2},
          {"torsional flexibility, likewise", 1.0 / omitted.stiffness(torsion), 1.6, 2.2}};
}

std::vector<Measure> two_more_empty(Benches& benches) {
  // The distal fragment's four innermost holes stand for the condyles' cluster.
  const Compared longer{benches, shaft, {1, 2, 3, 7, 8, 9, 10}, {1, 3, 5, 7, 8, 9, 10}};
  return {
      {"axial stiffness, two more holes left out on one side over control", longer.stiffness(axial), 0.40, 0.70}};
}

std::vector<Measure> unsupported_span(Benches& benches) {
  const Holes longest = both_sides({4, 5, 6}, 6);
  const Compared longer{benches, shaft, longest, both_sides({1, 5, 6}, 6)};
  const Compared open{benches, shaft, longest, both_sides({2, 5, 6}, 6)};
  return {{"peak plate stress, axial, working length 126 over 18 mm", longer.stress(axial), 1.05, {}},
          {"the same, 126 over 54 mm, both with empty holes", open.stress(axial)}};
}

std::vector<Measure> closing_span(Benches& benches) {
  const Holes closest = both_sides({1, 5, 6}, 6);
  double lowest = 1e9, touching = 0.0;
  for (const int place : {2, 3, 4}) {
    const Compared longer{benches, closing_shaft, both_sides({place, 5, 6}, 6), closest};
    lowest = std::min(lowest, longer.stress(axial));
    touching = std::max(touching, benches.under({closing_shaft, longer.these, axial}).closed);
  }
  return {{"lowest peak plate stress of working lengths 54, 90, 126 mm over that of 18 mm", lowest, {}, 0.95},
          {"largest share of the edge that touches", touching}};
}

std::vector<Measure> plane_model(Benches& benches) {
  const Compared longer{benches, closing_shaft, both_sides({3, 5, 6}, 6), both_sides({1, 5, 6}, 6)};
  return {{"largest motion at the gap, working length 90 over 18 mm", longer.motion(axial), something, {}},
          {"peak plate stress, likewise", longer.stress(axial), {}, less}};
}

std::vector<Measure> contact_hides(Benches& benches) {
  const Holes two = both_sides({5, 6}, 6), five = both_sides({2, 3, 4, 5, 6}, 6);
  const Compared touching{benches, femur, two, five}, clear{benches, femur_off, two, five};
  return {
      {"axial stiffness, two over five screws a fragment, plate on bone", touching.stiffness(axial), 0.85, 1.15},
      {"the same with the load line 15 mm beyond the bone's axis", touching.stiffness(bench_load::aside)},
      {"the same on the axis with the plate 1 mm off", clear.stiffness(axial)}};
}

std::vector<Measure> open_holes(Benches& benches) {
  const Compared open{benches, polyacetal, both_sides({4, 5, 6}, 6), both_sides({2, 5, 6}, 6)};
  return {{"axial stiffness, six holes open over two", open.stiffness(axial)},
          {"peak plate stress, likewise", open.stress(axial)}};
}

std::vector<Measure> gauges(Benches& benches) {
  const Compared longer{benches, polyacetal, both_sides({4, 5, 6}, 6), both_sides({2, 5, 6}, 6)};
  return {{"peak plate stress under 200 N, working length 91 over 39 mm", longer.stress(axial), something, {}}};
}

std::vector<Measure> reduced(Benches& benches) {
  const Compared shorter{benches, toy_reduced, {1, 3, 5, 6, 7, 8}, {1, 2, 3, 6, 7, 8}};
  return {{"stiffness in compression bending, short over long working length",
           shorter.stiffness(compression),
           something,
           {}},
          {"stiffness in torsion, likewise", shorter.stiffness(torsion), something, {}}};
}

std::vector<Measure> toy_working_length(Benches& benches) {
  const Compared shorter{benches, toy, both_sides({1, 5, 6}, 6), both_sides({4, 5, 6}, 6)};
  return {{"stiffness in compression bending, working length 6 over 42 mm",
           shorter.stiffness(compression),
           something,
           {}},
          {"stiffness in torsion, likewise", shorter.stiffness(torsion), something, {}},
          {"peak plate stress in compression bending, likewise", shorter.stress(compression), {}, less}};
}

const Holes short_working{1, 5, 9, 10, 12}, long_working{1, 5, 7, 11, 12};

std::vector<Measure> before_touching(Benches& benches) {
  const Compared shorter{benches, short_fragment, short_working, long_working};
  return {{"stiffness in compression bending, short over long working length",
           shorter.stiffness(compression),
           something,
           {}},
          {"peak plate stress, likewise", shorter.stress(compression), {}, less},
          {"stiffness in tension bending before contact, likewise", shorter.stiffness(tension), something, {}}};
}

std::vector<Measure> after_touching(Benches& benches) {
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

}  // namespace gapstrain::models
