#include "models/patient/intact_strain.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

using std::numbers::pi;
constexpr int points_around = 144;  // the integrals of a periodic function by equal steps: exact to rounding

struct Resultants {  // of what acts distal of a section, in the section's axes
  double normal = 0.0, bending_y = 0.0, bending_z = 0.0, torsion = 0.0;
};

// As models/assembly/load_setup applies the load at the ends. Between balls the distal one bears nothing sideways:
// the axial force runs along the line of the balls, and both ends get opposite moments.
Resultants resultants(const BoneShape& shape, const BoneSection& section, const LoadCase& load) {
  assert(load.supports == ball_joints() || load.supports == cantilever());
  assert(!load.line && load.forces.empty() && !load.four_point);
  const Eigen::Vector3d offset(load.ball_distance.value(), load.ball_offset_y.value(), load.ball_offset_z.value());
  const Eigen::Vector3d distal = shape.section(shape.length()).centre + offset;
  const Eigen::Vector3d proximal =
      shape.section(0.0).centre + Eigen::Vector3d(-offset.x(), offset.y(), offset.z());
  const Eigen::Vector3d line = load.supports == ball_joints() ? Eigen::Vector3d((distal - proximal).normalized())
                                                              : Eigen::Vector3d(Eigen::Vector3d::UnitX());
  const Eigen::Vector3d force = -load.axial_compression.value() * line +
                                Eigen::Vector3d(0.0, load.transverse_y.value(), load.transverse_z.value());
  const Eigen::Vector3d moment(load.torsion.value(), load.bending_y.value(), load.bending_z.value());
  const Eigen::Vector3d here = moment + (distal - section.centre).cross(force);
  return {force.dot(section.tangent), here.dot(section.y_axis), here.dot(section.z_axis),
          here.dot(section.tangent)};
}

// Of the wall's outside, per torsion.
double outer_shear_stress(const TubeSection& tube, double wall) {
  const double radius = tube.middle_length / (2.0 * pi);
  const double flow = 1.0 / (2.0 * tube.middle_area);
  return flow / wall * (1.0 + 0.5 * wall / radius) / (1.0 + std::pow(0.5 * wall / radius, 2));
}

// Principal strains of uniaxial stress along the shaft with shear: larger, smaller, and the larger one's angle to
// the shaft.
struct Mohr {
  double larger = 0.0, smaller = 0.0, angle = 0.0;
};
Mohr mohr(double along, double shear, double contraction) {
  const double middle = 0.5 * (1.0 - contraction) * along, half = 0.5 * (1.0 + contraction) * along;
  const double radius = std::hypot(half, 0.5 * shear);
  return {middle + radius, middle - radius, 0.5 * std::atan2(0.5 * shear, half)};
}

void look_round(const BoneSection& section, const CorticalBone& bone, const Resultants& load, Length position,
                IntactStrain& worst) {
  const TubeSection tube = tube_section(section);
  const double modulus = bone.longitudinal_modulus.value();
  const double shear =
      std::abs(load.torsion) * outer_shear_stress(tube, section.wall) / bone.shear_modulus_lt.value();
  worst.shear = std::max(worst.shear, shear);
  for (int i = 0; i < points_around; ++i) {
    const double parameter = 2.0 * pi * i / points_around;
    const Eigen::Vector2d place = section.outer().point(parameter);
    const double along = (load.normal / tube.area + load.bending_y * place.y() / tube.inertia_y -
                          load.bending_z * place.x() / tube.inertia_z) /
                         modulus;
    const Mohr found = mohr(along, shear, bone.poissons_ratio_lt);
    const Angle around = std::atan2(place.x(), place.y()) * radian;
    if (found.larger > worst.tension.principal)
      worst.tension = {found.larger, along, shear, found.angle * radian, position, around};
    if (found.smaller < worst.compression.principal)
      worst.compression = {found.smaller, along, shear, (0.5 * pi - found.angle) * radian, position, around};
  }
}

}  // namespace

TubeSection tube_section(const BoneSection& section) {
  const Ellipse outer = section.outer();
  TubeSection tube;
  const double step = 2.0 * pi / points_around;
  const double gauss = 0.5 / std::numbers::sqrt3;  // two points through the wall: exact for a cubic
  for (int i = 0; i < points_around; ++i) {
    const double parameter = step * i;
    const Eigen::Vector2d place = outer.point(parameter), normal = outer.normal(parameter);
    const double arc = outer.speed(parameter) * step, curvature = outer.curvature(parameter);
    for (const double share : {0.5 - gauss, 0.5 + gauss}) {
      const double depth = share * section.wall;
      const Eigen::Vector2d inside = place - depth * normal;
      const double area = 0.5 * section.wall * arc * (1.0 - depth * curvature);
      tube.area += area;
      tube.inertia_y += area * inside.y() * inside.y();
      tube.inertia_z += area * inside.x() * inside.x();
    }
    const double half = 0.5 * section.wall;
    tube.middle_length += arc * (1.0 - half * curvature);
    tube.middle_area += 0.5 * (place - half * normal).dot(normal) * arc * (1.0 - half * curvature);
  }
  return tube;
}

IntactStrain intact_strain(const Bone& bone, Aspect plate_aspect, const LoadCase& load) {
  const BoneShape shape(bone, plate_aspect);
  double width = 0.0;
  for (const BoneStation& station : bone.stations)
    width = std::max({width, station.width_mediolateral.value(), station.width_craniocaudal.value()});
  constexpr int places = 100;
  IntactStrain worst;
  for (int i = 0; i <= places; ++i) {
    const double x = width + (shape.length() - 2.0 * width) * i / places;
    const BoneSection section = shape.section(x);
    look_round(section, bone.cortex, resultants(shape, section, load), x * mm, worst);
  }
  return worst;
}

}  // namespace gapstrain::models
