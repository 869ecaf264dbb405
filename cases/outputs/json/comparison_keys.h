// The meaning of every key of the findings.json that a comparison writes, for the file itself.
#pragma once

#include "cases/outputs/json/output_key.h"

namespace gapstrain::cases {

OutputKeys comparison_keys();

}  // namespace gapstrain::cases
