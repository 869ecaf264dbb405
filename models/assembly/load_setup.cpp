#include "models/assembly/load_setup.h"

#include "solver/elements/beam.h"

#include <array>

namespace gapstrain::models {

namespace {

using Vector6 = Eigen::Matrix<double, 6, 1>;

// Unknowns of a point's motion, in the order of a port's six.
enum Motion { ux, uy, uz, rx, ry, rz };

solver::Link hold(const std::string& name, const Ring& ring, const Eigen::Vector3d& point,
                  const std::vector<Motion>& motions) {
  const solver::Matrix6 to_point = solver::rigid_transfer(ring.centre, point);
  Eigen::MatrixXd transfer(6, static_cast<Eigen::Index>(motions.size()));
  for (std::size_t k = 0; k < motions.size(); ++k)
    transfer.col(static_cast<Eigen::Index>(k)) = to_point.row(motions[k]).transpose();
  const auto count = transfer.cols();
  return {name,
          {{ring.place.body, ring.place.column, transfer}},
          Eigen::MatrixXd::Zero(count, count),
          Eigen::VectorXd::Zero(count)};
}

PortForce push(const Ring& ring, const Eigen::Vector3d& point, const Eigen::Vector3d& force,
               const Eigen::Vector3d& moment = Eigen::Vector3d::Zero()) {
  Vector6 wrench;
  wrench << force, moment;
  return {ring.place, solver::rigid_transfer(ring.centre, point).transpose() * wrench};
}

LoadSetup set_up_four_point(const LoadCase& load, const std::array<Ring, 4>& rollers) {
  const auto& test = *load.four_point;
  const auto& [outer_proximal, inner_proximal, inner_distal, outer_distal] = rollers;
  LoadSetup setup{load.name, {}, {}};
  setup.supports.push_back(hold("proximal roller", outer_proximal, outer_proximal.centre, {ux, uy, uz, rx}));
  setup.supports.push_back(hold("distal roller", outer_distal, outer_distal.centre, {uy, uz}));
  const Eigen::Vector3d half =
      test.total.value() / 2.0 * (test.across_plate ? Eigen::Vector3d::UnitY() : Eigen::Vector3d::UnitZ());
  setup.forces.push_back(push(inner_proximal, inner_proximal.centre, half));
  setup.forces.push_back(push(inner_distal, inner_distal.centre, half));
  return setup;
}

LoadSetup set_up_ends(const LoadCase& load, const LoadPorts& ports) {
  const Eigen::Vector3d offset(load.ball_distance.value(), load.ball_offset_y.value(), load.ball_offset_z.value());
  const Eigen::Vector3d proximal_ball =
      ports.proximal_end.centre + Eigen::Vector3d(-offset.x(), offset.y(), offset.z());
  const Eigen::Vector3d distal_ball = ports.distal_end.centre + offset;
  const bool balls = load.support == Support::ball_joints;

  LoadSetup setup{load.name, {}, {}};
  if (balls) {
    setup.supports.push_back(hold("proximal ball", ports.proximal_end, proximal_ball, {ux, uy, uz, rx}));
    setup.supports.push_back(hold("distal ball", ports.distal_end, distal_ball, {uy, uz}));
  } else {
    setup.supports = hold_proximal_end(ports).supports;
  }
  const Eigen::Vector3d line =
      balls ? (distal_ball - proximal_ball).normalized() : Eigen::Vector3d(Eigen::Vector3d::UnitX());
  const Eigen::Vector3d force = -load.axial_compression.value() * line +
                                Eigen::Vector3d(0.0, load.transverse_y.value(), load.transverse_z.value());
  const Eigen::Vector3d bending(0.0, load.bending_y.value(), load.bending_z.value());
  const Eigen::Vector3d torsion(load.torsion.value(), 0.0, 0.0);
  setup.forces.push_back(push(ports.distal_end, distal_ball, force, bending + torsion));
  // Balls pass no bending on, so the proximal end gets the opposite end moment; torsion is held by its support.
  if (balls) setup.forces.push_back(push(ports.proximal_end, proximal_ball, Eigen::Vector3d::Zero(), -bending));
  return setup;
}

}  // namespace

std::vector<LoadSetup> set_up_loads(const std::vector<LoadCase>& loads, const LoadPorts& ports) {
  std::vector<LoadSetup> setups;
  std::size_t four_point = 0;
  for (const auto& load : loads)
    setups.push_back(load.four_point ? set_up_four_point(load, ports.rollers[four_point++])
                                     : set_up_ends(load, ports));
  return setups;
}

LoadSetup hold_proximal_end(const LoadPorts& ports) {
  const Ring& end = ports.proximal_end;
  return {"", {hold("held proximal end", end, end.centre, {ux, uy, uz, rx, ry, rz})}, {}};
}

std::array<LoadSetup, 4> unit_loads(const LoadPorts& ports) {
  LoadCase axial, bending_y, bending_z, torsion;
  axial.axial_compression = 1.0 * newton;
  bending_y.bending_y = 1.0 * newton_mm;
  bending_z.bending_z = 1.0 * newton_mm;
  torsion.torsion = 1.0 * newton_mm;
  return {set_up_ends(axial, ports), set_up_ends(bending_y, ports), set_up_ends(bending_z, ports),
          set_up_ends(torsion, ports)};
}

std::vector<double> roller_places(const std::vector<LoadCase>& loads) {
  std::vector<double> places;
  for (const auto& load : loads) {
    if (!load.four_point) continue;
    const auto& test = *load.four_point;
    for (const Length& place : {test.outer_proximal, test.inner_proximal, test.inner_distal, test.outer_distal})
      places.push_back(place.value());
  }
  return places;
}

}  // namespace gapstrain::models
