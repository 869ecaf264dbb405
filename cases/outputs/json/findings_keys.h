// The meaning of every key of findings.json, as an analysis writes it: into the file itself, and printed by
// `gapstrain keys --findings`.
#pragma once

#include "cases/outputs/json/output_key.h"

#include <string>

namespace gapstrain::cases {

// In the order of the file.
OutputKeys findings_keys();

std::string describe_findings_keys();

// Those that a comparison's file has as well.
OutputKeys program_keys();

}  // namespace gapstrain::cases
