// Load cases as supports (links to the ground) and forces on ports.
#pragma once

#include "models/assembly/screw_links.h"
#include "models/parts/loading.h"
#include "solver/bodies/link.h"

#include <Eigen/Core>

#include <array>
#include <string>
#include <vector>

namespace gapstrain::models {

// Ports that loads and supports act on: rings of a bone section, six motions each about the section's centre.
struct Ring {
  PortPlace place;
  Eigen::Vector3d centre;
};

// A port on the bone's surface: three translations of its place.
struct SurfacePort {
  PortPlace place;
  Eigen::Vector3d position;
};

struct LoadPorts {
  Ring proximal_end, distal_end;
  std::vector<std::array<Ring, 4>> rollers;  // of each four-point load case in order: outer, inner, inner, outer
  std::vector<std::vector<SurfacePort>> surfaces;  // of each load case, one a force
};

struct PortForce {
  PortPlace place;
  Eigen::VectorXd force;  // (motions of the port), moments about the port's centre
};

// From a ring's centre to the point at which it is held and loaded, where nothing holds its turns.
struct LoadArm {
  PortPlace ring;
  Eigen::Vector3d arm;
};

struct LoadSetup {
  std::string name;
  std::vector<solver::Link> supports;
  std::vector<PortForce> forces;
  std::vector<LoadArm> arms{};
};

// One setup a load case, in order.
std::vector<LoadSetup> set_up_loads(const std::vector<LoadCase>& loads, const LoadPorts& ports);

// Nothing but the proximal end held.
LoadSetup hold_proximal_end(const LoadPorts& ports);

// Unit loads (1 N, 1 N mm) between balls at the end sections' centres: axial compression, bending about y, bending
// about z, torsion. All share the first one's supports.
std::array<LoadSetup, 4> unit_loads(const LoadPorts& ports);

// Places on the bone's axis (x, mm) of one test's rollers: outer, inner, inner, outer.
std::array<double, 4> roller_places(const FourPointBending& test);

// Of all load cases' rollers, each place once however many stand there, in the order in which they come.
std::vector<double> roller_places(const std::vector<LoadCase>& loads);
std::size_t roller_index(const std::vector<double>& places, double x);

// Where on its surface forces act on the bone.
struct SurfaceSpot {
  double x = 0.0;       // on the bone's axis, mm
  double around = 0.0;  // from the plate's side towards +y, rad
  bool operator==(const SurfaceSpot&) const = default;
};
inline SurfaceSpot spot_of(const SurfaceForce& force) { return {force.position.value(), force.around.value()}; }

// Of all load cases' forces, each place once, in the order in which they come.
std::vector<SurfaceSpot> force_spots(const std::vector<LoadCase>& loads);

}  // namespace gapstrain::models
