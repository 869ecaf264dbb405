// The curves of an analysis as comma-separated tables (RFC 4180), one header line, units in the column names.
#pragma once

#include "models/findings/findings.h"

#include <string>

namespace gapstrain::cases {

// A row per load and point of the fracture edge; no strain where the faces touch.
std::string gap_strain_csv(const models::Findings& findings);
std::string steps_csv(const models::Findings& findings);  // a row per step
std::string face_csv(const models::Findings& findings);   // a row per step or load, and point of the cut's faces
std::string prebend_csv(const models::PrebendFindings& prebend);  // a row per height of the bend
std::string plate_csv(const models::Findings& findings);          // a row per load and place along the plate
std::string screws_csv(const models::Findings& findings);  // a row per load and screw, at the plate's underside
std::string screw_shafts_csv(const models::Findings& findings);  // a row per load, screw and depth
std::string working_length_csv(
    const models::Findings& findings);  // a row per load and variant; figures may be empty

}  // namespace gapstrain::cases
