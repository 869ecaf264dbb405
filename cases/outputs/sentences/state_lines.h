// The state of a result in the words that every output uses.
#pragma once

#include "cases/outputs/sentences/rest_stands.h"
#include "models/assessment/result_state.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// "holds", "FAILS" or "NOT TO BE TRUSTED".
std::string standing_word(models::Standing standing);

// What must be seen before any figure, worst first, a sentence each, unwrapped: "NOT TO BE TRUSTED: ...",
// "FAILS: ...", "FAILS AT THE SOFT BOUND: ...", "LIMIT: ...", "ESTIMATE: ...". Empty when there is nothing to warn
// of.
std::vector<std::string> alarms_of(const models::ResultState& state, const RestStands& rest = in_files);

// The same in at most a line a kind, for where there is little room: pictures.
std::vector<std::string> short_alarms_of(const models::ResultState& state, const RestStands& rest = in_files);

// The alarms, begun by "HOLDS: ..." where nothing fails and all checks are passed, and whether second-order
// effects are in the figures.
std::vector<std::string> state_sentences(const models::ResultState& state, const RestStands& rest = in_files);
// The same wrapped to `width`, with line ends.
std::string state_head(const models::ResultState& state, std::size_t width);

// For one cell of a table: "FAILS (screw S4, fatigue); ESTIMATE (cortex, gap)".
std::string state_cell(const models::ResultState& state);

// As case files list them.
std::vector<std::string> keys_of(const std::vector<models::Estimate>& estimated);

// A table in CSV with one more column, "result", that has the same cell in every row.
std::string with_result_column(const std::string& table, const models::ResultState& state);

}  // namespace gapstrain::cases
