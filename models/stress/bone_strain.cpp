#include "models/stress/bone_strain.h"

#include "models/stress/surface_smoothing.h"

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

// What strain is not looked at: within a distance of a point.
struct Ball {
  Eigen::Vector3d centre;
  double radius = 0.0;
};

double clearance(const std::vector<Ball>& balls, const Eigen::Vector3d& place, double share = 1.0) {
  double least = 1e300;
  for (const auto& ball : balls) least = std::min(least, (place - ball.centre).norm() - share * ball.radius);
  return least;
}

// What a rigid plug in a sheet does to the strain around it falls with the square of the distance from its middle:
// a diameter off its rim a ninth is left of what it is there. Nearer, ports that are bonded to the bone, a shell
// that does not see the thread, and the mesh have the word.
std::vector<Ball> around_screws(const Assembly& assembly, const std::vector<int>& chosen) {
  std::vector<Ball> balls;
  for (const int index : chosen) {
    const auto& planned = assembly.screws[static_cast<std::size_t>(index)].planned;
    const double core = planned.screw.size.core_diameter.value();
    const auto& bone = *planned.placement.bone;
    balls.push_back({bone.near.middle, 0.5 * core + core_diameters_clear * core});
    if (!planned.far_spot.empty()) balls.push_back({bone.far.middle, 0.5 * core + core_diameters_clear * core});
  }
  return balls;
}

// A force on a point of a shell bends it without bound there; what it does to the wall has died out two decay
// lengths of a cylinder's edge bending off, 2 sqrt(r t) / (3 (1 - nu^2))^(1/4).
std::vector<Ball> under_forces(const Assembly& assembly) {
  std::vector<Ball> balls;
  for (const auto& load : assembly.load_ports.surfaces)
    for (const auto& force : load) {
      const BoneSection section = assembly.bone_shape->section_through(force.position);
      const double radius = std::max(section.semi_y, section.semi_z);
      balls.push_back({force.position, 2.0 * std::sqrt(radius * section.wall) / 1.28});
    }
  return balls;
}

// A held or loaded end section is stiffer than a real one; a bone's width away its strain is the bone's own
// (Saint-Venant).
double clearance_of_ends(const BoneShape& shape, const Eigen::Vector3d& place) {
  const auto width = [&](double x) {
    const BoneSection section = shape.section(x);
    return 2.0 * std::max(section.semi_y, section.semi_z);
  };
  return std::min(place.x() - width(0.0), shape.length() - width(shape.length()) - place.x());
}

// Strain of one fragment under one load.
class FragmentStrain {
 public:
  // `clearance`: of a place from what is not looked at; `counts`: whether its strain is smoothed in with that of
  // places that are clear.
  FragmentStrain(const solver::Shell& shell, const BodyStress& stress,
                 const std::function<double(const Eigen::Vector3d&)>& clearance,
                 const std::function<bool(const Eigen::Vector3d&)>& counts)
      : mesh_(*shell.mesh),
        stress_(stress),
        compliance_(shell.material.plane_stress.inverse()),
        smoothing_(shell.mesh, counts) {
    for (Eigen::Index node = 0; node < mesh_.nodes.rows(); ++node)
      clearance_.push_back(clearance(mesh_.nodes.row(node).transpose()));
  }

  double at_node(int node) const {
    return std::max(strain(stress_.top.row(node).transpose()), strain(stress_.bottom.row(node).transpose()));
  }

  // Smoothed, at all nodes that are clear and where the mesh's sides come out of what is not: what is highest just
  // there is found whatever nodes lie near.
  double largest() const {
    double largest = 0.0;
    for (std::size_t node = 0; node < clearance_.size(); ++node)
      if (clearance_[node] >= 0.0) largest = std::max(largest, smoothed(static_cast<int>(node), 0, 1.0));
    for (const auto& quad : mesh_.quads)
      for (std::size_t k = 0; k < 4; ++k) largest = std::max(largest, where_clear(quad[k], quad[(k + 1) % 4]));
    for (const auto& triangle : mesh_.triangles)
      for (std::size_t k = 0; k < 3; ++k)
        largest = std::max(largest, where_clear(triangle[k], triangle[(k + 1) % 3]));
    return largest;
  }

 private:
  double strain(const Eigen::Vector3d& stress) const { return largest_principal(compliance_ * stress); }

  // Where a side of a cell becomes clear on its way from one node to the other.
  double where_clear(int from, int to) const {
    const double before = clearance_[static_cast<std::size_t>(from)],
                 after = clearance_[static_cast<std::size_t>(to)];
    return (before < 0.0) != (after < 0.0) ? smoothed(from, to, after / (after - before)) : 0.0;
  }

  // At a place between two nodes, `share` of the first.
  double smoothed(int one, int other, double share) const {
    const auto between = [&](const Eigen::MatrixX3d& of) -> Eigen::Vector3d {
      return (share * of.row(one) + (1.0 - share) * of.row(other)).transpose();
    };
    const double wall = share * mesh_.thickness(one) + (1.0 - share) * mesh_.thickness(other);
    const auto reading =
        smoothing_.at(between(mesh_.nodes), between(mesh_.directors).normalized(), walls_smoothed * wall);
    if (!reading) return 0.0;
    return std::max(strain(reading->of(stress_.top)), strain(reading->of(stress_.bottom)));
  }

  const mesh::ShellMesh& mesh_;
  const BodyStress& stress_;
  Eigen::Matrix3d compliance_;
  SurfaceSmoothing smoothing_;
  std::vector<double> clearance_;  // of each node
};

}  // namespace

BoneFindings measure_bone(const Assembly& assembly, const std::vector<int>& chosen,
                          const std::vector<const BodyStress*>& stress) {
  const std::vector<Ball> screws = around_screws(assembly, chosen), forces = under_forces(assembly);
  const auto clear_of_others = [&](const Eigen::Vector3d& place) {
    return std::min(clearance(forces, place), clearance_of_ends(*assembly.bone_shape, place));
  };
  BoneFindings findings;
  for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
    if (is_plate(assembly.construct, b)) continue;
    const solver::Shell& shell = assembly.bodies[b].body->shell();
    // Smoothing looks on both sides of where it becomes clear: what is fitted to one side alone follows the mesh
    // more.
    constexpr double left_out = 0.8;  // of a ball: of a screw's, all up to 0.7 of its core's diameter off its rim
    const FragmentStrain strain(
        shell, *stress[b],
        [&](const Eigen::Vector3d& place) { return std::min(clearance(screws, place), clear_of_others(place)); },
        [&](const Eigen::Vector3d& place) {
          return std::min(clearance(screws, place, left_out), clearance(forces, place, left_out)) >= 0.0;
        });
    findings.peak_strain = std::max(findings.peak_strain, strain.largest());
    for (Eigen::Index node = 0; node < shell.mesh->nodes.rows(); ++node) {
      const Eigen::Vector3d place = shell.mesh->nodes.row(node).transpose();
      if (clearance(screws, place) < 0.0 && clear_of_others(place) >= 0.0)
        findings.peak_strain_at_screws =
            std::max(findings.peak_strain_at_screws, strain.at_node(static_cast<int>(node)));
    }
  }
  if (const auto& yield = assembly.construct.bone.cortex.yield_strain; yield && findings.peak_strain > 0.0)
    findings.factor_to_yield_strain = *yield / findings.peak_strain;
  return findings;
}

}  // namespace gapstrain::models
