// Bars of an elastic, perfectly plastic metal in bending: plane sections, uniaxial stress.
#pragma once

namespace gapstrain::solver {

enum class BarSection { rectangle, circle };

// Plastic moment over the moment at first yield: 3/2 of a rectangle, 16 / (3 pi) of a solid circle.
double shape_factor(BarSection section);

// Curvature beyond the elastic one over that at first yield, of a section that carries `share` of its plastic
// moment: with an elastic core of half-height c over that of the section, the whole curvature is 1/c. 0 up to the
// moment at first yield. Rectangle: share = 1 - c^2 / 3. Circle, c = sin f: share = cos^3 f + 3/8 (f - sin(4 f) /
// 4) / sin f. Any text on plasticity, as P. G. Hodge 1959, Plastic analysis of structures (from memory); the
// circle's by integration. @pre share < 1
double plastic_curvature(BarSection section, double share);

}  // namespace gapstrain::solver
