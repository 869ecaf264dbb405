#include "models/assembly/axis_ports.h"

#include "models/assembly/body_numbers.h"
#include "models/assembly/port_book.h"

#include <Eigen/Geometry>

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <utility>

namespace gapstrain::models {

namespace {

constexpr int stations_a_fragment = 5;

// A cell's area goes to its nodes in equal parts.
Eigen::VectorXd areas_of_nodes(const mesh::ShellMesh& mesh) {
  Eigen::VectorXd areas = Eigen::VectorXd::Zero(mesh.nodes.rows());
  const auto place = [&](int node) -> Eigen::Vector3d { return mesh.nodes.row(node).transpose(); };
  const auto triangle = [&](int a, int b, int c) {
    return 0.5 * (place(b) - place(a)).cross(place(c) - place(a)).norm();
  };
  const auto share = [&](const auto& cell, double area) {
    for (const int node : cell) areas(node) += area / static_cast<double>(cell.size());
  };
  for (const auto& quad : mesh.quads)
    share(quad, triangle(quad[0], quad[1], quad[2]) + triangle(quad[0], quad[2], quad[3]));
  for (const auto& corners : mesh.triangles) share(corners, triangle(corners[0], corners[1], corners[2]));
  return areas;
}

std::vector<solver::ForcePlace> force_places(const PortList& list) {
  std::vector<solver::ForcePlace> places;
  for (const auto& port : list.columns()) places.push_back({port.centre, port.column});
  return places;
}

solver::AxialReadings nothing(Eigen::Index motions) {
  return {solver::SparseMatrix(0, motions), solver::SparseMatrix(0, motions)};
}

solver::AxialReadings read_plate(const Plate& plate, const PortList& list, Eigen::Index motions) {
  std::vector<solver::AxisPoint> points;
  for (int hole = 1; hole <= static_cast<int>(plate.holes.size()); ++hole) {
    const auto& port = list.named(hole_name(hole));
    points.push_back({port.centre, port.column, true});
  }
  if (points.size() < 2) return nothing(motions);
  return solver::read_axis(motions, points, force_places(list));
}

// Its axis reaches to the middle of what the fractures beside it leave, as a place along the bone.
solver::AxialReadings read_fragment(const Construct& construct, std::size_t fragment, const PortList& list,
                                    Eigen::Index motions) {
  std::vector<solver::AxisPoint> points;
  for (std::size_t k = 0; list.has(station_name(k)); ++k) {
    const auto& port = list.named(station_name(k));
    points.push_back({port.centre, port.column, false});
  }
  double before = 0.0, beyond = 0.0;
  const auto end_of_bone = [&] {
    const auto& port = list.named("end");
    return solver::AxisPoint{port.centre, port.column, false};
  };
  const bool is_first = fragment == 0, is_last = fragment == construct.fractures.size();
  if (is_first) points.insert(points.begin(), end_of_bone());
  if (is_last) points.push_back(end_of_bone());
  if (points.size() < 2) return nothing(motions);
  if (!is_first) {
    const Fracture& fracture = construct.fractures[fragment - 1];
    before = points.front().place.x() - (fracture.position + 0.5 * fracture.gap).value();
  }
  if (!is_last) {
    const Fracture& fracture = construct.fractures[fragment];
    beyond = (fracture.position - 0.5 * fracture.gap).value() - points.back().place.x();
  }
  return solver::read_axis(motions, points, force_places(list), std::max(before, 0.0), std::max(beyond, 0.0));
}

std::vector<solver::TurningPort> turning_ports(const PortList& list) {
  std::vector<solver::TurningPort> ports;
  for (const auto& port : list.columns()) ports.push_back({port.centre, port.column, port.motions >= 6, 0});
  return ports;
}

Eigen::Index motions_of(const PortList& list) {
  const auto& columns = list.columns();
  return columns.empty() ? 0 : columns.back().column + columns.back().motions;
}

solver::TurningBody in_one_frame(const PortList& list) {
  solver::TurningBody body;
  body.ports = turning_ports(list);
  Eigen::Vector3d middle = Eigen::Vector3d::Zero();
  for (const auto& port : body.ports) middle += port.place / static_cast<double>(body.ports.size());
  body.nodes.push_back({middle, solver::nearest_motion(body.ports, middle, motions_of(list))});
  return body;
}

// The chain begins in the middle.
solver::TurningBody from_hole_to_hole(const PortList& list, int holes) {
  solver::TurningBody body;
  const Eigen::Index motions = motions_of(list);
  const auto add = [&](int hole, int before) {
    const auto& port = list.named(hole_name(hole));
    solver::SparseMatrix reading(6, motions);
    for (Eigen::Index k = 0; k < 6; ++k) reading.insert(k, port.column + k) = 1.0;
    body.nodes.push_back({port.centre, reading, before});
    return static_cast<int>(body.nodes.size()) - 1;
  };
  const int middle = (holes + 1) / 2;
  const int first = add(middle, -1);
  for (int hole = middle + 1, last = first; hole <= holes; ++hole) last = add(hole, last);
  for (int hole = middle - 1, last = first; hole >= 1; --hole) last = add(hole, last);
  body.ports = turning_ports(list);
  for (auto& port : body.ports) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t n = 0; n < body.nodes.size(); ++n)
      if (const double distance = (body.nodes[n].place - port.place).squaredNorm(); distance < least) {
        least = distance;
        port.node = n;
      }
  }
  return body;
}

}  // namespace

std::vector<solver::TurningBody> turning_bodies(const Construct& construct, const std::vector<PortList>& lists) {
  std::vector<solver::TurningBody> bodies;
  for (std::size_t b = 0; b < lists.size(); ++b) {
    const int holes = is_plate(construct, b) ? static_cast<int>(construct.plates[b].holes.size()) : 0;
    bodies.push_back(holes > 1 ? from_hole_to_hole(lists[b], holes) : in_one_frame(lists[b]));
  }
  return bodies;
}

std::string station_name(std::size_t k) { return fmt::format("station:{}", k); }

std::vector<solver::Port> station_ports(const solver::Shell& bone, bool is_first, bool is_last) {
  const mesh::ShellMesh& mesh = *bone.mesh;
  double from = mesh.nodes.col(0).minCoeff(), to = mesh.nodes.col(0).maxCoeff();
  if (const auto cut = mesh.groups.find("cut"); cut != mesh.groups.end())  // only where the tube is whole
    for (const int node : cut->second) {
      if (is_first) to = std::min(to, mesh.nodes(node, 0));
      if (is_last) from = std::max(from, mesh.nodes(node, 0));
    }
  std::vector<solver::Port> ports;
  if (!(to > from)) return ports;
  const Eigen::VectorXd areas = areas_of_nodes(mesh);
  const double slice = (to - from) / stations_a_fragment;
  for (int k = 0; k < stations_a_fragment; ++k) {
    std::vector<int> nodes;
    std::vector<double> weights;
    double sum = 0.0;
    for (Eigen::Index node = 0; node < mesh.nodes.rows(); ++node) {
      const double at = (mesh.nodes(node, 0) - from) / slice;
      if (at < k || at >= k + 1) continue;
      nodes.push_back(static_cast<int>(node));
      weights.push_back(areas(node));
      sum += areas(node);
    }
    if (!(sum > 0.0)) continue;
    for (double& weight : weights) weight /= sum;
    ports.push_back(solver::point_port(bone, nodes, weights, 0.0));
  }
  return ports;
}

std::vector<solver::AxialReadings> read_axes(const Construct& construct, const solver::System& system,
                                             const std::vector<PortList>& lists) {
  std::vector<solver::AxialReadings> axes;
  for (std::size_t b = 0; b < lists.size(); ++b) {
    const Eigen::Index motions = system.bodies()[b]->compliance.rows();
    axes.push_back(is_plate(construct, b)
                       ? read_plate(construct.plates[b], lists[b], motions)
                       : read_fragment(construct, b - construct.plates.size(), lists[b], motions));
  }
  return axes;
}

std::shared_ptr<const solver::AxialSlopes> axes_under(const solver::System& system,
                                                      std::vector<solver::AxialReadings> axes,
                                                      const std::vector<LoadArm>& arms) {
  for (const auto& [ring, arm] : arms) {
    solver::AxialReadings& of_body = axes[ring.body];
    const Eigen::Index motions = of_body.slope.cols();
    of_body = solver::join_readings(motions, {of_body, solver::read_arm(motions, ring.column, arm)});
  }
  return std::make_shared<const solver::AxialSlopes>(system, std::move(axes));
}

}  // namespace gapstrain::models
