// The curves of an analysis as comma-separated tables (RFC 4180), one header line, units in the column names.
#pragma once

#include "models/findings/findings.h"

#include <string>

namespace gapstrain::cases {

std::string gap_strain_csv(const models::Findings& findings);  // a row per load and point of the fracture edge
std::string plate_csv(const models::Findings& findings);       // a row per load and place along the plate
std::string screws_csv(const models::Findings& findings);  // a row per load and screw, at the plate's underside
std::string screw_shafts_csv(const models::Findings& findings);  // a row per load, screw and depth
std::string working_length_csv(
    const models::Findings& findings);  // a row per load and variant; figures may be empty

}  // namespace gapstrain::cases
