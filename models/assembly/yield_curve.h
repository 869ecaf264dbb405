// How a piece of bar goes on bearing as it bends for good.
#pragma once

#include "models/parts/material.h"
#include "solver/bodies/yield_section.h"
#include "solver/elements/plastic_bending.h"

#include <vector>

namespace gapstrain::models {

// A length of bar of one section. mm, N mm
struct BarSlice {
  solver::BarSection section = solver::BarSection::rectangle;
  double length = 0.0;
  double depth = 0.0;           // in the direction of bending
  double plastic_moment = 0.0;  // of the metal's yield strength
};

// Rise of stress by plastic strain, MPa: from the yield strength to the ultimate one over 10 % of strain, less
// than what wrought implant metals stretch before they neck (12 % in all is what standards ask of the hardest
// ones, from memory); without an ultimate strength 1 % of Young's modulus (ours).
double hardening_modulus(const Metal& metal);

// Turn of the slices together beyond the elastic one, by a moment that all of them carry, as the strength of a
// section whose full moment is the least of theirs. Elastic cores shrink fibre by fibre (plastic_bending.h), and
// the metal hardens. Axial force, shear and torsion follow the same curve (ours): they begin to yield at the share
// of their full strength at which bending does, earlier than a bar of one stress would.
// @pre the metal has a yield strength; a slice
solver::HardeningCurve bending_curve(const std::vector<BarSlice>& slices, const Metal& metal);

}  // namespace gapstrain::models
