// A field that is known at a body's nodes, smoothed over a stated length: what a mesh makes of a steep field at
// one node is the mesh's, its mean over a patch is the field's.
#pragma once

#include "mesh/shell_mesh.h"

#include <Eigen/Core>

#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace gapstrain::models {

// Weights of nodes, adding up to one.
struct SmoothedReading {
  std::vector<int> nodes;
  std::vector<double> weights;
  Eigen::Vector3d of(const Eigen::MatrixX3d& field) const;  // (n x 3), a row a node
};

class SurfaceSmoothing {
 public:
  // `counts`: which places of the mid-surface patches may reach over. The field is taken as the cells have it
  // between their nodes, at 2 x 2 points a quad.
  SurfaceSmoothing(std::shared_ptr<const mesh::ShellMesh> mesh,
                   const std::function<bool(const Eigen::Vector3d&)>& counts);

  // At a place of the mid-surface, from what counts of it within `reach`: least squares by area, fading out
  // towards `reach`, of a field that is linear along the surface and has a second order round the bone (across x),
  // where a bent tube's strain goes as a cosine. As the mesh gets finer it tends to a figure of its own for each
  // `reach` (moving least squares: P. Lancaster and K. Salkauskas 1981, Math Comp 37:141; from memory). A mesh
  // that is too coarse for it is looked at as much further as eight points lie; nothing where that is four times
  // as far.
  std::optional<SmoothedReading> at(const Eigen::Vector3d& place, const Eigen::Vector3d& normal,
                                    double reach) const;

 private:
  struct Point {
    Eigen::Vector3d place, normal;
    double area = 0.0;
    std::array<int, 4> nodes{};
    std::array<double, 4> weights{};
  };
  void add(const Point& point, const std::function<bool(const Eigen::Vector3d&)>& counts);
  std::vector<const Point*> within(const Eigen::Vector3d& place, const Eigen::Vector3d& normal,
                                   double reach) const;

  std::shared_ptr<const mesh::ShellMesh> mesh_;
  std::vector<Point> points_;  // by rising x
};

}  // namespace gapstrain::models
