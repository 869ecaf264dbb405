#include "models/measures/make_fields.h"

#include "models/assembly/plate_bends.h"
#include "models/measures/compression.h"
#include "models/measures/screw_forces.h"
#include "models/measures/solve.h"
#include "solver/bodies/stress.h"
#include "solver/elements/beam.h"
#include "solver/motion/rotation.h"

#include <algorithm>

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

// Of a body's nodes (6n), where the construct turns far: shifts in space, and turns of their frames.
Eigen::VectorXd as_placed(const ConstructState& state, std::size_t body, const mesh::ShellMesh& mesh,
                          Eigen::VectorXd displacements) {
  if (!state.large) return displacements;
  for (Eigen::Index node = 0; node < mesh.nodes.rows(); ++node) {
    const Eigen::Vector3d from = mesh.nodes.row(node).transpose();
    auto moved = displacements.segment<6>(6 * node);
    const auto placed = solver::place_point(state.large->nodes[body], from, moved.head<3>());
    moved << placed.place - from, solver::turn_of(placed.frame);
  }
  return displacements;
}

// Where plates have bent for good, on top of a body's elastic displacements (6n).
Eigen::VectorXd with_plate_bends(const Assembly& assembly, std::size_t body, const solver::Yielded& yielded,
                                 Eigen::VectorXd displacements) {
  if (!is_plate(assembly.construct, body) || yielded.deformed.isZero(0.0)) return displacements;
  const PlateMesh& plate = assembly.plates[body].mesh;
  for (Eigen::Index node = 0; node < plate.along_across.rows(); ++node)
    displacements.segment<6>(6 * node) +=
        bent_motion(assembly, body, yielded, plate.along_across(node, 0), plate.mesh->nodes.row(node).transpose());
  return displacements;
}

Eigen::Vector3d motion_at(const solver::Solution& solution, const solver::LinkEnd& end,
                          const Eigen::Vector3d& centre, const Eigen::Vector3d& place) {
  const Eigen::Matrix<double, 6, 1> motion = solution.motions[end.body].col(0).segment<6>(end.column);
  return (solver::rigid_transfer(centre, place) * motion).head<3>();
}

double radius_of_head(const Assembly& assembly, const Screw& screw) {
  if (screw.hole == 0) return 0.8 * screw.size.thread_diameter.value();  // from memory, for the picture only
  return only(assembly.construct.plates).holes[static_cast<std::size_t>(screw.hole - 1)].diameter.value() / 2.0;
}

// Shape of a screw for display: the shaft follows its ports' motions, so what bends where it leaves a wall, for
// good or not, is a kink there; cubic pieces between are not drawn.
ScrewField screw_field(const Assembly& assembly, const CandidateScrew& candidate, const ConstructState& state) {
  const solver::Solution& solution = state.pressed.solution;
  const auto& placement = candidate.planned.placement;
  const auto& links = assembly.system->links();
  const Screw& screw = candidate.planned.screw;
  ScrewField field;
  field.label = screw.label;
  field.hole = screw.hole;
  field.core_radius = screw.size.core_diameter.value() / 2.0;
  field.head_radius = radius_of_head(assembly, screw);

  const auto& first = links[static_cast<std::size_t>(candidate.head)];
  const auto& thread = first.ends[0];
  const auto& seat = first.ends[1];
  const auto& segment = candidate.model.head_to_thread;
  const auto add = [&](const solver::LinkEnd& end, const Eigen::Vector3d& centre, const Eigen::Vector3d& place,
                       double stress) {
    field.axis.push_back(place);
    field.displacements.push_back(motion_at(solution, end, centre, place));
    if (screw.hole > 0 && is_plate(assembly.construct, end.body)) {
      const double along =
          assembly.construct.plates[end.body].holes[static_cast<std::size_t>(screw.hole - 1)].position.value();
      field.displacements.back() += bent_motion(assembly, end.body, state.yielded, along, place).head<3>();
    }
    if (state.large)
      field.displacements.back() =
          solver::place_point(state.large->nodes[end.body], place, field.displacements.back()).place - place;
    field.stress.push_back(stress);
  };
  const auto fibre_stress = [&](const ShaftSegment& part, const Eigen::VectorXd& link,
                                const Eigen::Vector3d& place) {
    return shaft_stress(shaft_force(part, link, place), placement.direction, field.core_radius).direct;
  };
  const Eigen::VectorXd head_force = forces_at_thread(candidate.model, link_force(solution, candidate.head));
  const double head_stress = fibre_stress(segment, head_force, segment.free_from);
  const double thread_stress = fibre_stress(segment, head_force, segment.free_to);
  add(seat, candidate.seat, placement.head_top, head_stress);
  add(seat, candidate.seat, segment.from, head_stress);
  if (segment.free_from != segment.from) add(seat, candidate.seat, segment.free_from, head_stress);
  add(thread, segment.to, segment.free_to, thread_stress);
  add(thread, segment.to, segment.to, thread_stress);
  if (candidate.far) {
    const auto& shaft = *candidate.model.near_to_far;
    const auto& far = links[static_cast<std::size_t>(*candidate.far)].ends[0];
    const Eigen::VectorXd shaft_link = link_force(solution, *candidate.far);
    add(thread, shaft.from, shaft.free_from, fibre_stress(shaft, shaft_link, shaft.free_from));
    const double far_stress = fibre_stress(shaft, shaft_link, shaft.free_to);
    add(far, shaft.to, shaft.free_to, far_stress);
    add(far, shaft.to, shaft.to, far_stress);
    add(far, shaft.to, placement.tip, 0.0);
  } else {
    add(thread, segment.to, placement.tip, 0.0);
  }
  return field;
}

HoldField hold_field(const Hold& hold) { return {hold.hold.label, hold.ends[0], hold.ends[1]}; }

}  // namespace

LoadFields make_fields(const Assembly& assembly, const std::vector<int>& chosen, const std::string& load,
                       const std::vector<Eigen::VectorXd>& displacements,
                       const std::vector<const BodyStress*>& stress, const ConstructState& loaded) {
  LoadFields fields;
  fields.load = load;
  for (std::size_t b = 0; b < assembly.bodies.size(); ++b)
    fields.shells.push_back(shell_field(assembly.bodies[b],
                                        is_plate(assembly.construct, b) ? BodyKind::plate : BodyKind::bone,
                                        as_placed(loaded, b, *assembly.bodies[b].body->shell().mesh,
                                                  with_plate_bends(assembly, b, loaded.yielded, displacements[b])),
                                        *stress[b]));
  for (const int screw : chosen)
    fields.screws.push_back(screw_field(assembly, assembly.screws[static_cast<std::size_t>(screw)], loaded));
  return fields;
}

StepFields make_step_fields(const Assembly& assembly, const ProcedureStep& step, const StepState& state,
                            const std::string& text) {
  StepFields fields;
  fields.text = text;
  fields.force = force_across(assembly, state).value();
  const auto& solution = state.pressed.solution;
  const auto displacements = recover_displacements(assembly, {solution});
  for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
    ShellField field;
    field.name = assembly.bodies[b].name;
    field.kind = is_plate(assembly.construct, b) ? BodyKind::plate : BodyKind::bone;
    field.mesh = assembly.bodies[b].body->shell().mesh;
    const Eigen::VectorXd moved = with_plate_bends(assembly, b, state.yielded, displacements[b]);
    field.displacements = Eigen::Map<const Eigen::Matrix<double, Eigen::Dynamic, 6, Eigen::RowMajor>>(
                              moved.data(), moved.size() / 6, 6)
                              .leftCols<3>();
    fields.shells.push_back(std::move(field));
  }
  const auto works_on = [&](int screw) {
    const auto is_among = [&](const std::vector<int>& screws) {
      return std::find(screws.begin(), screws.end(), screw) != screws.end();
    };
    return is_among(step.insert) || is_among(step.tighten);
  };
  for (const int screw : state.screws) {
    fields.screws.push_back(screw_field(assembly, assembly.screws[static_cast<std::size_t>(screw)], state));
    fields.screws.back().is_worked_on = works_on(screw);
  }
  for (const int hold : state.holds)
    fields.holds.push_back(hold_field(assembly.holds[static_cast<std::size_t>(hold)]));
  return fields;
}

}  // namespace gapstrain::models
