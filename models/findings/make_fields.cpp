#include "models/findings/make_fields.h"

#include "models/findings/screw_forces.h"
#include "models/findings/solve.h"
#include "solver/bodies/stress.h"
#include "solver/elements/beam.h"

namespace gapstrain::models {

namespace {

ShellField shell_field(const BuiltBody& body, BodyKind kind, const Eigen::VectorXd& displacements,
                       const BodyStress& stress) {
  ShellField field;
  field.name = body.name;
  field.kind = kind;
  field.mesh = body.body->shell().mesh;
  const Eigen::Map<const Eigen::Matrix<double, Eigen::Dynamic, 6, Eigen::RowMajor>> nodal(
      displacements.data(), displacements.size() / 6, 6);
  field.displacements = nodal.leftCols<3>();
  field.rotations = nodal.rightCols<3>();
  field.stress_top = stress.top;
  field.stress_middle = stress.middle;
  field.stress_bottom = stress.bottom;
  field.von_mises_top = solver::von_mises(stress.top);
  field.von_mises_middle = solver::von_mises(stress.middle);
  field.von_mises_bottom = solver::von_mises(stress.bottom);
  return field;
}

// Shape of a screw for display: the shaft follows its ports' motions, cubic pieces are not drawn.
ScrewField screw_field(const Assembly& assembly, const CandidateScrew& candidate,
                       const solver::Solution& solution) {
  const auto& placement = candidate.planned.placement;
  const auto& links = assembly.system->links();
  const auto motion_at = [&](const solver::LinkEnd& end, const Eigen::Vector3d& centre,
                             const Eigen::Vector3d& place) {
    const Eigen::Matrix<double, 6, 1> motion =
        solution.motions[static_cast<std::size_t>(end.body)].col(0).segment<6>(end.column);
    return Eigen::Vector3d((solver::rigid_transfer(centre, place) * motion).head<3>());
  };
  ScrewField field;
  field.label = candidate.planned.screw.label;
  field.hole = candidate.planned.screw.hole;
  field.core_radius = candidate.planned.screw.size.core_diameter.value() / 2.0;
  const auto hole = static_cast<std::size_t>(field.hole - 1);
  field.head_radius = assembly.construct.plate.holes[hole].diameter.value() / 2.0;

  const auto& first = links[static_cast<std::size_t>(candidate.links[1])];
  const auto& near = first.ends[0];
  const auto& head = first.ends[1];
  const auto& segment = candidate.model.head_to_near;
  const auto add = [&](const Eigen::Vector3d& place, const Eigen::Vector3d& displacement, double stress) {
    field.axis.push_back(place);
    field.displacements.push_back(displacement);
    field.stress.push_back(stress);
  };
  const auto fibre_stress = [&](const ShaftSegment& part, const Eigen::VectorXd& link,
                                const Eigen::Vector3d& place) {
    return shaft_stress(shaft_force(part, link, place), placement.direction, field.core_radius).direct;
  };
  const Eigen::VectorXd head_force = link_force(solution, candidate.links[1]);
  const double head_stress = fibre_stress(segment, head_force, segment.free_from);
  const double near_stress = fibre_stress(segment, head_force, segment.free_to);
  for (const auto& place : {placement.head_top, segment.from, segment.free_from})
    add(place, motion_at(head, segment.from, place), head_stress);
  for (const auto& place : {segment.free_to, segment.to})
    add(place, motion_at(near, segment.to, place), near_stress);
  if (candidate.model.near_to_far) {
    const auto& shaft = *candidate.model.near_to_far;
    const auto& far = links[static_cast<std::size_t>(candidate.links[2])].ends[0];
    const Eigen::VectorXd shaft_force = link_force(solution, candidate.links[2]);
    add(shaft.free_from, motion_at(near, shaft.from, shaft.free_from),
        fibre_stress(shaft, shaft_force, shaft.free_from));
    const double far_stress = fibre_stress(shaft, shaft_force, shaft.free_to);
    for (const auto& place : {shaft.free_to, shaft.to, placement.tip})
      add(place, motion_at(far, shaft.to, place), place == placement.tip ? 0.0 : far_stress);
  } else {
    add(placement.tip, motion_at(near, segment.to, placement.tip), 0.0);
  }
  return field;
}

}  // namespace

LoadFields make_fields(const Assembly& assembly, const std::vector<int>& chosen, const std::string& load,
                       const std::array<Eigen::VectorXd, 3>& displacements,
                       const std::array<const BodyStress*, 3>& stress, const solver::Solution& solution) {
  LoadFields fields;
  fields.load = load;
  for (std::size_t b = 0; b < 3; ++b)
    fields.shells.push_back(shell_field(assembly.bodies[b], b == plate_body ? BodyKind::plate : BodyKind::bone,
                                        displacements[b], *stress[b]));
  for (const int screw : chosen)
    fields.screws.push_back(screw_field(assembly, assembly.screws[static_cast<std::size_t>(screw)], solution));
  return fields;
}

}  // namespace gapstrain::models
