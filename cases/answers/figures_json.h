// The catalogue's figures of one construct, with the digits that are printed.
#pragma once

#include "cases/files/json_value.h"
#include "models/measures/outcome.h"
#include "models/parts/construct.h"

namespace gapstrain::cases {

// [{name, label, meaning, unit, value, shown, shown_unit, load?}]: of the construct; of a load; of the worst of
// all loads (no `load`).
Json figures_json(const models::Outcome& outcome, const models::Construct& construct);

}  // namespace gapstrain::cases
