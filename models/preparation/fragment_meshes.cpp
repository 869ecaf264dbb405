#include "models/preparation/fragment_meshes.h"

#include "mesh/cut_tube.h"
#include "mesh/roll_up.h"
#include "models/geometry/bone_mesh_sizes.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>
#include <optional>
#include <utility>

namespace gapstrain::models {

namespace {

// The tube is meshed closed, as if the fracture had no gap, so that both edges get the same nodes; what lies
// distal of the cut is then moved by the gap. `closed` coordinates are those of the closed tube.
class ClosedTube {
 public:
  ClosedTube(const Construct& construct, const BoneShape& shape)
      : shape_(shape),
        gap_(only(construct.fractures).gap.value()),
        middle_(only(construct.fractures).position.value()),
        slope_(std::tan(only(construct.fractures).obliquity.value())),
        direction_(only(construct.fractures).direction.value()) {}

  double length() const { return shape_.length() - gap_; }

  // Closed x of the cut at u. The cut plane leans so that it reaches furthest distally in `direction`.
  double cut(double u) const {
    const BoneSection section = shape_.section(middle_);
    const Eigen::Vector3d arm = shape_.mid_surface(u, middle_).position - section.centre;
    return middle_ - 0.5 * gap_ + slope_ * (arm.y() * std::sin(direction_) + arm.z() * std::cos(direction_));
  }

  // Whether the true place (u, x) lies distal of the gap's middle.
  bool is_distal(double u, double x) const { return x - 0.5 * gap_ > cut(u); }
  double closed(double u, double x) const { return is_distal(u, x) ? x - gap_ : x; }
  double gap() const { return gap_; }

 private:
  const BoneShape& shape_;
  double gap_, middle_, slope_, direction_;
};

mesh::Spot spot(const std::string& name, const Eigen::Vector3d& centre, double radius, const BoneShape& shape,
                const ClosedTube& tube) {
  const Eigen::Vector2d place = shape.unrolled(centre);
  const mesh::SurfacePoint point = shape.mid_surface(place.x(), place.y());
  return {name, place.x(), tube.closed(place.x(), place.y()), radius / point.stretch, radius};
}

struct RolledUp {
  std::shared_ptr<const mesh::ShellMesh> mesh;
  FractureEdge edge;
};

RolledUp roll_up(const mesh::FlatMesh& flat, const BoneShape& shape, double shift) {
  const auto surface = [&](double u, double x) { return shape.mid_surface(u, x + shift); };
  RolledUp fragment;
  fragment.mesh = std::make_shared<const mesh::ShellMesh>(mesh::roll_up(flat, surface, shape.perimeter()));

  auto nodes = flat.groups.at("cut");
  std::vector<double> around;
  for (const int node : nodes) {
    const Eigen::Vector2d place = flat.nodes.row(node);
    const Eigen::Vector3d arm = surface(place.x(), place.y()).position - shape.section(place.y() + shift).centre;
    const double angle = std::atan2(arm.y(), arm.z());
    around.push_back(angle < 0.0 ? angle + 2.0 * std::numbers::pi : angle);
  }
  // The list is closed and runs one way round: start it at the smallest angle.
  const auto first = std::min_element(around.begin(), around.end()) - around.begin();
  std::rotate(nodes.begin(), nodes.begin() + first, nodes.end());
  std::rotate(around.begin(), around.begin() + first, around.end());
  for (const int node : nodes)
    fragment.edge.mid_cortex.push_back(surface(flat.nodes(node, 0), flat.nodes(node, 1)).position);
  fragment.edge.nodes = std::move(nodes);
  fragment.edge.around = std::move(around);
  return fragment;
}

}  // namespace

std::vector<Fragment> mesh_fragments(const mesh::GmshSession& session, const Construct& construct,
                                     const BoneShape& shape, const std::vector<PlannedScrew>& screws,
                                     const std::vector<double>& section_lines) {
  const ClosedTube closed(construct, shape);
  mesh::UnrolledTube tube;
  tube.perimeter = shape.perimeter();
  tube.length = closed.length();
  tube.cut = [&](double u) { return closed.cut(u); };
  tube.size_max = bone_edge(shape, construct.mesh);
  tube.size_cut = cut_edge(shape, construct.mesh);
  tube.ring_elements = ring_elements(construct.mesh);
  const auto add = [&](const std::string& name, const WallCrossing& wall, double radius) {
    const bool is_there =
        std::any_of(tube.spots.begin(), tube.spots.end(), [&](const auto& other) { return other.name == name; });
    if (!name.empty() && !is_there) tube.spots.push_back(spot(name, wall.middle, radius, shape, closed));
  };
  for (const auto& planned : screws) {
    add(planned.near_spot, planned.placement.bone->near, planned.near_radius());
    add(planned.far_spot, planned.placement.bone->far, planned.screw.size.core_diameter.value() / 2.0);
  }
  for (const double x : section_lines) tube.section_lines.push_back(closed.closed(0.0, x));

  const mesh::CutTube flat = mesh::mesh_cut_tube(session, tube);
  RolledUp proximal = roll_up(flat.proximal, shape, 0.0), distal = roll_up(flat.distal, shape, closed.gap());
  return {{std::move(proximal.mesh), std::nullopt, std::move(proximal.edge)},
          {std::move(distal.mesh), std::move(distal.edge), std::nullopt}};
}

}  // namespace gapstrain::models
