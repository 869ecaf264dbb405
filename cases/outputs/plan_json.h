// The part of findings.json on what to order and to do.
#pragma once

#include "cases/outputs/json_value.h"
#include "models/review/plan.h"

namespace gapstrain::cases {

Json plan_json(const models::Plan& plan);

}  // namespace gapstrain::cases
