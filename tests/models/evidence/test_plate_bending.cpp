// A plate alone in four-point bending, held against beam theory.
#include "models/evidence/plate_bending.h"

#include "solver/elements/plastic_bending.h"

#include <catch2/catch.hpp>

#include <cmath>

namespace gapstrain {

namespace {

constexpr double width = 10.0, thickness = 3.0, length = 120.0, youngs_modulus = 190000.0, yield = 800.0;

models::Plate bar_with(int holes, double diameter, double pitch) {
  using namespace models;
  Plate plate;
  plate.length = length * mm;
  plate.sections = {{0.5 * length * mm, width * mm, thickness * mm}};
  for (int k = 0; k < holes; ++k) {
    const Length at = (0.5 * length + (k - 0.5 * (holes - 1)) * pitch) * mm;
    plate.holes.push_back({at, HoleShape::round, diameter * mm, diameter * mm});
  }
  plate.material = {"test metal", youngs_modulus * mpa, 0.3, yield * mpa, "made up for tests"};
  return plate;
}

// Plastic displacement of the inner rollers under a load, mm: curvature beyond the elastic one (plastic_bending.h)
// times the moment of a unit load, along the bar. `metal`: width left beside holes at a place from the middle.
template <class Metal>
double plastic_displacement(double load, double inner_span, double arm, const Metal& metal) {
  constexpr int steps = 20000;
  const double half = 0.5 * inner_span + arm, first_yield = 2.0 * yield / youngs_modulus / thickness;
  double sum = 0.0;
  for (int k = 0; k < steps; ++k) {
    const double place = half * (k + 0.5) / steps;  // from the middle: both halves are alike
    const double unit = 0.5 * std::min(half - place, arm);
    const double full = yield * metal(place) * thickness * thickness / 4.0;
    const double share = std::min(load * unit / full, 0.9999);
    sum +=
        2.0 * half / steps * unit * first_yield * solver::plastic_curvature(solver::BarSection::rectangle, share);
  }
  return sum;
}

template <class Metal>
double proof_load(double inner_span, double arm, const Metal& metal) {
  double low = 0.0, high = 2.0 * yield * width * thickness * thickness / 4.0 / arm;
  for (int halving = 0; halving < 40; ++halving) {
    const double middle = 0.5 * (low + high);
    (plastic_displacement(middle, inner_span, arm, metal) > 0.002 * inner_span ? high : low) = middle;
  }
  return low;
}

}  // namespace

// Holes of 0.6 mm take 1 % of the width here and there: E I = 190000 x 10 x 27 / 12 = 4.275 N m^2, and the offset
// is that of fibres that yield one after another.
TEST_CASE("a plate that is nearly solid bends as a bar, and its strength is that of its fibres at the offset",
          "[models][yield]") {
  models::MeshDensity density;
  density.refinement = 0.5;
  const auto bent = models::bend_plate(bar_with(6, 0.6, 15.0), density);
  REQUIRE(bent);
  CHECK(bent->inner_span == Approx(30.0));
  CHECK(bent->arm == Approx(15.0));
  CHECK(bent->structural_stiffness ==
        Approx(youngs_modulus * width * std::pow(thickness, 3) / 12.0).epsilon(0.03));
  REQUIRE(bent->strength);
  const double by_hand = proof_load(30.0, 15.0, [](double) { return width; });
  CHECK(*bent->proof_load == Approx(by_hand).epsilon(0.01));
  CHECK(*bent->strength == Approx(0.5 * by_hand * 15.0).epsilon(0.01));
  // Between the moment at first yield and the full one: the offset is reached on the way.
  const double full = yield * width * thickness * thickness / 4.0;
  CHECK(*bent->strength > full / 1.5);
  CHECK(*bent->strength < full);
}

TEST_CASE("holes take from a plate's stiffness, and from its strength what their width takes", "[models][yield]") {
  models::MeshDensity density;
  density.refinement = 0.5;
  const auto solid = models::bend_plate(bar_with(6, 0.6, 15.0), density);
  const auto holed = models::bend_plate(bar_with(6, 5.0, 15.0), density);
  REQUIRE(solid);
  REQUIRE(holed);
  CHECK(holed->structural_stiffness < 0.95 * solid->structural_stiffness);
  CHECK(holed->structural_stiffness > 0.5 * solid->structural_stiffness);
  const auto metal = [](double place) {
    const double off = std::abs(place - (place < 15.0 ? 7.5 : place < 30.0 ? 22.5 : 37.5));
    return off < 2.5 ? width - 2.0 * std::sqrt(6.25 - off * off) : width;
  };
  const double by_hand = proof_load(30.0, 15.0, metal);
  CHECK(*holed->proof_load == Approx(by_hand).epsilon(0.01));
  CHECK(*holed->strength < 0.75 * *solid->strength);
}

TEST_CASE("a plate without yield strength has stiffness alone, one with three holes is not tested",
          "[models][yield]") {
  models::MeshDensity density;
  density.refinement = 0.4;
  auto plate = bar_with(4, 4.0, 20.0);
  plate.material.yield_strength.reset();
  const auto bent = models::bend_plate(plate, density);
  REQUIRE(bent);
  CHECK(bent->stiffness > 0.0);
  CHECK(!bent->strength);
  CHECK(!models::bend_plate(bar_with(3, 4.0, 20.0), density));
}

}  // namespace gapstrain
