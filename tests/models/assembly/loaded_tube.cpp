#include "tests/models/assembly/loaded_tube.h"

#include "models/preparation/prepare_bodies.h"
#include "tests/framework/numbers.h"
#include "tests/models/constructs.h"
#include "tests/models/measures/solved_construct.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include <algorithm>
#include <memory>

namespace gapstrain::tests {

using namespace models;  // NOLINT: this file is nothing but loads

namespace {

// Bodies are made once for all constructs that have the same.
std::shared_ptr<const PreparedBodies> bodies_for(const Construct& construct) {
  static std::vector<std::shared_ptr<const PreparedBodies>> known;
  for (const auto& prepared : known)
    if (have_same_bodies(prepared->construct, prepared->candidates, construct, construct.screws)) return prepared;
  return known.emplace_back(prepare_bodies(construct, construct.screws));
}

}  // namespace

LoadCase load_on(const EndSupports& supports) {
  LoadCase load;
  load.name = "load";
  load.supports = supports;
  return load;
}

LoadCase with_parts(const EndSupports& supports) {
  LoadCase load = load_on(supports);
  load.axial_compression = 90.0 * newton;
  load.bending_y = 310.0 * newton_mm;
  load.bending_z = -170.0 * newton_mm;
  load.torsion = 230.0 * newton_mm;
  return load;
}

SurfaceForce force_at(double x, double around, const Eigen::Vector3d& force) {
  return {x * mm, around * degree, {force.x() * newton, force.y() * newton, force.z() * newton}};
}

LoadCase rollers(double outer, double inner, bool across_plate) {
  LoadCase load;
  load.name = across_plate ? "edge" : "flat";
  load.four_point = {outer * mm,    inner * mm,  (tube_length - inner) * mm, (tube_length - outer) * mm,
                     60.0 * newton, across_plate};
  return load;
}

Construct tube_under(const std::vector<LoadCase>& loads) {
  Construct construct = plated_tube();
  construct.mesh.refinement = 0.4;
  construct.loads = loads;
  return construct;
}

const std::vector<SurfaceForce>& places() {
  static const std::vector<SurfaceForce> all{force_at(14.0, 35.0, {10.0, -40.0, 25.0}),
                                             force_at(142.0, 160.0, {-8.0, 30.0, 20.0})};
  return all;
}

SolvedTube solve(const std::vector<LoadCase>& loads) {
  const Construct construct = tube_under(loads);
  SolvedTube solved{assemble(bodies_for(construct), construct, construct.screws), {}};
  const auto chosen = chosen_screws(solved.assembly, construct.screws);
  const auto made = carry_out(solved.assembly, procedure_of(construct, chosen)).back();
  for (const auto& load : solved.assembly.loads)
    solved.solutions.push_back(solve_load(solved.assembly, made, load).pressed.solution);
  return solved;
}

// Behind a load that acts at both places in their order, so that all have the same bodies; its answer is left out.
SolvedTube solve_with_places(std::vector<LoadCase> loads) {
  LoadCase first = load_on(cantilever());
  first.forces = places();
  loads.insert(loads.begin(), first);
  SolvedTube solved = solve(loads);
  solved.solutions.erase(solved.solutions.begin());
  solved.assembly.loads.erase(solved.assembly.loads.begin());
  solved.assembly.construct.loads.erase(solved.assembly.construct.loads.begin());
  solved.assembly.load_ports.surfaces.erase(solved.assembly.load_ports.surfaces.begin());
  return solved;
}

Vector6 about_origin(const Eigen::Vector3d& centre, const Eigen::VectorXd& force) {
  Vector6 wrench = Vector6::Zero();
  wrench.head(force.size()) = force;
  wrench.tail<3>() += centre.cross(Eigen::Vector3d(force.head<3>()));
  return wrench;
}

// What the load's setup puts on the bone, about the origin.
Vector6 applied(const SolvedTube& solved, std::size_t l) {
  const LoadPorts& ports = solved.assembly.load_ports;
  Vector6 sum = Vector6::Zero();
  const auto setups = set_up_loads(solved.assembly.construct.loads, ports);
  for (const auto& force : setups[l].forces) {
    Eigen::Vector3d centre;
    const auto look = [&](const auto& port, const Eigen::Vector3d& place) {
      if (port.place.body == force.place.body && port.place.column == force.place.column) centre = place;
    };
    look(ports.proximal_end, ports.proximal_end.centre);
    look(ports.distal_end, ports.distal_end.centre);
    for (const auto& test : ports.rollers)
      for (const auto& ring : test) look(ring, ring.centre);
    for (const auto& port : ports.surfaces[l]) look(port, port.position);
    sum += about_origin(centre, force.force);
  }
  return sum;
}

// Of one support on the bone, at the centre of the end's section.
Vector6 reaction(const SolvedTube& solved, std::size_t l, BoneEnd end) {
  const Ring& ring =
      end == BoneEnd::proximal ? solved.assembly.load_ports.proximal_end : solved.assembly.load_ports.distal_end;
  Vector6 sum = Vector6::Zero();
  const auto& solution = solved.solutions[l];
  for (std::size_t k = 0; k < solution.links.size(); ++k) {
    const auto& supports = solved.assembly.loads[l].supports;
    if (std::find(supports.begin(), supports.end(), solution.links[k]) == supports.end()) continue;
    const auto& at = solved.assembly.system->links()[static_cast<std::size_t>(solution.links[k])].ends.front();
    if (at.body == ring.place.body && at.column == ring.place.column)
      sum -= at.transfer * solution.link_forces[k].col(0);
  }
  return sum;
}

Vector6 reactions(const SolvedTube& solved, std::size_t l) {
  const LoadPorts& ports = solved.assembly.load_ports;
  return about_origin(ports.proximal_end.centre, reaction(solved, l, BoneEnd::proximal)) +
         about_origin(ports.distal_end.centre, reaction(solved, l, BoneEnd::distal));
}

Eigen::VectorXd motion_at(const SolvedTube& solved, std::size_t l, const PortPlace& place, Eigen::Index motions) {
  return solved.solutions[l].motions[place.body].col(0).segment(place.column, motions);
}
Vector6 distal_motion(const SolvedTube& solved, std::size_t l) {
  return motion_at(solved, l, solved.assembly.load_ports.distal_end.place);
}

// All port motions and forces of all bodies, to hold whole answers against each other.
double difference_of(const SolvedTube& one, std::size_t k, const SolvedTube& other, std::size_t l) {
  double largest = 0.0;
  for (std::size_t b = 0; b < one.solutions[k].motions.size(); ++b)
    largest = std::max({largest, difference(one.solutions[k].motions[b], other.solutions[l].motions[b]),
                        difference(one.solutions[k].port_forces[b], other.solutions[l].port_forces[b])});
  return largest;
}

EndSupport elastic(const std::array<double, 6>& stiffness) {
  EndSprings springs;
  for (std::size_t k = 0; k < 3; ++k) {
    springs.translation[k] = stiffness[k] * (newton / mm);
    springs.rotation[k] = stiffness[k + 3] * (newton_mm / radian);
  }
  return {EndHold::elastic, flexibility_of(springs)};
}
EndSupport springs_times(double factor) {
  return elastic({120.0 * factor, 35.0 * factor, 50.0 * factor, 3.1e4 * factor, 5.3e4 * factor, 4.7e4 * factor});
}

}  // namespace gapstrain::tests
