// The cut's face seen along the bone, as a ring: the plate's side up, +y to the right (seen from distal).
#pragma once

#include "models/findings/findings.h"
#include "viz/drawing/canvas.h"

namespace gapstrain::viz {

// White where it is open; where it touches the darker the more pressure, darkest at `high` MPa.
Colour pressure_colour(double pressure, double high);

// Outer half of the wall outside, inner half inside. Without points only the outline.
void draw_face_ring(Canvas& canvas, const Pixel& centre, double radius, const models::FaceFindings& face,
                    double high);

}  // namespace gapstrain::viz
