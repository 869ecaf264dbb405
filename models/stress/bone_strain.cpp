#include "models/stress/bone_strain.h"

#include <Eigen/LU>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

// Larger magnitude of the two principal strains of (e11, e22, 2 e12).
double largest_principal(const Eigen::Vector3d& strain) {
  const double mean = 0.5 * (strain(0) + strain(1));
  const double radius = std::hypot(0.5 * (strain(0) - strain(1)), 0.5 * strain(2));
  return std::abs(mean) + radius;
}

// Bonded ports make stress within a wall of a screw indicative only: a shell does not see the thread's
// surroundings.
bool is_beside_screw(const Assembly& assembly, const std::vector<int>& chosen, const Eigen::Vector3d& place,
                     double wall) {
  return std::any_of(chosen.begin(), chosen.end(), [&](int index) {
    const auto& planned = assembly.screws[static_cast<std::size_t>(index)].planned;
    const double reach = planned.screw.size.core_diameter.value() / 2.0 + wall;
    const auto& bone = *planned.placement.bone;
    return (place - bone.near.middle).norm() < reach || (place - bone.far.middle).norm() < reach;
  });
}

// A held or loaded end section is stiffer than a real one; a bone's width away its strain is the bone's own
// (Saint-Venant).
bool is_beside_end(const Assembly& assembly, double x) {
  const BoneShape& shape = *assembly.bone_shape;
  const auto width = [&](double place) {
    const BoneSection section = shape.section(place);
    return 2.0 * std::max(section.semi_y, section.semi_z);
  };
  return x < width(0.0) || x > shape.length() - width(shape.length());
}

// A force on a point of a shell bends it without bound there; what it does to the wall has died out two decay
// lengths of a cylinder's edge bending off, 2 sqrt(r t) / (3 (1 - nu^2))^(1/4).
bool is_under_force(const Assembly& assembly, const Eigen::Vector3d& place, double wall) {
  for (const auto& load : assembly.load_ports.surfaces)
    for (const auto& force : load) {
      const BoneSection section = assembly.bone_shape->section_through(force.position);
      const double radius = std::max(section.semi_y, section.semi_z);
      if ((place - force.position).norm() < 2.0 * std::sqrt(radius * wall) / 1.28) return true;
    }
  return false;
}

}  // namespace

BoneFindings measure_bone(const Assembly& assembly, const std::vector<int>& chosen,
                          const std::vector<const BodyStress*>& stress) {
  BoneFindings findings;
  for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
    if (is_plate(assembly.construct, b)) continue;
    const solver::Shell& shell = assembly.bodies[b].body->shell();
    const Eigen::Matrix3d compliance = shell.material.plane_stress.inverse();
    for (Eigen::Index node = 0; node < shell.mesh->nodes.rows(); ++node) {
      if (is_beside_end(assembly, shell.mesh->nodes(node, 0)) ||
          is_under_force(assembly, shell.mesh->nodes.row(node).transpose(), shell.mesh->thickness(node)))
        continue;
      double& peak =
          is_beside_screw(assembly, chosen, shell.mesh->nodes.row(node).transpose(), shell.mesh->thickness(node))
              ? findings.peak_strain_at_screws
              : findings.peak_strain;
      for (const auto* level : {&stress[b]->top, &stress[b]->bottom})
        peak = std::max(peak, largest_principal(compliance * level->row(node).transpose()));
    }
  }
  if (const auto& yield = assembly.construct.bone.cortex.yield_strain; yield && findings.peak_strain > 0.0)
    findings.factor_to_yield_strain = *yield / findings.peak_strain;
  return findings;
}

}  // namespace gapstrain::models
