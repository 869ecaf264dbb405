// Which program wrote a file, for every JSON output.
#pragma once

#include "cases/files/json_value.h"
#include "cases/version.h"

namespace gapstrain::cases {

inline Json program_json() { return {{"name", "gapstrain"}, {"version", version()}, {"commit", commit()}}; }

}  // namespace gapstrain::cases
