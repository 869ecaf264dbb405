// A plate alone in four-point bending, as a standard test of bone plates asks for it.
//
// Definitions are those of ASTM F382, Standard specification and test method for metallic bone plates, annex A1
// (from memory): of the load over the displacement of the loading rollers, K is the first slope; the bending
// structural stiffness is (2 h + 3 a) K h^2 / 12, with h from an inner roller to the outer one on its side and a
// between the inner ones; the proof load is where the curve lies 0.002 a beside its first slope; the bending
// strength is proof load times h / 2.
#pragma once

#include "models/parts/construct.h"

#include <optional>

namespace gapstrain::models {

struct PlateBending {
  double inner_span = 0.0, arm = 0.0;  // a and h, mm
  double stiffness = 0.0;              // K, N/mm
  double structural_stiffness = 0.0;   // N mm^2
  std::optional<double> proof_load;    // N; nothing of a metal without yield strength
  std::optional<double> strength;      // N mm
};

// Of the plate as it comes, flat and with all holes empty: a shell that yields in slices by the same law
// as sections of a construct (models/assembly/yield_curve), here a quarter of a millimetre long. Rollers lie
// across it where there is metal all over its width: the inner ones on either side of the two holes in its middle
// (three of an odd number), the outer ones between the first two holes at either end, or beside the first where
// that is taken. Nothing for plates of fewer than four holes.
// @throw mesh::MeshError
std::optional<PlateBending> bend_plate(const Plate& plate, const MeshDensity& density);

}  // namespace gapstrain::models
