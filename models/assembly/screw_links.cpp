#include "models/assembly/screw_links.h"

#include "models/assembly/root_flexibility.h"
#include "models/assembly/screw_interface.h"
#include "solver/elements/shell_material.h"

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

// Rigid inside both walls up to their faces, a root joint at each face, a beam between.
ShaftSegment segment(const solver::BeamSection& section, double radius, const Eigen::Vector3d& axis,
                     const Eigen::Vector3d& from, const Eigen::Vector3d& free_from, const RootFractions& root_from,
                     const Eigen::Vector3d& free_to, const Eigen::Vector3d& to, const RootFractions& root_to) {
  const auto seen_at = [&](const Eigen::Vector3d& place, const solver::Matrix6& flexibility) -> solver::Matrix6 {
    const solver::Matrix6 transfer = solver::rigid_transfer(place, to);
    return transfer * flexibility * transfer.transpose();
  };
  ShaftSegment result{from, to, free_from, free_to, solver::Matrix6::Zero()};
  result.flexibility = seen_at(free_from, root_flexibility(root_from, section, radius, axis)) +
                       seen_at(free_to, root_flexibility(root_to, section, radius, axis));
  if ((free_to - free_from).dot(axis) > 0.0)
    result.flexibility += seen_at(free_to, solver::beam_flexibility(section, free_from, free_to));
  return result;
}

// What the interface gives in a wall that the shaft is loaded in at its outer or inner face.
solver::Matrix6 give_in(const WallCrossing& wall, const Eigen::Vector3d& face, const RootFractions& root,
                        const ScrewModel& model, double radius, const Construct& construct, double stiffness) {
  if (stiffness == bonded_interface) return solver::Matrix6::Zero();
  const CorticalBone& cortex = construct.bone.cortex;
  const double modulus_l = cortex.longitudinal_modulus.value(), modulus_t = cortex.transverse_modulus.value();
  const Eigen::Vector3d axis = model.seat.col(2);
  const BoneRing ring{radius, (wall.outer - wall.inner).norm(), std::sqrt(modulus_l * modulus_t),
                      cortex.poissons_ratio_lt * std::sqrt(modulus_t / modulus_l),
                      std::sqrt(cortex.shear_modulus_lr.value() * cortex.shear_modulus_tr.value())};
  return interface_give(stiffness, bonded_flexibility(ring_flexibility(ring, axis), wall.middle,
                                                      root_flexibility(root, model.section, radius, axis), face));
}

}  // namespace

ScrewModel model_screw(const Screw& screw, const ScrewPlacement& placement, const Construct& construct,
                       double plate_thickness, double near_wall, double far_wall) {
  const double radius = screw.size.core_diameter.value() / 2.0;
  const double youngs_modulus = screw.material.youngs_modulus.value();
  const CorticalBone& cortex = construct.bone.cortex;
  // The unit cell's wall is isotropic; a cortex is taken at the geometric mean of its two moduli.
  const double bone_modulus = std::sqrt(cortex.longitudinal_modulus.value() * cortex.transverse_modulus.value());
  const auto& bone = *placement.bone;
  const RootFractions at_near = wall_root(near_wall / radius, youngs_modulus / bone_modulus);
  const RootFractions at_far = wall_root(far_wall / radius, youngs_modulus / bone_modulus);

  ScrewModel model;
  model.section = solver::solid_circle(2.0 * radius, youngs_modulus, screw.material.poissons_ratio);
  model.seat.col(2) = placement.direction;
  model.seat.col(0) = (Eigen::Vector3d::UnitX() - placement.direction.x() * placement.direction).normalized();
  model.seat.col(1) = model.seat.col(0).cross(model.seat.col(2));
  const double stiffness = screw.interface.value_or(construct.screw_interface);
  const solver::Matrix6 far_give = give_in(bone.far, bone.far.inner, at_far, model, radius, construct, stiffness);
  const RootFractions ball;  // gives nothing of its own
  if (screw.kind == ScrewKind::lag) {
    model.head_to_thread = segment(model.section, radius, placement.direction, placement.hole_centre,
                                   placement.hole_centre, ball, bone.far.inner, bone.far.middle, at_far);
    model.head_to_thread.flexibility += far_give;
    return model;
  }
  model.near_give = give_in(bone.near, bone.near.outer, at_near, model, radius, construct, stiffness);
  if (screw.kind == ScrewKind::locking) {
    const PlateHole& hole = only(construct.plates).holes[static_cast<std::size_t>(screw.hole - 1)];
    const RootFractions at_plate =
        rim_root(plate_thickness / radius, youngs_modulus / only(construct.plates).material.youngs_modulus.value(),
                 hole.diameter.value() / (2.0 * radius));
    model.head_to_thread = segment(model.section, radius, placement.direction, placement.hole_centre,
                                   placement.underside, at_plate, bone.near.outer, bone.near.middle, at_near);
    model.plug = plug_flexibility(hole.diameter.value() / 2.0, plate_thickness, radius, youngs_modulus,
                                  screw.material.poissons_ratio);
  } else {
    model.head_to_thread = segment(model.section, radius, placement.direction, placement.hole_centre,
                                   placement.hole_centre, ball, bone.near.outer, bone.near.middle, at_near);
  }
  model.head_to_thread.flexibility += model.near_give;
  if (screw.cortices == 2) {
    model.near_to_far = segment(model.section, radius, placement.direction, bone.near.middle, bone.near.inner,
                                at_near, bone.far.inner, bone.far.middle, at_far);
    const solver::Matrix6 carried = solver::rigid_transfer(bone.near.middle, bone.far.middle);
    model.near_to_far->flexibility += far_give + carried * model.near_give * carried.transpose();
  }
  return model;
}

Eigen::Matrix<double, 6, 6> plug_flexibility(double rim_radius, double thickness, double shaft_radius,
                                             double youngs_modulus, double poissons_ratio) {
  constexpr double even_depth = 0.145, uneven_depth = 0.24;  // of the shaft's hold, in shaft radii
  const Eigen::Matrix3d law = solver::isotropic_shell(youngs_modulus, poissons_ratio).plane_stress;
  const double even = even_depth * shaft_radius * youngs_modulus / (1.0 - poissons_ratio);
  const double uneven = uneven_depth * shaft_radius * youngs_modulus / (1.0 + poissons_ratio);
  Eigen::Matrix3d foot;
  foot << (even + uneven) / 2.0, (even - uneven) / 2.0, 0.0,  //
      (even - uneven) / 2.0, (even + uneven) / 2.0, 0.0,      //
      0.0, 0.0, uneven / 2.0;

  const Eigen::Matrix3d twice_twist = Eigen::Vector3d(1.0, 1.0, 2.0).asDiagonal();
  const double disk_area = std::numbers::pi * rim_radius * rim_radius;
  const double foot_area = std::numbers::pi * shaft_radius * shaft_radius;
  Eigen::Matrix<double, 6, 6> stiffness = Eigen::Matrix<double, 6, 6>::Zero();
  stiffness.topLeftCorner<3, 3>() = disk_area * thickness * law;
  stiffness.bottomRightCorner<3, 3>() =
      disk_area * std::pow(thickness, 3) / 12.0 * (twice_twist * law * twice_twist);
  // Strain at the underside of the rim's modes: the wall's normal points away from the shaft.
  Eigen::Matrix<double, 3, 6> at_underside;
  at_underside << Eigen::Matrix3d::Identity(), thickness / 2.0 * twice_twist;
  stiffness += foot_area * at_underside.transpose() * foot * at_underside;
  return stiffness.inverse();
}

solver::Link shaft_link(const std::string& name, const ShaftSegment& segment, PortPlace from, PortPlace to) {
  const solver::Matrix6 carried = solver::rigid_transfer(segment.from, segment.to);
  return {name,
          {{to.body, to.column, Eigen::MatrixXd::Identity(6, 6)}, {from.body, from.column, -carried.transpose()}},
          segment.flexibility,
          Eigen::VectorXd::Zero(6)};
}

solver::Link plug_link(const std::string& name, const Eigen::Matrix<double, 6, 6>& flexibility, PortPlace hole) {
  return {name,
          {{hole.body, hole.column + 6, Eigen::MatrixXd::Identity(6, 6)}},
          flexibility,
          Eigen::VectorXd::Zero(6)};
}

// With the head's turns free, what is left of the segment's law is that of the way between ball and seat; seen
// from the ball, the shaft is held by its thread.
solver::Link ball_link(const std::string& name, const ScrewModel& model, PortPlace seat,
                       const Eigen::Vector3d& seat_centre, PortPlace thread, bool sideways_only) {
  const ShaftSegment& segment = model.head_to_thread;
  const solver::Matrix6 to_ball = solver::rigid_transfer(segment.to, segment.from);
  const solver::Matrix6 at_ball = to_ball * segment.flexibility * to_ball.transpose();
  const Eigen::MatrixXd axes = model.seat.leftCols(sideways_only ? 2 : 3);
  return {name,
          {{thread.body, thread.column, to_ball.topRows<3>().transpose() * axes},
           {seat.body, seat.column,
            -(solver::rigid_transfer(seat_centre, segment.from).topRows<3>().transpose() * axes)}},
          axes.transpose() * at_ball.topLeftCorner<3, 3>() * axes,
          Eigen::VectorXd::Zero(axes.cols())};
}

std::optional<Eigen::MatrixXd> shared_give(const ScrewModel& model, Eigen::Index head_rows) {
  if (!model.near_to_far || model.near_give.isZero(0.0)) return std::nullopt;
  // The near cortex gets minus the head's link's forces and the far one's carried to it.
  const solver::Matrix6 carried = solver::rigid_transfer(model.near_to_far->from, model.near_to_far->to);
  Eigen::MatrixXd of_head(6, head_rows);
  for (Eigen::Index row = 0; row < head_rows; ++row)
    of_head.col(row) = forces_at_thread(model, Eigen::VectorXd::Unit(head_rows, row));
  return -of_head.transpose() * model.near_give * carried.transpose();
}

Eigen::VectorXd forces_at_thread(const ScrewModel& model, const Eigen::VectorXd& head_link) {
  if (head_link.size() == 6) return head_link;
  const ShaftSegment& segment = model.head_to_thread;
  return solver::rigid_transfer(segment.to, segment.from).topRows<3>().transpose() *
         (model.seat.leftCols(head_link.size()) * head_link);
}

}  // namespace gapstrain::models
