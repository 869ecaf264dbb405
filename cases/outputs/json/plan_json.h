// The part of findings.json on what to order and to do.
#pragma once

#include "cases/files/json_value.h"
#include "models/plan/plan.h"

namespace gapstrain::cases {

Json plan_json(const models::Plan& plan);

}  // namespace gapstrain::cases
