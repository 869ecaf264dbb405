// Edits of a case's loads: see case_edits.h.
#pragma once

#include "cases/answers/case_json.h"

#include <string>

namespace gapstrain::cases {

// Whether it was an edit of loads. @throw RequestError
bool edit_loads(const Json& entered, Json& state, const std::string& kind, const Json& edit);

}  // namespace gapstrain::cases
