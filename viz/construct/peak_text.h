// Words for the plate's peak stress.
#pragma once

#include "models/findings/findings.h"

#include <string>

namespace gapstrain::viz {

std::string face_text(models::PlateFace face);

// "412 MPa, hole 6, top face"; away from a hole "412 MPa, 43.2 mm along the plate, top face".
std::string peak_text(const models::PlatePeak& peak);

}  // namespace gapstrain::viz
