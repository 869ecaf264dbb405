#include "mesh/quality.h"

#include "tests/mesh/mesh_checks.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

namespace gapstrain::mesh {

namespace {

ShellMesh in_plane(const Eigen::MatrixX2d& nodes, std::vector<Quad> quads, std::vector<Triangle> triangles) {
  return as_shell({nodes, std::move(quads), std::move(triangles), {}});
}

constexpr double degree = std::numbers::pi / 180.0;

}  // namespace

TEST_CASE("quality of a parallelogram is the sine of its angle whatever its sides", "[mesh][quality]") {
  const double angle = 37.0 * degree;
  Eigen::MatrixX2d nodes(4, 2);
  nodes << 0.0, 0.0, 5.3, 0.0, 5.3 + 1.7 * std::cos(angle), 1.7 * std::sin(angle), 1.7 * std::cos(angle),
      1.7 * std::sin(angle);
  const Quality figures = quality(in_plane(nodes, {{0, 1, 2, 3}}, {}));
  CHECK(figures.quads == 1);
  CHECK(figures.triangles == 0);
  CHECK(figures.smallest_angle == Approx(angle));
  CHECK(figures.largest_angle == Approx(std::numbers::pi - angle));
  CHECK(figures.smallest_scaled_jacobian == Approx(std::sin(angle)));
}

TEST_CASE("a corner folded inwards shows as an angle over 180 degrees and a negative Jacobian",
          "[mesh][quality]") {
  Eigen::MatrixX2d nodes(4, 2);
  nodes << 0.0, 0.0, 2.0, 0.0, 0.5, 0.5, 0.0, 2.0;
  const Quality figures = quality(in_plane(nodes, {{0, 1, 2, 3}}, {}));
  CHECK(figures.largest_angle > std::numbers::pi);
  CHECK(figures.smallest_scaled_jacobian < 0.0);
}

TEST_CASE("triangles count with their angles but not in the Jacobian", "[mesh][quality]") {
  Eigen::MatrixX2d nodes(5, 2);
  nodes << 0.0, 0.0, 2.0, 0.0, 2.0, 1.0, 0.0, 1.0, 1.0, 1.0 + std::tan(25.0 * degree);
  const Quality figures = quality(in_plane(nodes, {{0, 1, 2, 3}}, {{3, 2, 4}}));
  CHECK(figures.triangles == 1);
  CHECK(figures.smallest_angle == Approx(25.0 * degree));
  CHECK(figures.largest_angle == Approx(130.0 * degree));
  CHECK(figures.smallest_scaled_jacobian == Approx(1.0));
}

TEST_CASE("the Euler characteristic tells a band from a plate and ignores nodes without cells",
          "[mesh][quality]") {
  Eigen::MatrixX2d nodes(7, 2);
  nodes << 0.0, 0.0, 1.0, 0.0, 2.0, 0.0, 0.0, 1.0, 1.0, 1.0, 2.0, 1.0, 9.0, 9.0;
  CHECK(euler_characteristic(in_plane(nodes, {{0, 1, 4, 3}, {1, 2, 5, 4}}, {})) == 1);
  // Six nodes as a prism without its ends.
  CHECK(euler_characteristic(in_plane(nodes, {{0, 1, 4, 3}, {1, 2, 5, 4}, {2, 0, 3, 5}}, {})) == 0);
}

}  // namespace gapstrain::mesh
