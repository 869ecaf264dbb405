#include "mesh/roll_up.h"

#include "mesh/mesh_error.h"

#include <fmt/format.h>
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

namespace gapstrain::mesh {

namespace {

// For f(s) = s^2 / 2: the mean over a cell of its interpolant less f. A surface of curvature k lies k times as far
// outside its straight-sided cell. `s` holds the cell's first coordinates.
double mean_sagitta(const std::array<double, 4>& s) {  // bilinear, s = mean + a xi + b eta
  const double a = 0.25 * (-s[0] + s[1] + s[2] - s[3]);
  const double b = 0.25 * (-s[0] - s[1] + s[2] + s[3]);
  return (a * a + b * b) / 3.0;
}

double mean_sagitta(const std::array<double, 3>& s) {
  const double sum = s[0] + s[1] + s[2];
  return (3.0 * (s[0] * s[0] + s[1] * s[1] + s[2] * s[2]) - sum * sum) / 24.0;
}

double signed_area(const Eigen::Vector2d& along, const Eigen::Vector2d& across) {
  return 0.5 * (along.x() * across.y() - along.y() * across.x());
}

// Per node: area-weighted mean over its cells of their mean sagittas for unit curvature, mm^2.
class SagittaMean {
 public:
  SagittaMean(const FlatMesh& flat, const std::vector<double>& stretch, double period)
      : flat_(flat), stretch_(stretch), period_(period) {
    weighted_.setZero(flat.nodes.rows());
    area_.setZero(flat.nodes.rows());
    for (const Quad& quad : flat.quads) add(quad);
    for (const Triangle& triangle : flat.triangles) add(triangle);
  }

  double at(Eigen::Index node) const { return area_[node] > 0.0 ? weighted_[node] / area_[node] : 0.0; }

 private:
  template <std::size_t corners>
  void add(const std::array<int, corners>& cell) {
    double mean_stretch = 0.0;
    for (const int node : cell) mean_stretch += stretch_[node] / static_cast<double>(corners);
    // Places relative to the first node, so that a cell across the seam comes together.
    std::array<Eigen::Vector2d, corners> places;
    std::array<double, corners> s{};
    for (std::size_t i = 0; i < corners; ++i) {
      places[i] = flat_.nodes.row(cell[i]) - flat_.nodes.row(cell[0]);
      if (period_ > 0.0) places[i].x() -= period_ * std::round(places[i].x() / period_);
      places[i].x() *= mean_stretch;
      s[i] = places[i].x();
    }
    double area = 0.0;
    for (std::size_t i = 1; i + 1 < corners; ++i) area += signed_area(places[i], places[i + 1]);
    const double sagitta = mean_sagitta(s);
    for (const int node : cell) {
      weighted_[node] += std::abs(area) * sagitta;
      area_[node] += std::abs(area);
    }
  }

  const FlatMesh& flat_;
  const std::vector<double>& stretch_;
  double period_;
  Eigen::VectorXd weighted_, area_;
};

void check(const SurfacePoint& point, double first, double second) {
  const bool is_finite = point.position.allFinite() && point.normal.allFinite() &&
                         std::isfinite(point.curvature) && std::isfinite(point.thickness) &&
                         std::isfinite(point.stretch);
  if (!is_finite || std::abs(point.normal.norm() - 1.0) > 1e-6 || point.thickness <= 0.0 || point.stretch <= 0.0)
    throw MeshError(fmt::format("The surface at ({}, {}) has no finite place, unit normal or positive thickness.",
                                first, second));
}

template <std::size_t corners>
void face_director(std::array<int, corners>& cell, const ShellMesh& mesh) {
  const auto side = [&](std::size_t from, std::size_t to) -> Eigen::Vector3d {
    return mesh.nodes.row(cell[to]) - mesh.nodes.row(cell[from]);
  };
  // A quad's diagonals span its mean normal; a triangle's sides do.
  const Eigen::Vector3d normal = corners == 4 ? side(0, 2).cross(side(1, 3)) : side(0, 1).cross(side(0, 2));
  Eigen::Vector3d director = Eigen::Vector3d::Zero();
  for (const int node : cell) director += mesh.directors.row(node);
  if (normal.dot(director) < 0.0) std::reverse(cell.begin() + 1, cell.end());
}

}  // namespace

ShellMesh roll_up(const FlatMesh& flat, const Surface& surface, double period) {
  const Eigen::Index count = flat.nodes.rows();
  std::vector<SurfacePoint> points;
  std::vector<double> stretch;
  for (Eigen::Index i = 0; i < count; ++i) {
    points.push_back(surface(flat.nodes(i, 0), flat.nodes(i, 1)));
    check(points.back(), flat.nodes(i, 0), flat.nodes(i, 1));
    stretch.push_back(points.back().stretch);
  }
  const SagittaMean mean(flat, stretch, period);

  ShellMesh mesh;
  mesh.nodes.resize(count, 3);
  mesh.directors.resize(count, 3);
  mesh.thickness.resize(count);
  for (Eigen::Index i = 0; i < count; ++i) {
    const SurfacePoint& point = points[i];
    const double outward = point.curvature * mean.at(i);
    mesh.nodes.row(i) = point.position + outward * point.normal;
    mesh.directors.row(i) = point.normal;
    mesh.thickness[i] = point.thickness * (1.0 + point.curvature * outward);
  }
  mesh.quads = flat.quads;
  mesh.triangles = flat.triangles;
  mesh.groups = flat.groups;
  for (Quad& quad : mesh.quads) face_director(quad, mesh);
  for (Triangle& triangle : mesh.triangles) face_director(triangle, mesh);
  return mesh;
}

}  // namespace gapstrain::mesh
