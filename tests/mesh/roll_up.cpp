#include "mesh/roll_up.h"

#include "mesh/gmsh_session.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <numbers>

namespace gapstrain::mesh {

namespace {

using std::numbers::pi;

// `around` quads of unequal or equal width on s in [0, perimeter), two along x; each halved into triangles if
// asked.
FlatMesh band(int around, double perimeter, double length, bool triangles) {
  FlatMesh flat;
  flat.nodes.resize(3 * around, 2);
  for (int row = 0; row < 3; ++row)
    for (int i = 0; i < around; ++i)
      flat.nodes.row(row * around + i) << perimeter * i / around, 0.5 * length * row;
  for (int row = 0; row < 2; ++row) {
    for (int i = 0; i < around; ++i) {
      const int a = row * around + i, b = row * around + (i + 1) % around;
      if (triangles) {
        flat.triangles.push_back({a, b, b + around});
        flat.triangles.push_back({a, b + around, a + around});
      } else {
        flat.quads.push_back({a, b, b + around, a + around});
      }
    }
  }
  return flat;
}

// s runs from +y towards +z when `sense` is 1, and towards -z when it is -1.
Surface round_tube(double radius, double thickness, double sense, double stretch) {
  return [=](double s, double x) {
    const double angle = sense * s * stretch / radius;
    const Eigen::Vector3d normal(0.0, std::cos(angle), std::sin(angle));
    return SurfacePoint{Eigen::Vector3d(x, 0.0, 0.0) + radius * normal, normal, thickness, stretch, 1.0 / radius};
  };
}

struct Section {
  double area = 0.0, second_moment = 0.0;  // mm^2, mm^4 about the z axis
};

// Of the wall between the straight edges that join the first `around` nodes at both faces, which is what a shell
// with nodal directors and thicknesses integrates. Green's theorem on the polygons, outer face less inner face.
Section section_of(const ShellMesh& mesh, int around) {
  Section section;
  for (const double side : {0.5, -0.5}) {
    for (int i = 0; i < around; ++i) {
      const auto corner = [&](int k) -> Eigen::RowVector3d {
        return mesh.nodes.row(k) + side * mesh.thickness[k] * mesh.directors.row(k);
      };
      const Eigen::RowVector3d a = corner(i), b = corner((i + 1) % around);
      const double cross = a.y() * b.z() - a.z() * b.y();
      section.area += 2.0 * side * 0.5 * cross;
      section.second_moment += 2.0 * side * cross * (a.y() * a.y() + a.y() * b.y() + b.y() * b.y()) / 12.0;
    }
  }
  return section;
}

}  // namespace

TEST_CASE("a rolled-up tube has the exact section's area and second moment to the fourth order",
          "[mesh][roll_up]") {
  // Exact annulus: A = 2 pi R t, I = pi R t (R^2 + t^2 / 4).
  const double radius = 10.3, thickness = 3.9;
  const double exact_area = 2.0 * pi * radius * thickness;
  const double exact_moment = pi * radius * thickness * (radius * radius + thickness * thickness / 4.0);
  const bool triangles = GENERATE(false, true);
  const double stretch = GENERATE(1.0, 1.3);
  CAPTURE(triangles, stretch);

  const auto errors = [&](int around) {
    const double perimeter = 2.0 * pi * radius / stretch;
    const FlatMesh flat = band(around, perimeter, 7.0, triangles);
    const Section section =
        section_of(roll_up(flat, round_tube(radius, thickness, 1.0, stretch), perimeter), around);
    return std::pair{section.area / exact_area - 1.0, section.second_moment / exact_moment - 1.0};
  };
  // Without the correction the errors are -2/3 x^2 and -4/3 x^2, x = pi / 24: -1.1 % and -2.3 %.
  const auto [area_24, moment_24] = errors(24);
  CHECK(std::abs(area_24) < 3e-4);
  CHECK(std::abs(moment_24) < 3e-4);
  const auto [area_48, moment_48] = errors(48);
  CHECK(std::log2(area_24 / area_48) == Approx(4.0).margin(0.1));
  CHECK(std::log2(moment_24 / moment_48) == Approx(4.0).margin(0.1));
}

TEST_CASE("a flat surface is left as it is", "[mesh][roll_up]") {
  const FlatMesh flat = band(5, 5.0, 3.0, false);
  const auto surface = [](double x, double y) {
    return SurfacePoint{{x, 2.0, -y}, {0.0, 1.0, 0.0}, 1.7, 1.0, 0.0};
  };
  const ShellMesh mesh = roll_up(flat, surface, 0.0);
  for (Eigen::Index i = 0; i < flat.nodes.rows(); ++i) {
    CHECK(mesh.nodes.row(i) == Eigen::RowVector3d(flat.nodes(i, 0), 2.0, -flat.nodes(i, 1)));
    CHECK(mesh.thickness[i] == 1.7);
  }
}

TEST_CASE("a surface that is hollow on its director's side is moved the other way and thickened too",
          "[mesh][roll_up]") {
  const FlatMesh flat = band(24, 2.0 * pi * 8.0, 5.0, false);
  const auto surface = [](double s, double x) {
    const Eigen::Vector3d inward(0.0, -std::cos(s / 8.0), -std::sin(s / 8.0));
    return SurfacePoint{Eigen::Vector3d(x, 0.0, 0.0) - 8.0 * inward, inward, 2.0, 1.0, -1.0 / 8.0};
  };
  const ShellMesh mesh = roll_up(flat, surface, 2.0 * pi * 8.0);
  const double x = pi / 24.0;
  CHECK(mesh.nodes.row(3).tail<2>().norm() == Approx(8.0 * (1.0 + x * x / 3.0)));
  CHECK(mesh.thickness[3] == Approx(2.0 * (1.0 + x * x / 3.0)));
}

TEST_CASE("cells are counter-clockwise seen from the director's tip whichever way the map turns",
          "[mesh][roll_up]") {
  const double sense = GENERATE(1.0, -1.0);
  const bool triangles = GENERATE(false, true);
  const ShellMesh mesh =
      roll_up(band(16, 2.0 * pi * 6.0, 5.0, triangles), round_tube(6.0, 1.0, sense, 1.0), 2.0 * pi * 6.0);
  const auto check_cell = [&mesh](const auto& cell) {
    const Eigen::RowVector3d a = mesh.nodes.row(cell[1]) - mesh.nodes.row(cell[0]);
    const Eigen::RowVector3d b = mesh.nodes.row(cell[2]) - mesh.nodes.row(cell[0]);
    CHECK(a.cross(b).dot(mesh.directors.row(cell[0])) > 0.0);
  };
  for (const Quad& quad : mesh.quads) check_cell(quad);
  for (const Triangle& triangle : mesh.triangles) check_cell(triangle);
}

TEST_CASE("a surface without a place, normal or wall is refused", "[mesh][roll_up]") {
  const FlatMesh flat = band(4, 4.0, 2.0, false);
  const auto with = [&flat](const Eigen::Vector3d& position, const Eigen::Vector3d& normal, double thickness) {
    return roll_up(
        flat,
        [=](double, double) {
          return SurfacePoint{position, normal, thickness, 1.0, 0.0};
        },
        0.0);
  };
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(with({0.0, nan, 0.0}, {0.0, 0.0, 1.0}, 1.0), MeshError);
  CHECK_THROWS_AS(with({0.0, 1.0, 0.0}, {0.0, 0.0, 2.0}, 1.0), MeshError);
  CHECK_THROWS_AS(with({0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}, 0.0), MeshError);
  CHECK_NOTHROW(with({0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}, 1.0));
}

}  // namespace gapstrain::mesh
