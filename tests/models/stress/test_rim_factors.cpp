#include "models/stress/rim_factors.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace gapstrain {

namespace {

// Rim stress of one-way bending of an infinite plate, far stress 1: even part 1, varying part (Kt - 1) cos 2 phi.
Eigen::VectorXd bent_rim(double kt) {
  Eigen::VectorXd stress(32);
  for (int k = 0; k < 32; ++k) stress(k) = 1.0 - (kt - 1.0) * std::cos(4.0 * std::numbers::pi * k / 32);
  return stress;
}

double reissner(double radius_over_thickness) {
  const double nu = 0.3, mu = radius_over_thickness * std::sqrt(10.0);
  const double k0 = std::cyl_bessel_k(0.0, mu), k2 = std::cyl_bessel_k(2.0, mu);
  return 1.5 + (1.5 * (1.0 + nu) * k2 - k0) / ((1.0 + nu) * k2 + 2.0 * k0);
}

}  // namespace

// The table's own row for bending in one direction (ratio of three-dimensional to Reissner's peak, own Fourier
// solution) was not used to build the rule: the rule must give it from the row for twist. Tolerance: the rows' own
// rounding and convergence, 0.5 %.
TEST_CASE("the factor of twist on the varying part alone gives the factor of one-way bending",
          "[models][findings]") {
  struct Row {
    double radius_over_thickness, bending;
  };
  const auto row = GENERATE(Row{0.3, .900}, Row{0.4, .914}, Row{0.5, .924}, Row{0.6, .932}, Row{0.8, .944},
                            Row{1.0, .953}, Row{1.5, .966});
  const double kt = reissner(row.radius_over_thickness);
  const Eigen::VectorXd top = bent_rim(kt);
  const double share = models::solid_over_shell(top, -top, row.radius_over_thickness, 0.3);
  CAPTURE(row.radius_over_thickness);
  CHECK(share == Approx(row.bending).epsilon(0.005));
}

// Likewise for stretching: surface ratio of one-way tension from the row for in-plane shear, peak inside from its
// own.
TEST_CASE("the factors of stretching give those of one-way tension", "[models][findings]") {
  struct Row {
    double radius_over_thickness, surface, inside;
  };
  const auto row =
      GENERATE(Row{0.3, .884, 1.057}, Row{0.4, .900, 1.061}, Row{0.5, .916, 1.060}, Row{0.6, .930, 1.058},
               Row{0.8, .951, 1.051}, Row{1.0, .966, 1.044}, Row{1.5, .988, 1.033});
  CAPTURE(row.radius_over_thickness);
  const auto factors = models::rim_factors(row.radius_over_thickness, 0.3);
  CHECK((1.0 + 2.0 * factors.membrane_surface) / 3.0 == Approx(row.surface).epsilon(0.005));
  const Eigen::VectorXd stretched = bent_rim(3.0);
  CHECK(models::solid_over_shell(stretched, stretched, row.radius_over_thickness, 0.3) ==
        Approx(row.inside).epsilon(0.005));
}

TEST_CASE("even stress round a rim is left as the shell gives it", "[models][findings]") {
  const Eigen::VectorXd even = Eigen::VectorXd::Constant(32, 4.0);
  CHECK(models::solid_over_shell(even, even, 0.6, 0.34) == Approx(1.0));
  CHECK(models::solid_over_shell(even, -even, 0.6, 0.34) == Approx(1.0));
}

TEST_CASE("rim factors follow their table and stay within it", "[models][findings]") {
  CHECK(models::rim_factors(0.6, 0.30).bending_surface == Approx(0.871));
  CHECK(models::rim_factors(0.6, 0.34).bending_surface == Approx(0.864));
  CHECK(models::rim_factors(0.7, 0.30).bending_surface == Approx(0.880));
  CHECK(models::rim_factors(0.1, 0.30).bending_surface == Approx(0.828));
  CHECK(models::rim_factors(4.0, 0.30).membrane_surface == Approx(0.979));
}

}  // namespace gapstrain
