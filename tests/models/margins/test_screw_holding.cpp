// A screw's hold in the bone's walls: the law of pull and shear together, and worked figures.
#include "models/margins/screw_holding.h"

#include "models/parts/tightening.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gapstrain::models;

namespace {

ScrewSize cortical_3_5() { return find_screw_size("HA 3.5").value(); }

std::vector<CortexForce> two_walls(double near_pull, double near_shear, double far_pull, double far_shear) {
  return {{false, 2.0 * mm, near_pull * newton, near_shear * newton},
          {true, 2.0 * mm, far_pull * newton, far_shear * newton}};
}

}  // namespace

TEST_CASE("of two demands at once each alone is the plain factor, and both lie on an ellipse",
          "[models][review]") {
  CHECK(factor_of_both(0.5, 0.0) == Approx(2.0));
  CHECK(factor_of_both(0.0, 0.25) == Approx(4.0));
  CHECK(factor_of_both(0.6, 0.8) == Approx(1.0));  // on the ellipse
  CHECK(factor_of_both(-0.6, 0.8) == Approx(1.0));
  CHECK(std::isinf(factor_of_both(0.0, 0.0)));
  // Both demands times the factor lie on the ellipse, and never above what one alone allows.
  const double factor = factor_of_both(0.31, 0.17);
  CHECK(std::pow(0.31 * factor, 2) + std::pow(0.17 * factor, 2) == Approx(1.0));
  CHECK(factor < 1.0 / 0.31);
}

TEST_CASE("a screw that is only pulled holds with its whole thread's pull-out strength", "[models][review]") {
  // 1711 N in two walls of 2 mm: Chapman et al. 1996, J Biomech Eng 118:391 (formula from memory), worked by hand.
  const auto holding = screw_holding(cortical_3_5(), two_walls(300.0, 0.0, 200.0, 0.0));
  REQUIRE(holding);
  CHECK(holding->pull.value() == Approx(500.0));
  CHECK(holding->pull_out.value() == Approx(1711.0).epsilon(3e-4));
  CHECK(holding->factor == Approx(1711.0 / 500.0).epsilon(3e-4));
  // Pushed in the thread bears alike; what one wall pulls and the other pushes cancels.
  CHECK(screw_holding(cortical_3_5(), two_walls(-300.0, 0.0, -200.0, 0.0))->factor == Approx(holding->factor));
  CHECK(std::isinf(screw_holding(cortical_3_5(), two_walls(300.0, 0.0, -300.0, 0.0))->factor));
}

TEST_CASE("a shaft pressed sideways holds with the wall that is pressed hardest", "[models][review]") {
  // By hand: 131 MPa (Reilly and Burstein 1975, J. Biomech. 8:393, from memory) on 3.5 mm x 2 mm bear 917 N.
  const auto holding = screw_holding(cortical_3_5(), two_walls(0.0, 100.0, 0.0, 250.0));
  REQUIRE(holding);
  CHECK(holding->far);
  CHECK(holding->bearing.value() == Approx(917.0));
  CHECK(holding->factor == Approx(917.0 / 250.0));
  auto uneven = two_walls(0.0, 100.0, 0.0, 250.0);
  uneven[1].wall = 8.0 * mm;
  CHECK_FALSE(screw_holding(cortical_3_5(), uneven)->far);
  CHECK(screw_holding(cortical_3_5(), uneven)->factor == Approx(917.0 / 100.0));
}

TEST_CASE("pull and shear together hold less than either, and no walls hold nothing", "[models][review]") {
  const auto holding = screw_holding(cortical_3_5(), two_walls(300.0, 100.0, 200.0, 250.0));
  // By hand: shares 500 / 1711 and 250 / 917.
  CHECK(holding->factor == Approx(1.0 / std::hypot(500.0 / 1711.0, 250.0 / 917.0)).epsilon(3e-4));
  CHECK_FALSE(screw_holding(cortical_3_5(), {}));
}
