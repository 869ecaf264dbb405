#include "models/parts/plate_shape.h"
#include "tests/models/parts/sample_bones.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include <cmath>
#include <stdexcept>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

Plate plate(double length, double proximal_end) {
  Plate plate;
  plate.length = length * mm;
  plate.sections = {{0.0 * mm, 8.3 * mm, 2.6 * mm}};
  for (const double position : {7.0, 19.0, 57.0, 73.0})
    plate.holes.push_back({position * mm, HoleShape::round, 3.1 * mm, 3.1 * mm});
  plate.proximal_end = proximal_end * mm;
  plate.standoff = 1.4 * mm;
  return plate;
}

double bed_distance(const BoneShape& bone, const Eigen::Vector3d& point) {
  double least = 1e9;
  for (double x = point.x() - 5.0; x < point.x() + 5.0; x += 0.005)
    least = std::min(least, (Eigen::Vector3d(x, 0.0, bone.bed(x)) - point).norm());
  return least;
}

Eigen::Vector3d underside(const PlateShape& shape, double along) {
  const auto point = shape.mid_surface(along, 0.0);
  return point.position - 0.5 * point.thickness * point.normal;
}

}  // namespace

TEST_CASE("a plate that follows a straight uniform bone is exactly straight", "[models][parts]") {
  const BoneShape bone(round_bone(137.0, 12.2, 2.1), Aspect::cranial);
  const PlateShape shape(plate(80.0, 23.0), bone);
  for (const double along : {0.0, 13.7, 41.0, 80.0}) {
    const auto point = shape.mid_surface(along, -2.2);
    CHECK(point.position.x() == Approx(23.0 + along).epsilon(1e-13));
    CHECK(point.position.y() == -2.2);
    CHECK(point.position.z() == Approx(6.1 + 1.4 + 1.3).epsilon(1e-14));
    CHECK(point.normal == Eigen::Vector3d(0, 0, 1));
    CHECK(point.curvature == 0.0);
    CHECK(shape.along_at(shape.x_at(along)) == Approx(along).margin(1e-10));
  }
}

TEST_CASE("a plate that follows a crooked bone keeps the standoff all along", "[models][parts]") {
  for (const Aspect aspect : {Aspect::cranial, Aspect::caudal, Aspect::medial, Aspect::lateral}) {
    const BoneShape bone(crooked_bone(), aspect);
    Plate uneven = plate(101.0, 37.0);
    uneven.sections = {{11.0 * mm, 7.0 * mm, 2.0 * mm}, {63.0 * mm, 9.0 * mm, 3.1 * mm}};
    const PlateShape shape(uneven, bone);
    CHECK(shape.x_at(0.0) == Approx(37.0).epsilon(1e-9));
    for (const double along : {0.0, 13.7, 41.0, 77.0, 101.0})
      CHECK(bed_distance(bone, underside(shape, along)) == Approx(1.4).epsilon(1e-4));
  }
}

TEST_CASE("arc length, normal and curvature of a bent plate match finite differences", "[models][parts]") {
  const BoneShape bone(crooked_bone(), Aspect::cranial);
  const PlateShape shape(plate(101.0, 37.0), bone);
  const double h = 0.5;  // over a few of the centre line's straight pieces
  for (const double along : {8.0, 25.0, 52.0, 69.0, 93.0}) {
    const Eigen::Vector3d before = shape.mid_surface(along - h, 0.0).position;
    const Eigen::Vector3d after = shape.mid_surface(along + h, 0.0).position;
    const auto point = shape.mid_surface(along, 0.0);
    CHECK((after - before).norm() == Approx(2.0 * h).epsilon(1e-5));
    CHECK(std::abs((after - before).normalized().dot(point.normal)) < 2e-4);
    const double turn =
        (shape.mid_surface(along + h, 0.0).normal - shape.mid_surface(along - h, 0.0).normal).x() / (2.0 * h);
    CHECK(turn == Approx(point.curvature * point.normal.z()).margin(1e-4));
    CHECK(shape.along_at(shape.x_at(along)) == Approx(along).margin(1e-10));
  }
}

TEST_CASE("a straight plate touches the standoff at the bone's highest place only", "[models][parts]") {
  const BoneShape bone(crooked_bone(), Aspect::cranial);
  Plate flat = plate(101.0, 37.0);
  flat.contour = Contour::straight;
  const PlateShape shape(flat, bone);
  const Eigen::Vector3d normal = shape.mid_surface(0.0, 0.0).normal;
  double least = 1e9;
  for (double along = 0.0; along <= 101.0; along += 0.5) {
    const auto point = shape.mid_surface(along, 0.0);
    CHECK((point.normal - normal).norm() < 1e-14);
    CHECK((point.position - shape.mid_surface(0.0, 0.0).position).dot(normal) == Approx(0.0).margin(1e-11));
    least = std::min(least, bed_distance(bone, underside(shape, along)));
  }
  CHECK(least == Approx(1.4).epsilon(1e-4));
  CHECK(shape.x_at(0.0) == Approx(37.0));
}

TEST_CASE("width and thickness are linear between sections and constant beyond", "[models][parts]") {
  Plate uneven = plate(80.0, 23.0);
  uneven.sections = {{10.0 * mm, 7.0 * mm, 2.0 * mm}, {30.0 * mm, 9.0 * mm, 3.0 * mm}};
  const PlateShape shape(uneven, BoneShape(round_bone(137.0, 12.2, 2.1), Aspect::cranial));
  CHECK(shape.width(3.0) == 7.0);
  CHECK(shape.width(15.0) == Approx(7.5));
  CHECK(shape.thickness(25.0) == Approx(2.75));
  CHECK(shape.thickness(66.0) == 3.0);
}

TEST_CASE("a square screw goes straight through the bone's middle", "[models][parts]") {
  const BoneShape bone(round_bone(137.0, 12.2, 2.1), Aspect::cranial);
  const Plate flat = plate(80.0, 23.0);
  const PlateShape shape(flat, bone);
  const auto screw = place_screw(flat, shape, bone, 3, 0.0 * degree, 0.0 * degree, 2);
  REQUIRE(screw.bone);
  CHECK((screw.hole_centre - Eigen::Vector3d(80.0, 0.0, 8.8)).norm() < 1e-10);
  CHECK((screw.head_top - Eigen::Vector3d(80.0, 0.0, 10.1)).norm() < 1e-10);
  CHECK((screw.underside - Eigen::Vector3d(80.0, 0.0, 7.5)).norm() < 1e-10);
  CHECK((screw.direction - Eigen::Vector3d(0.0, 0.0, -1.0)).norm() < 1e-14);
  CHECK((screw.bone->near.outer - Eigen::Vector3d(80.0, 0.0, 6.1)).norm() < 1e-9);
  CHECK((screw.tip - Eigen::Vector3d(80.0, 0.0, -7.1)).norm() < 1e-9);
  const auto short_screw = place_screw(flat, shape, bone, 3, 0.0 * degree, 0.0 * degree, 1);
  CHECK((short_screw.tip - Eigen::Vector3d(80.0, 0.0, 0.0)).norm() < 1e-9);
}

TEST_CASE("tilts turn the tip towards distal and towards +y", "[models][parts]") {
  const BoneShape bone(crooked_bone(), Aspect::cranial);
  const Plate bent = plate(80.0, 37.0);
  const PlateShape shape(bent, bone);
  const auto screw = place_screw(bent, shape, bone, 1, 11.0 * degree, -6.0 * degree, 2);
  const Eigen::Vector3d normal = shape.mid_surface(7.0, 0.0).normal;
  const Eigen::Vector3d distal = Eigen::Vector3d::UnitY().cross(normal);
  CHECK(distal.x() > 0.9);
  CHECK(screw.direction.dot(distal) / -screw.direction.dot(normal) == Approx(std::tan(11.0 * degree.value())));
  CHECK(screw.direction.y() / -screw.direction.dot(normal) == Approx(std::tan(-6.0 * degree.value())));
  // Entry and exit lie on the plate's faces.
  CHECK((screw.head_top - screw.hole_centre).dot(normal) == Approx(1.3));
  CHECK((screw.underside - screw.hole_centre).dot(normal) == Approx(-1.3));
  REQUIRE(screw.bone);
  CHECK((screw.tip - screw.bone->far.outer).norm() == Approx(1.0));
}

TEST_CASE("a screw in a hole that does not exist is refused", "[models][parts]") {
  const BoneShape bone(round_bone(137.0, 12.2, 2.1), Aspect::cranial);
  const Plate flat = plate(80.0, 23.0);
  const PlateShape shape(flat, bone);
  for (const int hole : {0, -1, 5})
    CHECK_THROWS_AS(place_screw(flat, shape, bone, hole, 0.0 * degree, 0.0 * degree, 2), std::invalid_argument);
}
