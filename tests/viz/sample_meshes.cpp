#include "tests/viz/sample_meshes.h"

#include <cmath>
#include <map>
#include <numbers>
#include <utility>
#include <vector>

namespace gapstrain::tests {

namespace {

// Gives every place one node, however many cells name it.
class NodeStore {
 public:
  int node(const Eigen::Vector3d& place) {
    const std::pair key(std::lround(place.x() * 1e5), std::lround(place.y() * 1e5));
    const auto [entry, is_new] = known_.try_emplace(key, static_cast<int>(places.size()));
    if (is_new) places.push_back(place);
    return entry->second;
  }
  std::vector<Eigen::Vector3d> places;

 private:
  std::map<std::pair<long, long>, int> known_;
};

// Point k of n on the outline of a rectangle, equally many on each side, from the lower left corner anticlockwise.
Eigen::Vector2d on_rectangle(int k, int n, double width, double height) {
  const int side = n / 4;
  const double part = static_cast<double>(k % side) / side;
  const Eigen::Vector2d corners[] = {{-0.5, -0.5}, {0.5, -0.5}, {0.5, 0.5}, {-0.5, 0.5}};
  const Eigen::Vector2d unit = corners[k / side % 4] * (1.0 - part) + corners[(k / side + 1) % 4] * part;
  return {unit.x() * width, unit.y() * height};
}

}  // namespace

mesh::ShellMesh strip_of_holes(const StripOfHoles& strip) {
  NodeStore store;
  mesh::ShellMesh mesh;
  for (int hole = 0; hole < strip.holes; ++hole) {
    const double centre = strip.start + (hole + 0.5) * strip.pitch;
    const auto node = [&](int k, int layer) {
      const double angle = 2.0 * std::numbers::pi * k / strip.around - 0.75 * std::numbers::pi;
      const Eigen::Vector2d inner(strip.radius * std::cos(angle), strip.radius * std::sin(angle));
      const double part = static_cast<double>(layer) / strip.layers;
      const Eigen::Vector2d place =
          inner * (1.0 - part) + on_rectangle(k % strip.around, strip.around, strip.pitch, strip.width) * part;
      return store.node({centre + place.x(), place.y(), strip.height});
    };
    auto& rim = mesh.groups["hole:" + std::to_string(hole)];
    for (int k = 0; k < strip.around; ++k) {
      rim.push_back(node(k, 0));
      for (int layer = 0; layer < strip.layers; ++layer)
        mesh.quads.push_back({node(k, layer), node(k, layer + 1), node((k + 1) % strip.around, layer + 1),
                              node((k + 1) % strip.around, layer)});
    }
  }
  const auto count = static_cast<Eigen::Index>(store.places.size());
  mesh.nodes.resize(count, 3);
  for (Eigen::Index i = 0; i < count; ++i) mesh.nodes.row(i) = store.places[static_cast<std::size_t>(i)];
  mesh.directors = Eigen::RowVector3d(0.0, 0.0, 1.0).replicate(count, 1);
  mesh.thickness = Eigen::VectorXd::Constant(count, strip.thickness);
  return mesh;
}

mesh::ShellMesh elliptic_tube(const EllipticTube& tube) {
  mesh::ShellMesh mesh;
  const int rings = tube.along + 1;
  mesh.nodes.resize(rings * tube.around, 3);
  mesh.directors.resizeLike(mesh.nodes);
  mesh.thickness = Eigen::VectorXd::Constant(rings * tube.around, tube.wall);
  for (int i = 0; i < rings; ++i)
    for (int k = 0; k < tube.around; ++k) {
      const double angle = 2.0 * std::numbers::pi * k / tube.around, c = std::cos(angle), s = std::sin(angle);
      const double x = tube.from + (tube.to - tube.from) * i / tube.along;
      mesh.nodes.row(i * tube.around + k) << x, tube.half_width_y * s, tube.half_width_z * c;
      mesh.directors.row(i * tube.around + k) =
          Eigen::RowVector3d(0.0, s / tube.half_width_y, c / tube.half_width_z).normalized();
    }
  const auto node = [&](int i, int k) { return i * tube.around + k % tube.around; };
  for (int i = 0; i < tube.along; ++i)
    for (int k = 0; k < tube.around; ++k)
      mesh.quads.push_back({node(i, k), node(i + 1, k), node(i + 1, k + 1), node(i, k + 1)});
  return mesh;
}

}  // namespace gapstrain::tests
