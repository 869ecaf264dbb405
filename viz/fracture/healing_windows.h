// Perren's windows: which tissue bears which strain of the gap, as bands behind curves of strain.
#pragma once

#include "models/findings/findings.h"
#include "viz/fracture/round_bone.h"

#include <vector>

namespace gapstrain::viz {

// Strain round the fracture edge in %, missing where it has no meaning.
RoundCurve axial_strain_curve(const models::GapFindings& gap);
RoundCurve shear_strain_curve(const models::GapFindings& gap);

// Covers the curves of strain in %, at least the window of bone.
Axis strain_axis(const std::vector<const RoundCurve*>& curves);

// Bands on the panel, which stretch over both signs, and their names at its right edge.
void draw_healing_windows(Canvas& canvas, const Panel& panel);

}  // namespace gapstrain::viz
