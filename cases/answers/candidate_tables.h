// Candidates as [[candidate]] tables of a case.
#pragma once

#include "cases/answers/case_json.h"
#include "models/parts/construct.h"

#include <vector>

namespace gapstrain::cases {

// Tables from which the reader makes the same places in the same order; neighbours that differ by their hole alone
// are one table with `holes`.
Json candidate_tables(const std::vector<models::Screw>& candidates);

}  // namespace gapstrain::cases
