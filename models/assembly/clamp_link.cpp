#include "models/assembly/clamp_link.h"

#include "models/assembly/body_numbers.h"
#include "models/assembly/gap_links.h"
#include "models/assembly/surface_place.h"
#include "models/geometry/fracture_cut.h"

#include <fmt/format.h>

#include <utility>

namespace gapstrain::models {

namespace {

constexpr double clamp_stiffness = 200.0;  // N/mm

// The outer surface where a line leaves the bone for good.
ClampTip outer_tip(std::size_t body, const std::vector<solver::Shell>& shells, const Eigen::Vector3d& from,
                   const Eigen::Vector3d& direction, const std::string& label) {
  auto port = outer_port(shells[body], from, direction);
  if (!port) throw ClampError(fmt::format("the clamp \"{}\" finds no bone of the fragment it is to hold", label));
  return {body, std::move(*port)};
}

std::array<ClampTip, 2> plate_clamp_tips(const TemporaryHold& clamp, const PlateShape& plate_shape,
                                         const std::vector<solver::Shell>& shells, std::size_t bone) {
  const std::size_t plate = body_of_plate(clamp.plate);
  const mesh::SurfacePoint centre = plate_shape.mid_surface(clamp.along.value(), 0.0);
  const Eigen::Vector3d above = centre.position + centre.normal;
  const auto on_plate = meet(*shells[plate].mesh, above, -centre.normal);
  if (on_plate.empty())
    throw ClampError(fmt::format("the clamp \"{}\" sits over a hole of the plate", clamp.label));
  return {ClampTip{plate, solver::point_port(shells[plate], on_plate.front().nodes, on_plate.front().weights,
                                             0.5 * centre.thickness)},
          outer_tip(bone, shells, above, -centre.normal, clamp.label)};
}

}  // namespace

std::array<ClampTip, 2> clamp_tips(const TemporaryHold& clamp, const Construct& construct,
                                   const PlateShape& plate_shape, const BoneShape& bone_shape,
                                   const std::vector<solver::Shell>& shells) {
  if (clamp.kind == HoldKind::plate_clamp) {
    const Length x = plate_shape.x_at(clamp.along.value()) * mm;
    return plate_clamp_tips(clamp, plate_shape, shells,
                            body_of_fragment(construct, fragment_at(construct.fractures, x)));
  }
  const Fracture& fracture = only(construct.fractures);
  const Eigen::Vector3d centre = bone_shape.section(fracture.position.value()).centre,
                        normal = cut_normal(fracture);
  return {outer_tip(body_of_fragment(construct, 0), shells, centre, -normal, clamp.label),
          outer_tip(body_of_fragment(construct, 1), shells, centre, normal, clamp.label)};
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
