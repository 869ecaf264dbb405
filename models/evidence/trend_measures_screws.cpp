// Number, place and kind of screws; cortices.
#include "models/evidence/trend_measures.h"

#include <Eigen/Dense>

#include <string>
#include <utility>

namespace gapstrain::models {

using namespace bench;  // NOLINT: names of models

double stiffness_between(Benches& benches, std::string_view model, std::string_view other, const Holes& holes,
                         std::string_view load) {
  return benches.stiffness_ratio({model, holes, load}, {other, holes, load});
}

namespace {

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

double shaft_gap_strain(Benches& benches, const std::vector<int>& places, const Rig& rig) {
  return benches.under({shaft, both_sides(places, 6), rig.axial}).gap_strain().value();
}

// Of the human femur: three screws in the shaft with those of the condyles.
const Holes three_in_shaft{1, 6, 12, 14, 15, 16, 17};

Measures not_locked(Benches& benches, const Rig& rig, double least, double most) {
  return {{"axial stiffness, ball heads over locking ones in the shaft",
           stiffness_between(benches, human_femur_cortical, human_femur_steel, three_in_shaft, rig.axial), least,
           most}};
}

// Stiffness of one choice of screws over the one before it.
struct Fewer {
  double axial, torsional;
};
Fewer fewer(Benches& benches, const Rig& rig, const std::vector<int>& these, const std::vector<int>& others) {
  const Compared compared{benches, human_tibia_far, both_sides(these, 7), both_sides(others, 7)};
  return {compared.stiffness(rig.axial), compared.stiffness(rig.torsion)};
}

}  // namespace

Measures more_screws(Benches& benches, const Rig& rig) {
  const Holes three = both_sides({2, 4, 6}, 6), four = both_sides({2, 3, 4, 6}, 6);
  const Compared fourth{benches, shaft, four, three}, fifth{benches, shaft, both_sides({2, 3, 4, 5, 6}, 6), four};
  return {{"axial stiffness, four over three screws a fragment", fourth.stiffness(rig.axial), {}, little},
          {"torsional stiffness, five over four", fifth.stiffness(rig.torsion), {}, little}};
}

std::vector<SetUp> third_and_fourth_set_ups() {
  const auto set_up = [](const char* name, const std::vector<int>& with_fourth) {
    return SetUp{
        name, [with_fourth](Benches& benches) {
          const Holes two = both_sides({2, 6}, 6), three = both_sides({2, 4, 6}, 6);
          const Compared third{benches, shaft, three, two};
          const Compared fourth{benches, shaft, both_sides(with_fourth, 6), three};
          return Measures{
              {"axial stiffness, three over two screws a fragment",
               third.stiffness(on_balls.axial),
               something,
               {}},
              {"axial stiffness, four over three", fourth.stiffness(on_balls.axial), {}, something},
              {"torsional stiffness, four over three", fourth.stiffness(on_balls.torsion), something, {}}};
        }};
  };
  return {set_up("fourth screw next to the inner one, balls on the bone's axis", {2, 3, 4, 6}),
          set_up("fourth screw next to the outer one, balls on the bone's axis", {2, 4, 5, 6})};
}

Measures one_more_inside(Benches& benches, const Rig& rig) {
  std::vector<double> places, strains;
  for (const int place : {4, 3, 2, 1}) {
    places.push_back(place);
    strains.push_back(shaft_gap_strain(benches, {place, 5, 6}, rig));
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

Measures from_the_ends(Benches& benches, const Rig& rig) {
  std::vector<double> counts, strains;
  std::vector<int> places{6};
  for (const int place : {5, 4, 3, 2, 1}) {
    places.push_back(place);
    counts.push_back(static_cast<double>(places.size()));
    strains.push_back(shaft_gap_strain(benches, places, rig));
  }
  return {{"gap strain, six over two screws a fragment", strains.back() / strains.front(), {}, less},
          {"variance that a straight line leaves", unexplained(counts, strains, 1), {}, 0.05}};
}

Measures third_screw(Benches& benches, const Rig& rig) {
  const Compared inside{benches, shaft, both_sides({2, 3, 6}, 6), both_sides({2, 5, 6}, 6)};
  return {{"axial stiffness, third screw one hole from the inner over one from the outer",
           inside.stiffness(rig.axial),
           1.05,
           {}},
          {"torsional stiffness, likewise", inside.stiffness(rig.torsion), 0.95, 1.05}};
}

Measures one_cortex(Benches& benches, const Rig& rig) {
  const Holes holes{1, 2, 9, 10};
  const auto one_over_two = [&](std::string_view load) {
    return stiffness_between(benches, tibia_one, tibia, holes, load);
  };
  return {{"torsional stiffness, one over two cortices", one_over_two(rig.torsion), {}, less},
          {"bending stiffness on the flat, likewise", one_over_two(bench_load::tension), 0.9, 1.1},
          {"bending stiffness on the edge, likewise", one_over_two(bench_load::edge), 0.9, 1.1}};
}

Measures innermost_in_one(Benches& benches, const Rig& rig) {
  const Holes holes = both_sides({2, 3, 5}, 5);
  return {{"torsional stiffness, innermost screws in one over two cortices",
           stiffness_between(benches, tibia_innermost, tibia, holes, rig.torsion), 0.75, less}};
}

Measures reconstruction(Benches& benches, const Rig& rig) {
  Measures measures;
  for (const auto& [name, load] :
       {std::pair{"axial", rig.axial}, {"torsional", rig.torsion}, {"bending", bench_load::tension}})
    measures.push_back({std::string(name) + " stiffness, one over two cortices",
                        stiffness_between(benches, cylinder_one, cylinder, {1, 2, 3, 5, 6, 7}, load), 0.85, 1.15});
  return measures;
}

Measures three_over_two(Benches& benches, const Rig& rig) {
  const Holes two{1, 2, 9, 10}, three{1, 2, 3, 8, 9, 10};
  const Compared third{benches, bridge, three, two};
  return {{"axial stiffness, three over two screws a fragment", third.stiffness(rig.axial), 1.34, 2.50},
          {"axial stiffness with two, N/mm (102.4 measured)", benches.stiffness({bridge, two, rig.axial})},
          {"with three, N/mm (196.8 measured)", benches.stiffness({bridge, three, rig.axial})}};
}

Measures shaft_in_one_cortex(Benches& benches, const Rig& rig) {
  return {{"axial stiffness, shaft's screws in one over two cortices",
           stiffness_between(benches, human_femur_one, human_femur_steel, three_in_shaft, rig.axial), 0.85, 1.15}};
}

Measures ten_over_three(Benches& benches, const Rig& rig) {
  const Compared ten{benches, human_femur_steel, {1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 15, 16, 17}, three_in_shaft};
  return {{"axial stiffness, ten over three screws in the shaft", ten.stiffness(rig.axial), 0.85, 1.15}};
}

Measures not_locked_weaver(Benches& benches, const Rig& rig) { return not_locked(benches, rig, 0.66, 0.96); }
Measures not_locked_cadavers(Benches& benches, const Rig& rig) { return not_locked(benches, rig, 1.04, 1.34); }

Measures humerus_screws(Benches& benches, const Rig& rig) {
  const Compared third{benches, bridged_humerus, {1, 3, 4, 7, 8, 10}, {1, 4, 7, 10}};
  return {{"axial stiffness, three over two screws a fragment", third.stiffness(rig.axial), 0.70, 1.30},
          {"bending stiffness on the flat, likewise", third.stiffness(bench_load::tension), 0.85, 1.15},
          {"bending stiffness on the edge, likewise", third.stiffness(bench_load::edge), 0.70, 1.30},
          {"torsional stiffness, likewise", third.stiffness(rig.torsion), 0.78, 1.22}};
}

Measures two_locked(Benches& benches, const Rig& rig) {
  const double two = benches.stiffness({cylinder, {2, 3, 5, 6}, rig.torsion});
  const double three = benches.stiffness({cylinder_cortical, {1, 2, 3, 5, 6, 7}, rig.torsion});
  return {{"torsional stiffness, two locking over three ball heads a fragment", two / three, {}, less}};
}

Measures fewer_far_off(Benches& benches, const Rig& rig) {
  const std::vector<int> four{2, 4, 5, 7}, three{2, 5, 7}, two{2, 7};
  const Fewer third = fewer(benches, rig, three, four), second = fewer(benches, rig, two, three);
  return {{"axial stiffness, three over four screws a fragment", third.axial, {}, less},
          {"the same, two over three", second.axial, {}, less},
          {"torsional stiffness, three over four", third.torsional, 0.85, 1.15},
          {"the same, two over three", second.torsional, 0.85, 1.15}};
}

}  // namespace gapstrain::models
