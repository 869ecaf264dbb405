// Constants and laws of lives under repeated stress.
#include "models/stress/fatigue.h"

#include "models/stress/stress_cycle.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace gapstrain::models;

TEST_CASE("a line runs through 0.9 of the ultimate strength at 10^3 cycles and the fatigue strength at 10^7",
          "[models][review]") {
  // Worked by hand from O. H. Basquin's form (1910, Proc. ASTM 10:625): ultimate strength and strength at 10^7 of
  // the row (biomaterials textbooks, from memory), a in MPa and b rounded to the digits given.
  struct Row {
    const char* metal;
    double ultimate, strength, a, b;
  };
  const Row rows[] = {{"316L annealed", 520.0, 250.0, 749.0, -0.068},
                      {"316L cold worked, low", 930.0, 310.0, 1763.0, -0.108},
                      {"316L cold worked, middle", 930.0, 380.0, 1513.0, -0.086},
                      {"316L cold worked, high", 930.0, 448.0, 1338.0, -0.068},
                      {"titanium grade 4, cold worked", 760.0, 300.0, 1269.0, -0.090},
                      {"Ti-6Al-4V ELI", 965.0, 560.0, 1207.0, -0.048},
                      {"Ti-6Al-7Nb", 1000.0, 500.0, 1399.0, -0.064}};
  for (const Row& row : rows) {
    CAPTURE(row.metal);
    const FatigueLine line = fatigue_line(row.ultimate * mpa, row.strength * mpa);
    CHECK(line.a == Approx(row.a).margin(0.6));
    CHECK(line.b == Approx(row.b).margin(0.0006));
    CHECK(cycles_to_failure(line, 0.9 * row.ultimate * mpa) == Approx(1e3));
    CHECK(cycles_to_failure(line, row.strength * mpa) == Approx(1e7));
  }
}

TEST_CASE("lives fall with the amplitude, go on falling beyond 10^7 and are never below one cycle",
          "[models][review]") {
  const FatigueLine line = fatigue_line(930.0 * mpa, 380.0 * mpa);
  CHECK(cycles_to_failure(line, 300.0 * mpa) > 1e7);
  CHECK(std::isfinite(cycles_to_failure(line, 100.0 * mpa)));
  CHECK(std::isinf(cycles_to_failure(line, 0.0 * mpa)));
  CHECK(cycles_to_failure(line, 1e5 * mpa) == 1.0);
}

TEST_CASE(
    "Goodman: a pulsating stress counts by its amplitude and the share of the ultimate strength that its mean "
    "leaves",
    "[models][review]") {
  // R = 0.1, as fatigue tests of plates are run: the mean is (1 + R) / (1 - R) = 1.222 of the amplitude. By hand,
  // with an amplitude of 200 MPa and an ultimate strength of 930 MPa: 200 / (1 - 244.4 / 930) = 271.3 MPa.
  const StressCycle cycle = stress_cycle({2.0 * 200.0 * 0.1 / 0.9, 0.0, 0.0}, {2.0 * 200.0 / 0.9, 0.0, 0.0});
  CHECK(cycle.amplitude.value() == Approx(200.0));
  CHECK(cycle.mean.value() / cycle.amplitude.value() == Approx(1.222).epsilon(2e-4));
  CHECK(reversed_amplitude(cycle, 930.0 * mpa, std::nullopt).value() == Approx(271.3).epsilon(2e-4));
}

TEST_CASE("a mean that presses counts as none", "[models][review]") {
  const StressCycle pressed = stress_cycle({0.0, 0.0, 0.0}, {-400.0, 0.0, 0.0});
  CHECK(pressed.amplitude.value() == Approx(200.0));
  CHECK(pressed.mean.value() == Approx(-200.0));
  CHECK(reversed_amplitude(pressed, 930.0 * mpa, std::nullopt) == pressed.amplitude);
}

TEST_CASE("a mean that would pass the yield strength is what yielding once leaves of it", "[models][review]") {
  const StressCycle high{150.0 * mpa, 650.0 * mpa}, low{150.0 * mpa, 500.0 * mpa};
  // By hand: 690 - 150 = 540 MPa are left, 150 / (1 - 540 / 930) = 357.7 MPa.
  CHECK(reversed_amplitude(high, 930.0 * mpa, 690.0 * mpa).value() == Approx(357.7).epsilon(2e-4));
  CHECK(reversed_amplitude(low, 930.0 * mpa, 690.0 * mpa) == reversed_amplitude(low, 930.0 * mpa, std::nullopt));
  // An amplitude beyond yield leaves no mean.
  CHECK(reversed_amplitude({700.0 * mpa, 650.0 * mpa}, 930.0 * mpa, 690.0 * mpa).value() == 700.0);
  CHECK(std::isinf(reversed_amplitude({10.0 * mpa, 930.0 * mpa}, 930.0 * mpa, std::nullopt).value()));
}

TEST_CASE("a cycle is half the range by von Mises, its mean the trace of the mean stress", "[models][review]") {
  // By hand. Shear alone: sqrt(3) times the shear stress, no mean.
  const StressCycle shear = stress_cycle({0.0, 0.0, 0.0}, {0.0, 0.0, 100.0});
  CHECK(shear.amplitude.value() == Approx(std::sqrt(3.0) * 50.0));
  CHECK(shear.mean.value() == Approx(0.0).margin(1e-12));
  // Pulled alike both ways: von Mises sees one of them, the trace both.
  const StressCycle both = stress_cycle({100.0, 100.0, 0.0}, {300.0, 300.0, 0.0});
  CHECK(both.amplitude.value() == Approx(100.0));
  CHECK(both.mean.value() == Approx(400.0));
  // A stress that changes sides has an amplitude although its von Mises value stays.
  const StressCycle turned = stress_cycle({100.0, 0.0, 0.0}, {-100.0, 0.0, 0.0});
  CHECK(turned.amplitude.value() == Approx(100.0));
  CHECK(turned.mean.value() == Approx(0.0).margin(1e-12));
}
