#include "models/assembly/load_setup.h"

#include "solver/elements/beam.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace gapstrain::models {

namespace {

using Vector6 = Eigen::Matrix<double, 6, 1>;

// Unknowns of a point's motion, in the order of a port's six.
enum Motion { ux, uy, uz, rx, ry, rz };
const std::vector<Motion> all_motions{ux, uy, uz, rx, ry, rz};

// `axes`: columns are what the motions are along and about.
solver::Link hold(const std::string& name, const Ring& ring, const Eigen::Vector3d& point,
                  const Eigen::Matrix3d& axes, const std::vector<Motion>& motions) {
  solver::Matrix6 to_point = solver::rigid_transfer(ring.centre, point);
  if (axes != Eigen::Matrix3d::Identity()) {
    to_point.topRows<3>() = (axes.transpose() * to_point.topRows<3>()).eval();
    to_point.bottomRows<3>() = (axes.transpose() * to_point.bottomRows<3>()).eval();
  }
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

Eigen::Vector3d vector_of(const Point& point) { return {point.x.value(), point.y.value(), point.z.value()}; }
Eigen::Vector3d vector_of(const ForceVector& force) { return {force.x.value(), force.y.value(), force.z.value()}; }

// First axis along the line, the second across it and the construct's z.
Eigen::Matrix3d axes_along(const Eigen::Vector3d& line) {
  Eigen::Matrix3d axes;
  axes.col(0) = line;
  axes.col(1) = Eigen::Vector3d::UnitZ().cross(line).normalized();
  axes.col(2) = axes.col(0).cross(axes.col(1));
  return axes;
}

LoadSetup set_up_four_point(const LoadCase& load, const std::array<Ring, 4>& rollers) {
  const auto& test = *load.four_point;
  const auto& [outer_proximal, inner_proximal, inner_distal, outer_distal] = rollers;
  const Eigen::Matrix3d axes = Eigen::Matrix3d::Identity();
  LoadSetup setup{load.name, {}, {}};
  setup.supports.push_back(hold("proximal roller", outer_proximal, outer_proximal.centre, axes, {ux, uy, uz, rx}));
  setup.supports.push_back(hold("distal roller", outer_distal, outer_distal.centre, axes, {uy, uz}));
  const Eigen::Vector3d half =
      test.total.value() / 2.0 * (test.across_plate ? Eigen::Vector3d::UnitY() : Eigen::Vector3d::UnitZ());
  setup.forces.push_back(push(inner_proximal, inner_proximal.centre, half));
  setup.forces.push_back(push(inner_distal, inner_distal.centre, half));
  return setup;
}

// Where the load line meets the bone's ends' supports.
struct Ends {
  std::array<Ring, 2> rings;              // proximal, distal
  std::array<Eigen::Vector3d, 2> points;  // on the load line
  Eigen::Matrix3d axes;                   // of the supports
  Eigen::Vector3d line;                   // what the axial force acts along
};
std::size_t index_of(BoneEnd end) { return end == BoneEnd::proximal ? 0 : 1; }

Ends ends_of(const LoadCase& load, const LoadPorts& ports) {
  Ends ends{{ports.proximal_end, ports.distal_end}, {}, Eigen::Matrix3d::Identity(), Eigen::Vector3d::UnitX()};
  if (load.line) {
    ends.points = {vector_of(load.line->from), vector_of(load.line->to)};
    ends.line = (ends.points[1] - ends.points[0]).normalized();
    ends.axes = axes_along(ends.line);
    return ends;
  }
  const Eigen::Vector3d offset(load.ball_distance.value(), load.ball_offset_y.value(), load.ball_offset_z.value());
  ends.points = {ends.rings[0].centre + Eigen::Vector3d(-offset.x(), offset.y(), offset.z()),
                 ends.rings[1].centre + offset};
  if (load.supports.proximal.hold == EndHold::ball && load.supports.distal.hold == EndHold::ball)
    ends.line = (ends.points[1] - ends.points[0]).normalized();
  return ends;
}

// Nothing is added for a free end.
void add_support(const EndSupports& both, BoneEnd end, const Ends& ends, std::vector<solver::Link>& supports) {
  const EndSupport& support = both.at(end);
  const Ring& ring = ends.rings[index_of(end)];
  const std::string name = end == BoneEnd::distal ? "distal " : "proximal ";
  switch (support.hold) {
    case EndHold::free:
      return;
    case EndHold::ball: {
      std::vector<Motion> motions{uy, uz};
      if (end == base_of(both)) motions = {ux, uy, uz};
      if (is_twist_held_by_ball(both, end)) motions.push_back(rx);
      supports.push_back(hold(name + "ball", ring, ends.points[index_of(end)], ends.axes, motions));
      return;
    }
    case EndHold::guided:
      supports.push_back(hold("guided " + name + "end", ring, ring.centre, ends.axes, {uy, uz, rx, ry, rz}));
      return;
    case EndHold::held:
    case EndHold::elastic:
      break;
  }
  const bool is_held = support.hold == EndHold::held;
  solver::Link link = hold((is_held ? "held " : "elastic ") + name + "end", ring, ring.centre,
                           Eigen::Matrix3d::Identity(), all_motions);
  if (!is_held) link.flexibility = Eigen::Map<const solver::Matrix6>(support.flexibility.rows.data());
  supports.push_back(std::move(link));
}

LoadSetup set_up_ends(const LoadCase& load, const LoadPorts& ports) {
  const Ends ends = ends_of(load, ports);
  const EndSupports& supports = load.supports;
  LoadSetup setup{load.name, {}, {}};
  for (const BoneEnd end : {BoneEnd::proximal, BoneEnd::distal}) add_support(supports, end, ends, setup.supports);

  for (const BoneEnd end : {BoneEnd::proximal, BoneEnd::distal}) {
    const EndHold how = supports.at(end).hold;
    const Ring& ring = ends.rings[index_of(end)];
    const Eigen::Vector3d arm = ends.points[index_of(end)] - ring.centre;
    if ((how == EndHold::ball || how == EndHold::free) && !arm.isZero(0.0))
      setup.arms.push_back({ring.place, arm});
  }

  const Eigen::Vector3d across(0.0, load.transverse_y.value(), load.transverse_z.value());
  const Eigen::Vector3d bending(0.0, load.bending_y.value(), load.bending_z.value());
  const Eigen::Vector3d torsion(load.torsion.value(), 0.0, 0.0);
  for (const BoneEnd end : {BoneEnd::distal, BoneEnd::proximal}) {
    const double sign = end == BoneEnd::distal ? 1.0 : -1.0;
    Eigen::Vector3d force = Eigen::Vector3d::Zero(), moment = Eigen::Vector3d::Zero();
    if (end != base_of(supports)) force = -sign * load.axial_compression.value() * ends.line + across;
    if (takes_bending(supports, end)) moment += sign * bending;
    if (takes_torsion(supports, end)) moment += sign * torsion;
    if (!force.isZero(0.0) || !moment.isZero(0.0))
      setup.forces.push_back(push(ends.rings[index_of(end)], ends.points[index_of(end)], force, moment));
  }
  return setup;
}

// Each value once, in the order in which they come.
template <class Value>
void add_once(std::vector<Value>& list, const Value& value) {
  if (std::find(list.begin(), list.end(), value) == list.end()) list.push_back(value);
}

}  // namespace

std::vector<LoadSetup> set_up_loads(const std::vector<LoadCase>& loads, const LoadPorts& ports) {
  std::vector<LoadSetup> setups;
  std::size_t four_point = 0;
  for (std::size_t l = 0; l < loads.size(); ++l) {
    const LoadCase& load = loads[l];
    setups.push_back(load.four_point ? set_up_four_point(load, ports.rollers[four_point++])
                                     : set_up_ends(load, ports));
    for (std::size_t k = 0; k < load.forces.size(); ++k)
      setups.back().forces.push_back({ports.surfaces[l][k].place, vector_of(load.forces[k].force)});
  }
  return setups;
}

LoadSetup hold_proximal_end(const LoadPorts& ports) {
  const Ring& end = ports.proximal_end;
  return {"", {hold("held proximal end", end, end.centre, Eigen::Matrix3d::Identity(), all_motions)}, {}};
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

std::array<double, 4> roller_places(const FourPointBending& test) {
  return {test.outer_proximal.value(), test.inner_proximal.value(), test.inner_distal.value(),
          test.outer_distal.value()};
}

std::size_t roller_index(const std::vector<double>& places, double x) {
  constexpr double same = 1e-9;  // mm: "1 cm" and "10 mm"
  const auto found =
      std::find_if(places.begin(), places.end(), [x](double place) { return std::abs(place - x) < same; });
  return static_cast<std::size_t>(found - places.begin());
}

std::vector<double> roller_places(const std::vector<LoadCase>& loads) {
  std::vector<double> places;
  for (const auto& load : loads) {
    if (!load.four_point) continue;
    for (const double x : roller_places(*load.four_point))
      if (roller_index(places, x) == places.size()) places.push_back(x);
  }
  return places;
}

std::vector<SurfaceSpot> force_spots(const std::vector<LoadCase>& loads) {
  std::vector<SurfaceSpot> spots;
  for (const auto& load : loads)
    for (const auto& force : load.forces) add_once(spots, spot_of(force));
  return spots;
}

}  // namespace gapstrain::models
