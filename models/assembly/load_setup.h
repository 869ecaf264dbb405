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

struct LoadPorts {
  Ring proximal_end, distal_end;
  std::vector<std::array<Ring, 4>> rollers;  // of each four-point load case in order: outer, inner, inner, outer
};

struct PortForce {
  PortPlace place;
  Eigen::Matrix<double, 6, 1> force;  // about the port's centre
};

struct LoadSetup {
  std::string name;
  std::vector<solver::Link> supports;
  std::vector<PortForce> forces;
};

// One setup a load case, in order.
std::vector<LoadSetup> set_up_loads(const std::vector<LoadCase>& loads, const LoadPorts& ports);

// Nothing but the proximal end held.
LoadSetup hold_proximal_end(const LoadPorts& ports);

// Unit loads (1 N, 1 N mm) between balls at the end sections' centres: axial compression, bending about y, bending
// about z, torsion. All share the first one's supports.
std::array<LoadSetup, 4> unit_loads(const LoadPorts& ports);

// Places on the bone's axis (x, mm) of all rollers, in the order of LoadPorts::rollers.
std::vector<double> roller_places(const std::vector<LoadCase>& loads);

}  // namespace gapstrain::models
