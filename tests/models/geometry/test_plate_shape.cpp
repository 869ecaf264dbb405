#include "models/geometry/plate_shape.h"
#include "tests/models/geometry/sample_bones.h"

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

Screw screw_in(int hole, Angle along = 0.0 * degree, Angle across = 0.0 * degree, int cortices = 2) {
  Screw screw;
  screw.hole = hole;
  screw.tilt_along = along;
  screw.tilt_across = across;
  screw.cortices = cortices;
  screw.size.thread_diameter = 2.7 * mm;
  return screw;
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
  const auto screw = place_screw(flat, shape, bone, screw_in(3), Length());
  REQUIRE(screw.bone);
  CHECK((screw.hole_centre - Eigen::Vector3d(80.0, 0.0, 8.8)).norm() < 1e-10);
  CHECK((screw.head_top - Eigen::Vector3d(80.0, 0.0, 10.1)).norm() < 1e-10);
  CHECK((screw.underside - Eigen::Vector3d(80.0, 0.0, 7.5)).norm() < 1e-10);
  CHECK((screw.direction - Eigen::Vector3d(0.0, 0.0, -1.0)).norm() < 1e-14);
  CHECK((screw.bone->near.outer - Eigen::Vector3d(80.0, 0.0, 6.1)).norm() < 1e-9);
  CHECK((screw.tip - Eigen::Vector3d(80.0, 0.0, -7.1)).norm() < 1e-9);
  const auto short_screw = place_screw(flat, shape, bone, screw_in(3, 0.0 * degree, 0.0 * degree, 1), Length());
  CHECK((short_screw.tip - Eigen::Vector3d(80.0, 0.0, 0.0)).norm() < 1e-9);
}

TEST_CASE("tilts turn the tip towards distal and towards +y", "[models][parts]") {
  const BoneShape bone(crooked_bone(), Aspect::cranial);
  const Plate bent = plate(80.0, 37.0);
  const PlateShape shape(bent, bone);
  const auto screw = place_screw(bent, shape, bone, screw_in(1, 11.0 * degree, -6.0 * degree), Length());
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
    CHECK_THROWS_AS(place_screw(flat, shape, bone, screw_in(hole), Length()), std::invalid_argument);
}

TEST_CASE("an eccentric screw sits off its hole's centre, away from the fracture", "[models][parts]") {
  const BoneShape bone(round_bone(137.0, 12.2, 2.1), Aspect::cranial);
  Plate flat = plate(80.0, 23.0);  // holes at 30, 42, 80 and 96 mm along the bone
  for (auto& hole : flat.holes) hole.shape = HoleShape::slot, hole.slot_length = 6.3 * mm;
  const PlateShape shape(flat, bone);
  Screw screw = screw_in(2);
  screw.kind = ScrewKind::compression;
  screw.slide = 0.7 * mm;
  const Length distal = slide_along(screw, flat, shape, 61.0 * mm);
  CHECK(distal.value() == 0.7);  // the fracture lies distally
  CHECK(place_screw(flat, shape, bone, screw, distal).hole_centre.x() == Approx(42.0 - 0.7));
  screw.hole = 3;
  const Length proximal = slide_along(screw, flat, shape, 61.0 * mm);
  CHECK(proximal.value() == -0.7);
  const auto placed = place_screw(flat, shape, bone, screw, proximal);
  CHECK(placed.hole_centre.x() == Approx(80.0 + 0.7));
  REQUIRE(placed.bone);
  CHECK(placed.bone->near.middle.x() == Approx(80.0 + 0.7));
}

TEST_CASE("a slide is cut to what the slot leaves, and only a compression screw has one", "[models][parts]") {
  const BoneShape bone(round_bone(137.0, 12.2, 2.1), Aspect::cranial);
  Plate flat = plate(80.0, 23.0);
  flat.holes[1].shape = HoleShape::slot;
  flat.holes[1].slot_length = 4.3 * mm;  // leaves 0.6 mm to either side of a head in a hole 3.1 mm wide
  const PlateShape shape(flat, bone);
  Screw screw = screw_in(2);
  screw.kind = ScrewKind::compression;
  screw.slide = 0.7 * mm;
  CHECK(slide_along(screw, flat, shape, 61.0 * mm).value() == Approx(0.6));
  screw.slide.reset();  // 0.8 mm for a thread of 2.7 mm
  CHECK(slide_along(screw, flat, shape, 20.0 * mm).value() == Approx(-0.6));
  screw.kind = ScrewKind::cortical;
  CHECK(slide_along(screw, flat, shape, 61.0 * mm).value() == 0.0);
}

TEST_CASE("a screw beside the plate goes from its entry through the bone's middle", "[models][parts]") {
  const BoneShape bone(round_bone(137.0, 12.2, 2.1), Aspect::cranial);
  const Plate flat = plate(80.0, 23.0);
  const PlateShape shape(flat, bone);
  Screw screw = screw_in(0);
  screw.kind = ScrewKind::lag;
  screw.entry = FreeEntry{57.0 * mm, 70.0 * degree};  // from the plate's side (+z) towards +y
  const auto placed = place_screw(flat, shape, bone, screw, Length());
  const Eigen::Vector3d out(0.0, std::sin(70.0 * degree.value()), std::cos(70.0 * degree.value()));
  const Eigen::Vector3d axis(57.0, 0.0, 0.0);
  CHECK((placed.underside - (axis + 6.1 * out)).norm() < 1e-9);
  CHECK((placed.hole_centre - placed.underside).norm() == 0.0);
  CHECK((placed.direction + out).norm() < 1e-9);
  CHECK((placed.head_top - placed.underside).dot(out) > 0.3 * 2.7);  // the head stands proud of the bone
  REQUIRE(placed.bone);
  CHECK((placed.bone->near.outer - placed.underside).norm() < 1e-6);
  CHECK((placed.bone->far.outer - (axis - 6.1 * out)).norm() < 1e-6);
  CHECK((placed.tip - (axis - 7.1 * out)).norm() < 1e-6);
}

TEST_CASE("beside the plate, tilts turn the tip towards distal and round the bone by rising angles",
          "[models][parts]") {
  const BoneShape bone(round_bone(137.0, 12.2, 2.1), Aspect::cranial);
  const Plate flat = plate(80.0, 23.0);
  const PlateShape shape(flat, bone);
  Screw screw = screw_in(0, 31.0 * degree, 12.0 * degree);
  screw.kind = ScrewKind::lag;
  screw.entry = FreeEntry{57.0 * mm, 70.0 * degree};
  const auto placed = place_screw(flat, shape, bone, screw, Length());
  const double around = 70.0 * degree.value();
  const Eigen::Vector3d inward(0.0, -std::sin(around), -std::cos(around));
  const Eigen::Vector3d rising(0.0, std::cos(around), -std::sin(around));  // d(outward)/d(around)
  const double depth = placed.direction.dot(inward);
  CHECK(placed.direction.x() / depth == Approx(std::tan(31.0 * degree.value())));
  CHECK(placed.direction.dot(rising) / depth == Approx(std::tan(12.0 * degree.value())));
  REQUIRE(placed.bone);
  CHECK(placed.bone->far.middle.x() > 57.0 + 5.0);
  CHECK((placed.bone->near.outer - placed.underside).norm() < 1e-6);
}

TEST_CASE("an entry beside the plate lies on the surface of an elliptic, bowed bone", "[models][parts]") {
  const BoneShape bone(crooked_bone(), Aspect::lateral);
  const Plate bent = plate(80.0, 37.0);
  const PlateShape shape(bent, bone);
  Screw screw = screw_in(0);
  screw.kind = ScrewKind::lag;
  for (const double around : {35.0, 110.0, 200.0, 320.0}) {
    screw.entry = FreeEntry{71.0 * mm, around * degree};
    const auto placed = place_screw(bent, shape, bone, screw, Length());
    CAPTURE(around);
    CHECK(std::abs(bone.depth(placed.underside)) < 1e-6);
    const Eigen::Vector2d in_section = bone.section(71.0).in_section(placed.underside);
    CHECK(std::tan(around * degree.value()) == Approx(in_section.x() / in_section.y()));
    REQUIRE(placed.bone);
    CHECK((placed.bone->near.outer - placed.underside).norm() < 1e-4);
  }
}
