#include "models/assembly/contact_spots.h"

#include "models/assembly/body_numbers.h"
#include "models/assembly/surface_place.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr double give_depth = 0.05;  // mm of bone; small against all else, it keeps close pairs apart
constexpr double spots_along = 40;   // of a line, at refinement 1

bool is_over_hole(const Plate& plate, double along, double across, double clearance) {
  return std::any_of(plate.holes.begin(), plate.holes.end(), [&](const PlateHole& hole) {
    const double straight = 0.5 * (hole.slot_length - hole.diameter).value();
    const double beyond = std::max(std::abs(along - hole.position.value()) - straight, 0.0);
    return std::hypot(beyond, across) < 0.5 * hole.diameter.value() + clearance;
  });
}

struct BoneBelow {
  std::size_t fragment = 0;
  SurfacePlace place;
};

// The bone's mid-surface straight below a place of the plate.
std::optional<BoneBelow> bone_below(const Construct& construct, const std::vector<solver::Shell>& shells,
                                    const Eigen::Vector3d& from, const Eigen::Vector3d& down) {
  std::optional<BoneBelow> nearest;
  for (std::size_t f = 0; f < fragment_count(construct); ++f) {
    const auto places = meet(*shells[body_of_fragment(construct, f)].mesh, from, down);
    if (!places.empty() && (!nearest || places.front().along < nearest->place.along))
      nearest = {f, places.front()};
  }
  return nearest;
}

}  // namespace

std::vector<UndersideSpot> underside_spots(const Construct& construct, std::size_t plate,
                                           const PlateShape& plate_shape, const BoneShape& bone_shape,
                                           const std::vector<solver::Shell>& shells) {
  const solver::Shell& plate_shell = shells[body_of_plate(plate)];
  const auto count = static_cast<int>(std::lround(spots_along * construct.mesh.refinement));
  const double spacing = construct.plates[plate].length.value() / count;
  const double canal_depth = bone_shape.reach();
  std::vector<UndersideSpot> spots;
  for (int k = 0; k < count; ++k) {
    const double along = (k + 0.5) * spacing;
    const mesh::SurfacePoint centre = plate_shape.mid_surface(along, 0.0);
    const double half = 0.5 * centre.thickness;
    const double rest = -bone_shape.depth(centre.position - half * centre.normal);
    for (const double side : {-1.0, 1.0}) {
      const double across = side * 0.25 * plate_shape.width(along);
      if (is_over_hole(construct.plates[plate], along, across, 0.0)) continue;
      const Eigen::Vector3d above = centre.position + Eigen::Vector3d(0.0, across, 0.0) + centre.normal;
      const auto on_plate = meet(*plate_shell.mesh, above, -centre.normal);
      const auto below = bone_below(construct, shells, above, -centre.normal);
      if (on_plate.empty() || !below || below->place.along > canal_depth) continue;
      const solver::Shell& bone = shells[body_of_fragment(construct, below->fragment)];
      double wall = 0.0;
      for (std::size_t m = 0; m < below->place.nodes.size(); ++m)
        wall += below->place.weights[m] * bone.mesh->thickness(below->place.nodes[m]);
      UndersideSpot spot;
      spot.plate = solver::point_port(plate_shell, on_plate.front().nodes, on_plate.front().weights, -half);
      spot.bone = solver::point_port(bone, below->place.nodes, below->place.weights, 0.5 * wall);
      spot.on_plate = plate;
      spot.fragment = below->fragment;
      spot.along = along;
      spot.area = 0.5 * spacing * plate_shape.width(along);
      spot.gap = std::max(rest, 0.0);
      spot.normal = centre.normal;
      spots.push_back(std::move(spot));
    }
  }
  return spots;
}

double prebend_height(const Plate& plate, double fracture_along, double along, Length prebend) {
  const double arm = along < fracture_along ? fracture_along : plate.length.value() - fracture_along;
  return prebend.value() * std::max(0.0, 1.0 - std::abs(along - fracture_along) / arm);
}

PairLinks pair_links(const std::string& name, const EndsAlong& ends_along, const Eigen::Vector3d& normal,
                     double gap, double area, const CorticalBone& cortex) {
  Eigen::Matrix<double, 3, 2> across;
  across.col(0) = normal.unitOrthogonal();
  across.col(1) = normal.cross(across.col(0));
  const auto link = [&](const Eigen::MatrixXd& directions, double modulus) {
    const Eigen::Index count = directions.cols();
    return solver::Link{name, ends_along(directions),
                        give_depth / (modulus * area) * Eigen::MatrixXd::Identity(count, count),
                        Eigen::VectorXd::Zero(count)};
  };
  PairLinks links{link(normal, cortex.longitudinal_modulus.value()),
                  link(across, cortex.shear_modulus_lr.value())};
  links.normal.initial(0) = -gap;
  return links;
}

}  // namespace gapstrain::models
