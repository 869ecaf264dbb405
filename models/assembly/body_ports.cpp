#include "models/assembly/body_ports.h"

#include <Eigen/Geometry>

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace gapstrain::models {

using solver::Port;
using solver::Shell;

void PortList::add(const PortColumns& columns) {
  index_[columns.name] = columns_.size();
  columns_.push_back(columns);
}

// Patches reach three radii: what a rigid rim does to its own reactions has died out there.
Port hole_port(const Shell& shell, const Plate& plate, const PlateShape& shape, int hole) {
  const PlateHole& place = plate.holes[static_cast<std::size_t>(hole - 1)];
  const mesh::SurfacePoint centre = shape.mid_surface(place.position.value(), 0.0);
  Eigen::Matrix3d frame;
  frame.col(2) = centre.normal;
  frame.col(1) = Eigen::Vector3d::UnitY();
  frame.col(0) = frame.col(1).cross(frame.col(2));
  return solver::reaction_port(shell, shell.mesh->groups.at(fmt::format("hole:{}", hole - 1)), centre.position,
                               1.5 * place.slot_length.value(), frame, solver::RimModes::rigid_and_strain);
}

Port spot_port(const Shell& bone, const std::string& spot, const Eigen::Vector3d& centre, double radius) {
  return solver::reaction_port(bone, bone.mesh->groups.at("spot:" + spot), centre, 3.0 * radius,
                               Eigen::Matrix3d::Identity(), solver::RimModes::rigid);
}

Port ring_port(const Shell& bone, const std::string& group, const Eigen::Vector3d& centre) {
  const auto& nodes = bone.mesh->groups.at(group);
  double radius = 0.0;
  for (const int node : nodes) radius = std::max(radius, (bone.mesh->nodes.row(node).transpose() - centre).norm());
  return solver::reaction_port(bone, nodes, centre, 1.2 * radius, Eigen::Matrix3d::Identity(),
                               solver::RimModes::rigid);
}

solver::SparseMatrix edge_motion_rows(const Shell& bone, const FractureEdge& edge) {
  std::vector<Eigen::Triplet<double>> triplets;
  for (std::size_t k = 0; k < edge.nodes.size(); ++k) {
    const int node = edge.nodes[k];
    const Eigen::Vector3d arm = edge.mid_cortex[k] - bone.mesh->nodes.row(node).transpose();
    for (int axis = 0; axis < 3; ++axis) {
      const int row = static_cast<int>(3 * k) + axis;
      triplets.emplace_back(row, 6 * node + axis, 1.0);
      const Eigen::Vector3d turn =
          arm.cross(Eigen::Vector3d::Unit(axis));  // e . (theta x arm) = theta . (arm x e)
      for (int t = 0; t < 3; ++t) triplets.emplace_back(row, 6 * node + 3 + t, turn(t));
    }
  }
  solver::SparseMatrix rows(static_cast<Eigen::Index>(3 * edge.nodes.size()), bone.unknowns());
  rows.setFromTriplets(triplets.begin(), triplets.end());
  return rows;
}

PlateSample sample_plate(const PlateMesh& mesh, const Plate& plate, double fracture) {
  const Eigen::Index count = mesh.mesh->nodes.rows();
  std::vector<char> likely(static_cast<std::size_t>(count), 0);
  for (const auto& [name, nodes] : mesh.mesh->groups)
    if (name.starts_with("hole:"))
      for (const int node : nodes) likely[static_cast<std::size_t>(node)] = 1;
  double from = 0.0, to = plate.length.value();
  for (const auto& hole : plate.holes) {
    const double along = hole.position.value();
    (along < fracture ? from : to) = along < fracture ? std::max(from, along) : std::min(to, along);
  }
  for (Eigen::Index node = 0; node < count; ++node)
    if (mesh.along_across(node, 0) >= from && mesh.along_across(node, 0) <= to)
      likely[static_cast<std::size_t>(node)] = 1;
  PlateSample sample;
  std::vector<int> others;
  for (std::size_t node = 0; node < likely.size(); ++node)
    if (likely[node] != 0)
      sample.nodes.push_back(static_cast<int>(node));
    else if (node % 4 == 0)
      others.push_back(static_cast<int>(node));
  sample.likely = sample.nodes.size();
  sample.nodes.insert(sample.nodes.end(), others.begin(), others.end());
  return sample;
}

}  // namespace gapstrain::models
