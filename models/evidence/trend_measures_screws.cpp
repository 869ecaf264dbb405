// Screws, distance of plate and bone, length of the plate, cortices.
#include "models/evidence/trend_measures.h"

#include <Eigen/Dense>

#include <string>

namespace gapstrain::models {

using namespace bench;  // NOLINT: names of models
using bench_load::axial, bench_load::torsion, bench_load::tension, bench_load::compression;

namespace {

// The same screws in two models.
double stiffness_between(Benches& benches, std::string_view model, std::string_view other, const Holes& holes,
                         std::string_view load) {
  return benches.stiffness_ratio({model, holes, load}, {other, holes, load});
}

// Before anything touches.
double unpressed_axial(Benches& benches, std::string_view model, const Holes& holes) {
  return benches.outcome(model, holes).stiffness.axial.value();
}

// What a polynomial fitted by least squares leaves of the variance.
double unexplained(const std::vector<double>& x, const std::vector<double>& y, int degree) {
  const auto count = static_cast<Eigen::Index>(x.size());
  const Eigen::VectorXd along = Eigen::Map<const Eigen::VectorXd>(x.data(), count);
  const Eigen::VectorXd values = Eigen::Map<const Eigen::VectorXd>(y.data(), count);
  Eigen::MatrixXd powers = Eigen::MatrixXd::Ones(count, degree + 1);
  for (int k = 1; k <= degree; ++k) powers.col(k) = powers.col(k - 1).cwiseProduct(along);
  const Eigen::VectorXd left = values - powers * powers.colPivHouseholderQr().solve(values);
  return left.squaredNorm() / (values.array() - values.mean()).square().sum();
}

}  // namespace

std::vector<Measure> more_screws(Benches& benches) {
  const Holes three = both_sides({2, 4, 6}, 6), four = both_sides({2, 3, 4, 6}, 6);
  const Compared fourth{benches, shaft, four, three}, fifth{benches, shaft, both_sides({2, 3, 4, 5, 6}, 6), four};
  return {{"axial stiffness, four over three screws a fragment", fourth.stiffness(axial), {}, little},
          {"torsional stiffness, five over four", fifth.stiffness(torsion), {}, little}};
}

std::vector<Measure> third_and_fourth(Benches& benches) {
  const Holes two = both_sides({2, 6}, 6), three = both_sides({2, 4, 6}, 6), four = both_sides({2, 3, 4, 6}, 6);
  const Compared third{benches, shaft, three, two}, fourth{benches, shaft, four, three};
  return {{"axial stiffness, three over two screws a fragment", third.stiffness(axial), something, {}},
          {"axial stiffness, four over three", fourth.stiffness(axial), {}, something},
          {"torsional stiffness, four over three", fourth.stiffness(torsion), something, {}}};
}

double gap_strain(Benches& benches, const std::vector<int>& places) {
  return benches.under({shaft, both_sides(places, 6), axial}).gap_strain().value();
}

std::vector<Measure> one_more_inside(Benches& benches) {
  std::vector<double> places, strains;
  for (const int place : {4, 3, 2, 1}) {
    places.push_back(place);
    strains.push_back(gap_strain(benches, {place, 5, 6}));
  }
  return {{"gap strain, third screw next to the gap over furthest from it",
           strains.back() / strains.front(),
           {},
           less},
          {"variance that a straight line leaves, over a parabola's",
           unexplained(places, strains, 1) / unexplained(places, strains, 2),
           4.0,
           {}},
          {"variance that a straight line leaves", unexplained(places, strains, 1), 0.01, {}}};
}

std::vector<Measure> from_the_ends(Benches& benches) {
  std::vector<double> counts, strains;
  std::vector<int> places{6};
  for (const int place : {5, 4, 3, 2, 1}) {
    places.push_back(place);
    counts.push_back(static_cast<double>(places.size()));
    strains.push_back(gap_strain(benches, places));
  }
  return {{"gap strain, six over two screws a fragment", strains.back() / strains.front(), {}, less},
          {"variance that a straight line leaves", unexplained(counts, strains, 1), {}, 0.05}};
}

std::vector<Measure> third_screw(Benches& benches) {
  const Compared inside{benches, shaft, both_sides({2, 3, 6}, 6), both_sides({2, 5, 6}, 6)};
  return {{"axial stiffness, third screw one hole from the inner over one from the outer",
           inside.stiffness(axial),
           1.05,
           {}},
          {"torsional stiffness, likewise", inside.stiffness(torsion), 0.95, 1.05}};
}

std::vector<Measure> six_off(Benches& benches) {
  const Holes holes = both_sides({2, 4, 6}, 6);
  return {
      {"axial stiffness, plate 6 mm off over 2 mm", stiffness_between(benches, shaft_off, shaft, holes, axial),
       0.82, 0.93},
      {"torsional stiffness, likewise", stiffness_between(benches, shaft_off, shaft, holes, torsion), 0.82, 0.93}};
}

std::vector<Measure> flush_and_off(Benches& benches) {
  const Holes holes = both_sides({1, 2, 4}, 4);
  return {{"axial stiffness, plate 2 mm off over flush",
           stiffness_between(benches, humerus_near, humerus_flush, holes, axial), 0.9, 1.1},
          {"torsional stiffness, likewise",
           stiffness_between(benches, humerus_near, humerus_flush, holes, torsion), 0.9, 1.1},
          {"axial stiffness, 2 mm off over flush, no plate touching",
           unpressed_axial(benches, humerus_near, holes) / unpressed_axial(benches, humerus_flush, holes)},
          {"axial stiffness, plate 5 mm off over flush",
           stiffness_between(benches, humerus_far, humerus_flush, holes, axial),
           {},
           0.9},
          {"torsional stiffness, likewise",
           stiffness_between(benches, humerus_far, humerus_flush, holes, torsion),
           {},
           0.9}};
}

std::vector<Measure> toy_distance(Benches& benches) {
  const Holes holes = both_sides({2, 5, 6}, 6);
  return {{"stiffness in compression bending, plate 3 mm off over 1 mm",
           stiffness_between(benches, toy_off, toy, holes, compression), 0.95, 1.05},
          {"stiffness in torsion, likewise", stiffness_between(benches, toy_off, toy, holes, torsion), {}, less}};
}

std::vector<Measure> shorter_plate(Benches& benches) {
  const Compared shorter{benches, shaft, both_sides({2, 3, 4}, 6), both_sides({2, 4, 6}, 6)};
  return {{"axial stiffness, three screws over four holes a side over six", shorter.stiffness(axial), {}, 0.95},
          {"torsional stiffness, likewise", shorter.stiffness(torsion), 0.95, 1.05}};
}

std::vector<Measure> twelve_holes(Benches& benches) {
  const Holes twelve{1, 8, 9, 10, 11, 12};
  const Compared ten{benches, short_fragment, twelve, {3, 8, 9, 10, 11, 12}};
  const Compared six{benches, short_fragment, twelve, {7, 8, 9, 10, 11, 12}};
  return {{"stiffness in compression bending, 12 holes over 6", six.stiffness(compression), something, {}},
          {"the same, 12 holes over 10", ten.stiffness(compression), something, {}},
          {"peak plate stress, 12 holes over 6", six.stress(compression), {}, less}};
}

std::vector<Measure> one_cortex(Benches& benches) {
  const Holes holes{1, 2, 9, 10};
  const auto edge = [&](std::string_view model) {
    return benches.outcome(model, holes).stiffness.bending_z.value();
  };
  return {{"torsional stiffness, one over two cortices",
           stiffness_between(benches, tibia_one, tibia, holes, torsion),
           {},
           less},
          {"bending stiffness on the flat, likewise", stiffness_between(benches, tibia_one, tibia, holes, tension),
           0.9, 1.1},
          {"bending stiffness on the edge, likewise", edge(tibia_one) / edge(tibia), 0.9, 1.1}};
}

std::vector<Measure> innermost_in_one(Benches& benches) {
  const Holes holes = both_sides({2, 3, 5}, 5);
  return {{"torsional stiffness, innermost screws in one over two cortices",
           stiffness_between(benches, tibia_innermost, tibia, holes, torsion), 0.75, less}};
}

std::vector<Measure> reconstruction(Benches& benches) {
  std::vector<Measure> measures;
  for (const auto& [name, load] : {std::pair{"axial", axial}, {"torsional", torsion}, {"bending", tension}})
    measures.push_back({std::string(name) + " stiffness, one over two cortices",
                        stiffness_between(benches, cylinder_one, cylinder, {1, 2, 3, 5, 6, 7}, load), 0.85, 1.15});
  return measures;
}

}  // namespace gapstrain::models
