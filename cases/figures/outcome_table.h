// Outcomes of many constructs as a comma-separated table (RFC 4180): one row a construct, units in the column
// names.
#pragma once

#include "models/measures/outcome.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// Columns: `inputs`, then "state" (ok, doubtful, failed), figures of the construct, figures in the worst load,
// figures under each load ("load1_peak_stress_MPa"), and the reason of a state that is not ok. Without line end.
std::string outcome_heading(const std::vector<std::string>& inputs, std::size_t loads);

// With line end. Figures to twelve digits.
std::string outcome_row(const std::vector<std::string>& inputs, const models::Outcome& outcome);
std::string failed_row(const std::vector<std::string>& inputs, std::size_t loads, const std::string& reason);

// "peak_stress_MPa" of "peak_stress". @pre the figure exists
std::string figure_column(const std::string& figure);

// A column of a load, counted from 0.
std::string load_column(std::size_t load, const std::string& figure);

// All columns with their meaning, for a terminal.
std::string describe_outcome_columns();

}  // namespace gapstrain::cases
