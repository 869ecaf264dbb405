#include "models/assembly/clamp_link.h"

#include "models/assembly/gap_links.h"
#include "models/assembly/surface_place.h"

#include <fmt/format.h>

namespace gapstrain::models {

namespace {

constexpr double clamp_stiffness = 200.0;  // N/mm

// The outer surface where a line leaves the bone for good.
ClampTip outer_tip(int body, const solver::Shell& shell, const Eigen::Vector3d& from,
                   const Eigen::Vector3d& direction, const std::string& label) {
  const auto places = meet(*shell.mesh, from, direction);
  if (places.empty() || places.back().along <= 0.0)
    throw ClampError(fmt::format("the clamp \"{}\" finds no bone of the fragment it is to hold", label));
  const SurfacePlace& place = places.back();
  double wall = 0.0;
  for (std::size_t k = 0; k < place.nodes.size(); ++k)
    wall += place.weights[k] * shell.mesh->thickness(place.nodes[k]);
  return {body, solver::point_port(shell, place.nodes, place.weights, 0.5 * wall)};
}

std::array<ClampTip, 2> plate_clamp_tips(const TemporaryHold& clamp, const PlateShape& plate_shape,
                                         const std::array<const solver::Shell*, 3>& shells, bool is_distal) {
  const mesh::SurfacePoint centre = plate_shape.mid_surface(clamp.along.value(), 0.0);
  const Eigen::Vector3d above = centre.position + centre.normal;
  const auto on_plate = meet(*shells[0]->mesh, above, -centre.normal);
  if (on_plate.empty())
    throw ClampError(fmt::format("the clamp \"{}\" sits over a hole of the plate", clamp.label));
  const int body = is_distal ? 2 : 1;
  return {ClampTip{0, solver::point_port(*shells[0], on_plate.front().nodes, on_plate.front().weights,
                                         0.5 * centre.thickness)},
          outer_tip(body, *shells[static_cast<std::size_t>(body)], above, -centre.normal, clamp.label)};
}

}  // namespace

std::array<ClampTip, 2> clamp_tips(const TemporaryHold& clamp, const Construct& construct,
                                   const PlateShape& plate_shape, const BoneShape& bone_shape,
                                   const std::array<const solver::Shell*, 3>& shells) {
  const double middle = construct.fracture.position.value();
  if (clamp.kind == HoldKind::plate_clamp)
    return plate_clamp_tips(clamp, plate_shape, shells, plate_shape.x_at(clamp.along.value()) > middle);
  const Eigen::Vector3d centre = bone_shape.section(middle).centre, normal = cut_normal(construct.fracture);
  return {outer_tip(1, *shells[1], centre, -normal, clamp.label),
          outer_tip(2, *shells[2], centre, normal, clamp.label)};
}

solver::Link clamp_link(const std::string& name, const std::array<ClampTip, 2>& tips,
                        const std::array<SpotPlace, 2>& places) {
  const Eigen::Vector3d direction = (tips[1].port.centre - tips[0].port.centre).normalized();
  return {name,
          {{places[1].body, places[1].column, direction}, {places[0].body, places[0].column, -direction}},
          Eigen::MatrixXd::Constant(1, 1, 1.0 / clamp_stiffness),
          Eigen::VectorXd::Zero(1)};
}

}  // namespace gapstrain::models
