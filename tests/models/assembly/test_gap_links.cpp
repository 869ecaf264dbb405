#include "models/assembly/gap_links.h"

#include "tests/solver/bodies/structured_meshes.h"

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace gapstrain {

TEST_CASE("spots round the fracture share the whole cut face", "[models][build]") {
  const double radius = 5.75, wall = 2.5;
  const solver::Shell shell{tests::tube(radius, wall, 0.0, 20.0, 40, 8), solver::isotropic_shell(17000.0, 0.3)};
  models::FractureEdge edge;
  for (int k = 0; k < 40; ++k) {
    const int node = shell.mesh->groups.at("end:1")[static_cast<std::size_t>(k)];
    edge.nodes.push_back(node);
    edge.mid_cortex.push_back(shell.mesh->nodes.row(node).transpose());
    edge.around.push_back(2.0 * std::numbers::pi * k / 40);
  }
  const double obliquity = 0.4;
  double area = 0.0;
  Eigen::Vector3d centroid = Eigen::Vector3d::Zero();
  const auto spots = models::gap_spots(0, shell, edge, shell, edge, obliquity);
  for (const auto& spot : spots) {
    area += spot.area;
    centroid += spot.area * spot.proximal.centre;
  }
  CHECK(spots.size() == 48);
  // The polygon of 40 sides whose corners are on the circle is 0.1 % shorter than it, and cells whose directors
  // part at their corners take as much and twice more off their own volume.
  CHECK(area == Approx(2.0 * std::numbers::pi * radius * wall / std::cos(obliquity)).epsilon(0.005));
  CHECK(centroid.tail<2>().norm() < 1e-9 * area);
}

TEST_CASE("confined tissue follows its moduli", "[models][build]") {
  const models::Tissue tissue{"tissue", 8.0 * models::mpa, 0.2, "made up"};
  const Eigen::Vector3d normal = Eigen::Vector3d(1.0, 0.2, -0.3).normalized();
  const Eigen::Matrix3d stiffness = models::tissue_flexibility(tissue, 7.0, 1.4, normal).inverse();
  CHECK(normal.dot(stiffness * normal) == Approx(8.0 * 0.8 / (1.2 * 0.6) * 7.0 / 1.4));
  const Eigen::Vector3d side = normal.cross(Eigen::Vector3d::UnitX()).normalized();
  CHECK(side.dot(stiffness * side) == Approx(8.0 / 2.4 * 7.0 / 1.4));
  CHECK(std::abs(side.dot(stiffness * normal)) < 1e-9);
}

TEST_CASE("the cut's normal leans away from where the cut reaches furthest", "[models][build]") {
  models::Fracture fracture;
  fracture.obliquity = 30.0 * models::degree;
  fracture.direction = 90.0 * models::degree;
  const Eigen::Vector3d normal = models::cut_normal(fracture);
  // A point on the cut towards +y lies tan(30) further distal for each mm.
  CHECK(std::abs(normal.dot(Eigen::Vector3d(std::tan(std::numbers::pi / 6), 1.0, 0.0))) < 1e-12);
  CHECK(normal.x() == Approx(std::cos(std::numbers::pi / 6)));
}

}  // namespace gapstrain
