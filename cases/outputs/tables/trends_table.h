// Published statements beside what our models give, for a terminal and for a spreadsheet.
#pragma once

#include "models/evidence/trends.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

struct TrendRow {
  const models::Trend* trend = nullptr;
  models::TrendFinding finding;
};

// Three columns, 110 characters wide, a heading a topic; under each row what was known of the test and what
// guessed; then how many rows agree, and what the models are.
std::string trends_text(const std::vector<TrendRow>& rows, double refinement);

// RFC 4180: a row per measure, or one without a measure where a statement has none.
std::string trends_csv(const std::vector<TrendRow>& rows);

}  // namespace gapstrain::cases
