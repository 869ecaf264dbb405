#include "cases/outputs/studies/row_states.h"

#include "cases/files/read_table.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/study/study_folder.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace gapstrain::cases {

RowStates count_states(const std::filesystem::path& folder, const models::Construct& construct) {
  const auto table = folder / StudyFolder::final_name;
  const auto states = read_texts(table, "state");
  const auto count = [&](const char* state) {
    return static_cast<std::size_t>(std::count(states.begin(), states.end(), state));
  };
  RowStates found{states.size(), count("failed"), count("doubtful"), 0, {}, construct.estimated};
  const auto margins = read_numbers(table, {"margin", "margin_soft_screws"});
  for (std::size_t row = 0; row < states.size(); ++row)
    if (states[row] == "ok" && margins[0][row] >= 1.0 && !(margins[1][row] >= 1.0)) ++found.only_bonded;
  const auto first = std::find(states.begin(), states.end(), "failed");
  if (first != states.end())
    found.first_reason = read_texts(table, "reason")[static_cast<std::size_t>(first - states.begin())];
  return found;
}

std::vector<std::string> alarms_of(const RowStates& states) {
  models::ResultState shared;
  shared.estimated = states.estimated;
  auto alarms = alarms_of(shared);
  const auto first = [&](std::string alarm) { alarms.insert(alarms.begin(), std::move(alarm)); };
  if (states.rows > 0 && states.failed == states.rows) {
    first(fmt::format("NO RESULT: all {} rows failed, the first because: {}", states.rows, states.first_reason));
  } else if (states.failed + states.doubtful > 0) {
    const std::string reason =
        states.failed > 0 ? fmt::format(". The first without a result: {}", states.first_reason) : "";
    first(
        fmt::format("NOT TO BE TRUSTED: {} of {} rows fail a check of their own, {} have no result; rows.csv says "
                    "why{}",
                    states.doubtful, states.rows, states.failed, reason));
  }
  if (states.only_bonded > 0)
    alarms.push_back(fmt::format(
        "FAILS AT THE SOFT BOUND: {} of {} rows hold as their screws are taken and fail, or are not known, "
        "with screws that sit softly in bone; rows.csv has margin_soft_screws beside margin.",
        states.only_bonded, states.rows));
  return alarms;
}

}  // namespace gapstrain::cases
