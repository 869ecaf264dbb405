#include "models/build/screw_links.h"

#include "models/build/root_flexibility.h"
#include "solver/elements/shell_material.h"

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

}  // namespace

ScrewModel model_screw(const Screw& screw, const ScrewPlacement& placement, const Plate& plate,
                       double plate_thickness, const PlateHole& hole, double near_wall, double far_wall,
                       const CorticalBone& cortex) {
  const double radius = screw.size.core_diameter.value() / 2.0;
  const double youngs_modulus = screw.material.youngs_modulus.value();
  // The unit cell's wall is isotropic; a cortex is taken at the geometric mean of its two moduli.
  const double bone_modulus = std::sqrt(cortex.longitudinal_modulus.value() * cortex.transverse_modulus.value());
  const auto& bone = *placement.bone;

  const RootFractions at_plate =
      rim_root(plate_thickness / radius, youngs_modulus / plate.material.youngs_modulus.value(),
               hole.diameter.value() / (2.0 * radius));
  const RootFractions at_near = wall_root(near_wall / radius, youngs_modulus / bone_modulus);
  const RootFractions at_far = wall_root(far_wall / radius, youngs_modulus / bone_modulus);

  ScrewModel model;
  model.section = solver::solid_circle(2.0 * radius, youngs_modulus, screw.material.poissons_ratio);
  model.head_to_near = segment(model.section, radius, placement.direction, placement.hole_centre,
                               placement.underside, at_plate, bone.near.outer, bone.near.middle, at_near);
  if (screw.cortices == 2)
    model.near_to_far = segment(model.section, radius, placement.direction, bone.near.middle, bone.near.inner,
                                at_near, bone.far.inner, bone.far.middle, at_far);
  model.plug = plug_flexibility(hole.diameter.value() / 2.0, plate_thickness, radius, youngs_modulus,
                                screw.material.poissons_ratio);
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

}  // namespace gapstrain::models
