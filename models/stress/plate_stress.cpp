#include "models/stress/plate_stress.h"

#include "models/stress/plate_sections.h"
#include "models/stress/rim_factors.h"
#include "solver/bodies/stress.h"

#include <Eigen/Geometry>

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace gapstrain::models {

namespace {

// Largest von Mises stress over some nodes and all three levels. `rims`: see rims_of_nodes.
PlatePeak peak_of(const Assembly& assembly, const BodyStress& stress, const std::vector<int>& nodes,
                  const std::vector<int>& rims) {
  PlatePeak peak;
  double largest = -1.0;
  const auto consider = [&](const Eigen::MatrixX3d& level, PlateFace face) {
    for (const int node : nodes) {
      const double value = solver::von_mises(level.row(node))(0);
      if (value <= largest) continue;
      largest = value;
      peak.von_mises = value * mpa;
      peak.along = only(assembly.plates).mesh.along_across(node, 0) * mm;
      peak.across = only(assembly.plates).mesh.along_across(node, 1) * mm;
      peak.face = face;
      const int hole = rims[static_cast<std::size_t>(node)];
      peak.hole = hole > 0 ? std::optional(hole) : std::nullopt;
    }
  };
  consider(stress.top, PlateFace::top);
  consider(stress.bottom, PlateFace::bottom);
  consider(stress.middle, PlateFace::middle);
  return peak;
}

// Stress along the rim's tangent at one node of a round hole, from its place on the flat plate.
double tangential(const Eigen::Vector3d& stress, const Eigen::Vector2d& from_centre) {
  const Eigen::Vector2d tangent = Eigen::Vector2d(-from_centre.y(), from_centre.x()).normalized();
  return stress(0) * tangent.x() * tangent.x() + stress(1) * tangent.y() * tangent.y() +
         2.0 * stress(2) * tangent.x() * tangent.y();
}

// Three-dimensional over shell peak at an empty round hole. Taken on the tangential stress, whose spurious
// companion across the free edge then drops out.
double solid_share(const Assembly& assembly, const BodyStress& stress, const std::vector<int>& rim,
                   const PlateHole& hole) {
  const Eigen::Vector2d centre(hole.position.value(), 0.0);
  Eigen::VectorXd top(static_cast<Eigen::Index>(rim.size())), bottom(top.size());
  for (std::size_t k = 0; k < rim.size(); ++k) {
    const Eigen::Vector2d arm = only(assembly.plates).mesh.along_across.row(rim[k]).transpose() - centre;
    const auto row = static_cast<Eigen::Index>(k);
    top(row) = tangential(stress.top.row(rim[k]).transpose(), arm);
    bottom(row) = tangential(stress.bottom.row(rim[k]).transpose(), arm);
  }
  const double thickness = only(assembly.plates).shape->thickness(hole.position.value());
  return solid_over_shell(top, bottom, hole.diameter.value() / 2.0 / thickness,
                          only(assembly.construct.plates).material.poissons_ratio);
}

// Area of the plate that belongs to nodes whose stress passes the limit, as a share.
double share_over(const mesh::ShellMesh& mesh, const Eigen::VectorXd& largest, double limit) {
  double over = 0.0, total = 0.0;
  const auto add = [&](const auto& cells) {
    for (const auto& cell : cells) {
      const Eigen::Vector3d a = mesh.nodes.row(cell[0]), b = mesh.nodes.row(cell[1]), c = mesh.nodes.row(cell[2]);
      const Eigen::Vector3d d = mesh.nodes.row(cell.back());
      const double area = 0.5 * ((b - a).cross(c - a).norm() + (c - a).cross(d - a).norm());
      for (const int node : cell) {
        const double part = area / static_cast<double>(cell.size());
        total += part;
        if (largest(node) > limit) over += part;
      }
    }
  };
  add(mesh.quads);
  add(mesh.triangles);
  return over / total;
}

}  // namespace

std::vector<int> rims_of_nodes(const Assembly& assembly) {
  const mesh::ShellMesh& mesh = *only(assembly.plates).mesh.mesh;
  std::vector<int> rims(static_cast<std::size_t>(mesh.nodes.rows()), 0);
  for (std::size_t hole = 0; hole < only(assembly.construct.plates).holes.size(); ++hole)
    for (const int node : mesh.groups.at(fmt::format("hole:{}", hole)))
      rims[static_cast<std::size_t>(node)] = static_cast<int>(hole) + 1;
  return rims;
}

PlateFindings measure_plate(const Assembly& assembly, const std::vector<int>& chosen,
                            const solver::Solution& solution, const BodyStress& stress) {
  const Plate& plate = only(assembly.construct.plates);
  const mesh::ShellMesh& mesh = *only(assembly.plates).mesh.mesh;
  const std::vector<int> rims = rims_of_nodes(assembly);
  std::vector<int> all(rims.size());
  std::iota(all.begin(), all.end(), 0);

  PlateFindings findings;
  findings.peak = peak_of(assembly, stress, all, rims);
  for (std::size_t hole = 0; hole < plate.holes.size(); ++hole) {
    const auto& rim = mesh.groups.at(fmt::format("hole:{}", hole));
    HoleStress entry;
    entry.hole = static_cast<int>(hole) + 1;
    entry.along = plate.holes[hole].position;
    entry.filled = std::any_of(chosen.begin(), chosen.end(), [&](int screw) {
      return assembly.screws[static_cast<std::size_t>(screw)].planned.screw.hole == entry.hole;
    });
    entry.peak = peak_of(assembly, stress, rim, rims);
    if (!entry.filled && plate.holes[hole].shape == HoleShape::round)
      entry.peak_solid = solid_share(assembly, stress, rim, plate.holes[hole]) * entry.peak.von_mises;
    findings.holes.push_back(entry);
  }
  if (plate.material.yield_strength) {
    const double yield = plate.material.yield_strength->value();
    findings.factor_to_yield = yield / findings.peak.von_mises.value();
    const Eigen::VectorXd largest = solver::von_mises(stress.top).cwiseMax(solver::von_mises(stress.bottom));
    findings.share_over_yield = share_over(mesh, largest, yield);
  }
  findings.stations = plate_stations(assembly, solution, stress);
  return findings;
}

double sampled_peak(const Assembly& assembly, const solver::Solution& solution) {
  const auto& plate = assembly.bodies[only_plate_body];
  double peak = 0.0;
  if (plate.condensed->probes.empty()) {  // an archive may leave them out: read off the field, as they were
    const Eigen::MatrixXd motion = plate.body->displacements(
        *plate.ports, solution.port_forces[only_plate_body].col(0), solution.amplitudes[only_plate_body].col(0));
    const BodyStress stress = read_stress(plate.body->shell(), motion).front();
    for (const auto* level : {&stress.top, &stress.bottom})
      for (const int node : only(assembly.plates).sample.nodes)
        peak = std::max(peak, solver::von_mises(level->row(node))(0));
    return peak;
  }
  for (const auto& probe : plate.condensed->probes) {
    const Eigen::VectorXd stacked = probe.of_port_forces * solution.port_forces[only_plate_body] +
                                    probe.of_rigid * solution.amplitudes[only_plate_body];
    peak = std::max(peak, solver::von_mises(solver::as_rows(stacked)).maxCoeff());
  }
  return peak;
}

}  // namespace gapstrain::models
