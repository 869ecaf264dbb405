// Flat mesh of a bar with round and slotted holes, refined at the rims.
#pragma once

#include "mesh/gmsh_session.h"
#include "mesh/shell_mesh.h"

#include <vector>

namespace gapstrain::mesh {

struct Hole {
  double centre = 0.0;       // along the bar, mm; holes lie on its centre line
  double diameter = 0.0;     // mm
  double slot_length = 0.0;  // overall length along the bar, mm; equal to the diameter when round
};

// Half of the outline: width at a place along the bar, linear between.
struct BarWidth {
  double position = 0.0;
  double width = 0.0;
};

struct PerforatedPlate {
  double length = 0.0;           // the bar spans x in [0, length], y in [-w/2, w/2]
  std::vector<BarWidth> widths;  // at least one, by rising position; constant beyond the outer ones
  std::vector<Hole> holes;
  std::vector<double> cross_lines;  // places of mesh lines across the whole width
  int rim_elements = 48;            // on each round rim, even; a slot gets the same edge length
  double size_max = 1.5;            // mm
  double growth = 0.22;             // mm of edge length per mm away from a rim
};

// Quad-dominant mesh. Groups: "hole:K" (K from 0) rim nodes in order, counter-clockwise; "end:0" (x = 0), "end:1"
// (x = length) and "cross:K" nodes by rising y. Same input, same mesh.
// @throw MeshError when a hole comes closer to another or to the outline than a twentieth of its diameter, when a
// line across grazes a hole (cutting off less than a tenth of its radius, or passing within an edge length), or
// when Gmsh fails.
FlatMesh mesh_perforated_plate(const GmshSession& session, const PerforatedPlate& plate);

}  // namespace gapstrain::mesh
