#include "solver/elements/plastic_bending.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gapstrain;
using solver::BarSection;

namespace {

// Moment over the plastic one of fibres that are elastic up to the yield strain, bent `curvature` times as much as
// at first yield. Half-height 1.
double share_of_fibres(BarSection section, double curvature) {
  constexpr int fibres = 200000;
  double moment = 0.0, plastic = 0.0;
  for (int k = 0; k < fibres; ++k) {
    const double height = (k + 0.5) / fibres;
    const double width = section == BarSection::circle ? std::sqrt(1.0 - height * height) : 1.0;
    moment += width * height * std::min(1.0, curvature * height);
    plastic += width * height;
  }
  return moment / plastic;
}

}  // namespace

TEST_CASE("plastic curvature is that of fibres that yield one after another", "[solver][elements]") {
  for (const auto section : {BarSection::rectangle, BarSection::circle})
    for (const double curvature : {1.0, 1.05, 1.5, 3.0, 10.0}) {
      const double share = share_of_fibres(section, curvature);
      INFO(curvature);
      CHECK(solver::plastic_curvature(section, share) ==
            Approx(curvature - share * solver::shape_factor(section)).margin(1e-5).epsilon(1e-5));
    }
}

TEST_CASE("a section is elastic up to the plastic moment over its shape factor", "[solver][elements]") {
  CHECK(solver::shape_factor(BarSection::rectangle) == Approx(1.0 / share_of_fibres(BarSection::rectangle, 1.0)));
  CHECK(solver::shape_factor(BarSection::circle) == Approx(1.0 / share_of_fibres(BarSection::circle, 1.0)));
  for (const auto section : {BarSection::rectangle, BarSection::circle}) {
    CHECK(solver::plastic_curvature(section, 0.999 / solver::shape_factor(section)) == 0.0);
    CHECK(solver::plastic_curvature(section, 1.02 / solver::shape_factor(section)) > 0.0);
  }
}
