#include "models/stress/surface_smoothing.h"

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

// Fewer terms where what is within reach does not tell them apart.
constexpr Eigen::Index most_terms = 4;
constexpr double least_told_apart = 1e-3;  // least over largest eigenvalue of the terms' products

}  // namespace

Eigen::Vector3d SmoothedReading::of(const Eigen::MatrixX3d& field) const {
  Eigen::Vector3d value = Eigen::Vector3d::Zero();
  for (std::size_t k = 0; k < nodes.size(); ++k) value += weights[k] * field.row(nodes[k]).transpose();
  return value;
}

SurfaceSmoothing::SurfaceSmoothing(std::shared_ptr<const mesh::ShellMesh> mesh,
                                   const std::function<bool(const Eigen::Vector3d&)>& counts)
    : mesh_(std::move(mesh)) {
  const auto node = [&](int k) -> Eigen::Vector3d { return mesh_->nodes.row(k); };
  const double gauss = 1.0 / std::sqrt(3.0);
  for (const auto& quad : mesh_->quads) {
    for (const double xi : {-gauss, gauss})
      for (const double eta : {-gauss, gauss}) {
        Point point;
        point.nodes = quad;
        point.weights = {0.25 * (1 - xi) * (1 - eta), 0.25 * (1 + xi) * (1 - eta), 0.25 * (1 + xi) * (1 + eta),
                         0.25 * (1 - xi) * (1 + eta)};
        const Eigen::Vector3d along =
            0.25 * ((1 - eta) * (node(quad[1]) - node(quad[0])) + (1 + eta) * (node(quad[2]) - node(quad[3])));
        const Eigen::Vector3d across =
            0.25 * ((1 - xi) * (node(quad[3]) - node(quad[0])) + (1 + xi) * (node(quad[2]) - node(quad[1])));
        point.area = along.cross(across).norm();
        add(point, counts);
      }
  }
  for (const auto& triangle : mesh_->triangles) {
    Point point;
    point.nodes = {triangle[0], triangle[1], triangle[2], triangle[0]};
    point.weights = {1.0 / 3.0, 1.0 / 3.0, 1.0 / 3.0, 0.0};
    point.area = 0.5 * (node(triangle[1]) - node(triangle[0])).cross(node(triangle[2]) - node(triangle[0])).norm();
    add(point, counts);
  }
  std::sort(points_.begin(), points_.end(),
            [](const Point& one, const Point& other) { return one.place.x() < other.place.x(); });
}

void SurfaceSmoothing::add(const Point& point, const std::function<bool(const Eigen::Vector3d&)>& counts) {
  Point placed = point;
  placed.place.setZero();
  placed.normal.setZero();
  for (std::size_t k = 0; k < point.nodes.size(); ++k) {
    placed.place += point.weights[k] * mesh_->nodes.row(point.nodes[k]).transpose();
    placed.normal += point.weights[k] * mesh_->directors.row(point.nodes[k]).transpose();
  }
  if (counts(placed.place)) points_.push_back(placed);
}

std::vector<const SurfaceSmoothing::Point*> SurfaceSmoothing::within(const Eigen::Vector3d& place,
                                                                     const Eigen::Vector3d& normal,
                                                                     double reach) const {
  std::vector<const Point*> near;
  const auto first = std::lower_bound(points_.begin(), points_.end(), place.x() - reach,
                                      [](const Point& point, double x) { return point.place.x() < x; });
  for (auto point = first; point != points_.end() && point->place.x() < place.x() + reach; ++point)
    if ((point->place - place).squaredNorm() < reach * reach && point->normal.dot(normal) > 0.0)
      near.push_back(&*point);
  return near;
}

std::optional<SmoothedReading> SurfaceSmoothing::at(const Eigen::Vector3d& place, const Eigen::Vector3d& normal,
                                                    double reach) const {
  constexpr double further = 1.25, furthest = 4.0;
  double radius = reach;
  std::vector<const Point*> near = within(place, normal, radius);
  while (near.size() < 2 * most_terms && radius < furthest * reach)
    near = within(place, normal, radius *= further);
  const auto count = static_cast<Eigen::Index>(near.size());
  if (count < most_terms) return std::nullopt;
  const Eigen::Vector3d round = normal.cross(Eigen::Vector3d::UnitX()).normalized(), along = round.cross(normal);
  std::vector<double> weights;
  for (const Point* point : near)
    weights.push_back(point->area * (1.0 - (point->place - place).squaredNorm() / (radius * radius)));
  Eigen::MatrixXd terms(count, most_terms);
  // Terms as the cells have them between their nodes, as they have the field: else chords of a cosine would be
  // taken for the cosine, which lies 0.6 % higher at 24 cells round the bone.
  terms.setZero();
  for (Eigen::Index k = 0; k < count; ++k) {
    const Point& point = *near[static_cast<std::size_t>(k)];
    for (std::size_t m = 0; m < point.nodes.size(); ++m) {
      const Eigen::Vector3d arm = (mesh_->nodes.row(point.nodes[m]).transpose() - place) / radius;
      const double across = arm.dot(round);
      terms.row(k) += point.weights[m] * Eigen::RowVector4d(1.0, arm.dot(along), across, across * across);
    }
  }
  const Eigen::VectorXd by = Eigen::Map<const Eigen::VectorXd>(weights.data(), count);
  for (const Eigen::Index used : {most_terms, most_terms - 1, Eigen::Index{1}}) {
    const Eigen::MatrixXd some = terms.leftCols(used);
    const Eigen::MatrixXd products = some.transpose() * by.asDiagonal() * some;
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(products);
    if (used > 1 &&
        (2 * used > count || solver.eigenvalues().minCoeff() < least_told_apart * solver.eigenvalues().maxCoeff()))
      continue;
    const Eigen::VectorXd value_here =
        solver.eigenvectors() *
        (solver.eigenvectors().row(0).transpose().array() / solver.eigenvalues().array()).matrix();
    const Eigen::VectorXd shares = by.cwiseProduct(some * value_here);
    SmoothedReading reading;
    for (Eigen::Index k = 0; k < count; ++k) {
      const Point& point = *near[static_cast<std::size_t>(k)];
      for (std::size_t m = 0; m < point.nodes.size(); ++m) {
        if (point.weights[m] == 0.0) continue;
        reading.nodes.push_back(point.nodes[m]);
        reading.weights.push_back(shares(k) * point.weights[m]);
      }
    }
    return reading;
  }
  return std::nullopt;
}

}  // namespace gapstrain::models
