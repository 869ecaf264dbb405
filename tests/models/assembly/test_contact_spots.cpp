#include "models/assembly/assembly.h"
#include "models/assembly/contact_spots.h"
#include "models/assembly/surface_place.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/models/measures/compression_constructs.h"
#include "tests/solver/bodies/structured_meshes.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace gapstrain {

TEST_CASE("a line meets both walls of a tube, at places that are means of their cells' nodes", "[models][build]") {
  const auto tube = tests::tube(6.0, 1.0, 0.0, 30.0, 48, 20);
  const Eigen::Vector3d start(12.3, 0.7, 20.0), down(0.0, 0.0, -1.0);
  const auto places = models::meet(*tube, start, down);
  REQUIRE(places.size() == 2);
  const double height = std::sqrt(36.0 - 0.49);
  CHECK(places[0].along == Approx(20.0 - height).margin(0.02));
  CHECK(places[1].along == Approx(20.0 + height).margin(0.02));
  for (const auto& place : places) {
    Eigen::Vector3d mean = Eigen::Vector3d::Zero();
    double sum = 0.0;
    for (std::size_t k = 0; k < place.nodes.size(); ++k) {
      mean += place.weights[k] * tube->nodes.row(place.nodes[k]).transpose();
      sum += place.weights[k];
    }
    CHECK(sum == Approx(1.0));
    CHECK((mean - place.position).norm() < 1e-9);
  }
  CHECK(models::meet(*tube, Eigen::Vector3d(12.3, 8.0, 20.0), down).empty());
}

TEST_CASE("spots of a plate's underside lie over bone, clear of holes, at the standoff's gap", "[models][build]") {
  models::Construct construct = tests::pressed_tube();
  only(construct.plates).standoff = 0.4 * models::mm;
  for (auto& hole : only(construct.plates).holes) {
    hole.diameter = 4.6 * models::mm;
    hole.slot_length = 6.4 * models::mm;
  }
  const auto assembly = models::assemble(construct, construct.screws);
  REQUIRE(assembly.underside.size() > 20);
  std::array<int, 2> count{};
  for (const auto& place : assembly.underside) {
    CHECK(place.gap == Approx(0.4).margin(1e-6));
    CHECK((only(assembly.plates).shape->x_at(place.along) > only(construct.fractures).position.value()) ==
          (place.fragment == 1));
    ++count[place.fragment];
    for (const auto& hole : only(construct.plates).holes) {
      const double beyond = std::max(std::abs(place.along - hole.position.value()) - 0.9, 0.0);
      CHECK(std::hypot(beyond, 2.0) >= 2.3);  // a quarter of the width off the centre line
    }
  }
  CHECK(count[0] == count[1]);  // the construct is its own mirror image
  // Faces: two spots a place, the areas of a ring.
  double area = 0.0;
  for (const auto& spot : assembly.face) area += spot.area;
  CHECK(area == Approx(std::numbers::pi * (7.0 * 7.0 - 4.5 * 4.5)).epsilon(5e-3));
}

TEST_CASE("a prebend stands highest over the fracture and is nothing at the ends", "[models][build]") {
  const models::Construct construct = tests::pressed_tube();
  const models::Length bend = 1.2 * models::mm;
  CHECK(models::prebend_height(only(construct.plates), 40.0, 40.0, bend) == Approx(1.2));
  CHECK(models::prebend_height(only(construct.plates), 40.0, 0.0, bend) == Approx(0.0).margin(1e-12));
  CHECK(models::prebend_height(only(construct.plates), 40.0, 112.0, bend) == Approx(0.0).margin(1e-12));
  CHECK(models::prebend_height(only(construct.plates), 40.0, 76.0, bend) == Approx(0.6));
}

}  // namespace gapstrain
