#include "models/geometry/bone_shape.h"
#include "tests/models/geometry/sample_bones.h"

#include <Eigen/Geometry>
#include <boost/math/special_functions/ellint_2.hpp>
#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {
constexpr double pi = std::numbers::pi;
const auto aspects = {Aspect::cranial, Aspect::caudal, Aspect::medial, Aspect::lateral};
}  // namespace

TEST_CASE("a round tube's mid-surface is a cylinder of its mean radius", "[models][parts]") {
  const BoneShape shape(round_bone(137.0, 14.6, 2.2), Aspect::medial);
  const double radius = 7.3 - 1.1;
  REQUIRE(shape.perimeter() == Approx(2.0 * pi * radius).epsilon(1e-12));
  for (const double angle : {0.0, 0.4, 1.9, 3.3, 6.1}) {
    const auto point = shape.mid_surface(angle * radius, 41.7);
    CHECK((point.position - Eigen::Vector3d(41.7, radius * std::sin(angle), radius * std::cos(angle))).norm() <
          1e-12);
    CHECK((point.normal - Eigen::Vector3d(0.0, std::sin(angle), std::cos(angle))).norm() < 1e-12);
    CHECK(point.thickness == 2.2);
    CHECK(point.stretch == Approx(1.0));
    CHECK(point.curvature == Approx(1.0 / radius));
  }
  CHECK(shape.bed(0.0) == 7.3);
  CHECK(shape.bed(77.0) == 7.3);
  CHECK(shape.depth({50.0, 3.0, -4.0}) == Approx(2.3));
  CHECK(shape.depth({50.0, 6.0, 8.0}) == Approx(-2.7));
}

TEST_CASE("an elliptic tube's perimeter is the ellipse's less pi times the wall", "[models][parts]") {
  // Steiner: a curve parallel at distance d inside a convex curve is 2 pi d shorter.
  const Bone elliptic = bone(150.0, {station(10.0, 17.2, 11.4, 2.1)});
  const BoneShape shape(elliptic, Aspect::cranial);
  const double eccentricity = std::sqrt(1.0 - std::pow(11.4 / 17.2, 2));
  CHECK(shape.perimeter() == Approx(4.0 * 8.6 * boost::math::ellint_2(eccentricity) - pi * 2.1).epsilon(1e-10));
}

TEST_CASE("which width lies along z follows from the plate's aspect", "[models][parts]") {
  const Bone elliptic = bone(150.0, {station(10.0, 17.2, 11.4, 2.1)});
  for (const Aspect aspect : aspects) {
    const BoneSection section = BoneShape(elliptic, aspect).section(60.0);
    const bool is_sagittal = aspect == Aspect::cranial || aspect == Aspect::caudal;
    CHECK(section.semi_z == (is_sagittal ? 5.7 : 8.6));
    CHECK(section.semi_y == (is_sagittal ? 8.6 : 5.7));
  }
}

TEST_CASE("bow signs follow from the plate's aspect on a right limb", "[models][parts]") {
  // An animal looking along +X with its left at +Y and its back at +Z: distal is -Z, cranial +X, lateral of a
  // right limb -Y. Expected offsets from these vectors alone.
  const Eigen::Vector3d distal(0, 0, -1), cranial(1, 0, 0), lateral(0, -1, 0);
  const Bone bowed = bone(150.0, {station(75.0, 17.2, 11.4, 2.1, 1.3, -0.7)});
  const Eigen::Vector3d offset = 1.3 * lateral - 0.7 * cranial;
  const std::map<Aspect, Eigen::Vector3d> directions{{Aspect::cranial, cranial},
                                                     {Aspect::caudal, -cranial},
                                                     {Aspect::lateral, lateral},
                                                     {Aspect::medial, -lateral}};
  for (const auto& [aspect, z] : directions) {
    const BoneSection section = BoneShape(bowed, aspect).section(75.0);
    CHECK(section.centre.z() == Approx(offset.dot(z)));
    CHECK(section.centre.y() == Approx(offset.dot(z.cross(distal))));
  }
}

TEST_CASE("normal, stretch and curvature of a crooked bone match finite differences", "[models][parts]") {
  for (const Aspect aspect : aspects) {
    const BoneShape shape(crooked_bone(), aspect);
    const double h = 1e-5;
    for (const double share : {0.0, 0.13, 0.31, 0.5, 0.72, 0.95})
      for (const double x : {3.0, 35.0, 60.0, 97.0, 140.0, 171.0}) {
        const double u = share * shape.perimeter();
        const auto at = [&](double du, double dx) { return shape.mid_surface(u + du, x + dx); };
        const Eigen::Vector3d by_u = (at(h, 0).position - at(-h, 0).position) / (2 * h);
        const Eigen::Vector3d by_x = (at(0, h).position - at(0, -h).position) / (2 * h);
        const auto point = at(0, 0);
        CAPTURE(share, x);
        REQUIRE((by_x.cross(by_u).normalized() - point.normal).norm() < 1e-8);
        REQUIRE(by_u.norm() == Approx(point.stretch).epsilon(1e-8));
        // The curvature is that of the section's curve, whose normal has no part along the tangent.
        const Eigen::Vector3d tangent = shape.section(x).tangent;
        const auto in_section = [&](double du) {
          const Eigen::Vector3d n = at(du, 0).normal;
          return (n - tangent * tangent.dot(n)).normalized().eval();
        };
        const double turn = (in_section(h) - in_section(-h)).norm() / (2 * h);
        REQUIRE(turn / point.stretch == Approx(point.curvature).epsilon(1e-6));
      }
  }
}

TEST_CASE("the mid-surface lies half a wall deep and unrolls to where it came from", "[models][parts]") {
  const BoneShape shape(crooked_bone(), Aspect::lateral);
  for (const double share : {0.0, 0.2, 0.45, 0.7, 0.93})
    for (const double x : {0.0, 5.0, 60.0, 97.0, 140.0, 183.0}) {
      const double u = share * shape.perimeter();
      const auto point = shape.mid_surface(u, x);
      CAPTURE(share, x);
      REQUIRE(shape.depth(point.position) == Approx(0.5 * point.thickness).epsilon(1e-10));
      const Eigen::Vector2d found = shape.unrolled(point.position);
      REQUIRE(std::abs(std::remainder(found.x() - u, shape.perimeter())) < 1e-8);
      REQUIRE(found.x() >= 0.0);
      REQUIRE(found.x() < shape.perimeter());
      REQUIRE(found.y() == Approx(x).margin(1e-9));
      REQUIRE((shape.mid_surface(u + shape.perimeter(), x).position - point.position).norm() < 1e-10);
    }
}

TEST_CASE("the unrolled coordinate is the arc length of the largest section", "[models][parts]") {
  const BoneShape shape(crooked_bone(), Aspect::cranial);
  // The distal station is the largest and holds to the distal end.
  for (const double share : {0.1, 0.6, 0.8})
    CHECK(shape.mid_surface(share * shape.perimeter(), 175.0).stretch == Approx(1.0).epsilon(1e-9));
  CHECK(shape.mid_surface(3.0, 90.0).stretch < 0.9);
}

TEST_CASE("the bed lies on the outer surface over the line y = 0", "[models][parts]") {
  for (const Aspect aspect : aspects) {
    const BoneShape shape(crooked_bone(), aspect);
    for (const double x : {0.0, 25.0, 80.0, 97.0, 140.0, 183.0}) {
      CAPTURE(x);
      CHECK(std::abs(shape.depth({x, 0.0, shape.bed(x)})) < 1e-10);
      CHECK(shape.bed(x) > shape.section(x).centre.z());
    }
  }
}

TEST_CASE("a tilted line crosses a round tube's walls where closed form puts them", "[models][parts]") {
  const BoneShape shape(round_bone(137.0, 14.6, 2.2), Aspect::cranial);
  const Eigen::Vector3d direction = Eigen::Vector3d(0.21, 0.17, -1.0).normalized();
  const Eigen::Vector3d from(61.0, 0.9, 10.3);
  const auto crossing = cross_bone(shape, from, 3.7 * direction);
  REQUIRE(crossing);
  // |(y, z)| = radius along from + s direction.
  const auto meets = [&](double radius, double side) -> Eigen::Vector3d {
    const double a = 1.0 - direction.x() * direction.x();
    const double b = from.y() * direction.y() + from.z() * direction.z();
    const double c = from.y() * from.y() + from.z() * from.z() - radius * radius;
    return from + direction * ((-b + side * std::sqrt(b * b - a * c)) / a);
  };
  CHECK((crossing->near.outer - meets(7.3, -1)).norm() < 1e-9);
  CHECK((crossing->near.middle - meets(6.2, -1)).norm() < 1e-9);
  CHECK((crossing->near.inner - meets(5.1, -1)).norm() < 1e-9);
  CHECK((crossing->far.inner - meets(5.1, 1)).norm() < 1e-9);
  CHECK((crossing->far.middle - meets(6.2, 1)).norm() < 1e-9);
  CHECK((crossing->far.outer - meets(7.3, 1)).norm() < 1e-9);
}

TEST_CASE("a line through a crooked bone meets both walls at their depths, in order", "[models][parts]") {
  const BoneShape shape(crooked_bone(), Aspect::cranial);
  const Eigen::Vector3d direction = Eigen::Vector3d(-0.2, 0.1, -1.0).normalized();
  for (const double x : {20.0, 70.0, 115.0, 160.0}) {
    const auto crossing = cross_bone(shape, {x, 0.4, 14.0}, direction);
    REQUIRE(crossing);
    double before = -1e9;
    const auto check = [&](const Eigen::Vector3d& point, double walls) {
      CAPTURE(x, walls);
      CHECK(shape.depth(point) == Approx(walls * shape.section_through(point).wall).margin(1e-9));
      CHECK(point.dot(direction) > before);
      before = point.dot(direction);
    };
    check(crossing->near.outer, 0.0);
    check(crossing->near.middle, 0.5);
    check(crossing->near.inner, 1.0);
    check(crossing->far.inner, 1.0);
    check(crossing->far.middle, 0.5);
    check(crossing->far.outer, 0.0);
  }
}

TEST_CASE("a line that misses the canal or leaves through an end has no crossing", "[models][parts]") {
  const BoneShape shape(round_bone(137.0, 14.6, 2.2), Aspect::cranial);
  const Eigen::Vector3d down(0.0, 0.0, -1.0);
  CHECK(cross_bone(shape, {60.0, 5.0, 12.0}, down));
  CHECK_FALSE(cross_bone(shape, {60.0, 5.2, 12.0}, down));  // in the side wall: inner radius 5.1
  CHECK_FALSE(cross_bone(shape, {60.0, 9.0, 12.0}, down));
  CHECK_FALSE(cross_bone(shape, {-1.0, 0.0, 12.0}, down));
  CHECK_FALSE(cross_bone(shape, {138.0, 0.0, 12.0}, down));
  CHECK_FALSE(cross_bone(shape, {60.0, 0.0, 12.0}, Eigen::Vector3d(1.0, 0.0, -0.05)));
  CHECK_FALSE(cross_bone(shape, {134.0, 0.0, 12.0}, Eigen::Vector3d(0.5, 0.0, -1.0)));
}
