#include "cases/outputs/sentences/state_lines.h"

#include "cases/text/columns.h"
#include "cases/text/csv_cell.h"
#include "cases/text/digits.h"
#include "models/words/interface_words.h"
#include "models/words/limit_words.h"
#include "models/words/state_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

std::string estimate_names(const models::ResultState& state) {
  std::vector<std::string_view> names;
  for (const auto estimate : state.estimated) names.push_back(models::name_of(estimate));
  return fmt::format("{}", fmt::join(names, ", "));
}

// Of the checks that failed, without their figures.
std::vector<std::string> check_names(const models::ResultState& state) {
  std::vector<std::string> names;
  for (const auto& doubt : state.not_trusted) names.push_back(models::doubt_name(doubt));
  return names;
}

std::string failure_line(const models::Failure& failure) {
  std::string line = models::failed_part(failure);
  if (!failure.load().empty()) line += fmt::format(", under \"{}\"", failure.load());
  if (failure.factor()) line += fmt::format(": it bears {} of what it is asked", two_digits(*failure.factor()));
  return fmt::format("{}; {}.", line, models::failure_time(failure.when));
}

// Null where no bound turns what is said.
const models::InterfaceBounds* warning_bounds(const models::ResultState& state) {
  return state.interface && state.interface->warns(state.standing()) ? &*state.interface : nullptr;
}

// At which bounds it holds, where that was asked.
std::string holding_words(const models::ResultState& state) {
  if (!state.interface) return "";
  if (state.interface->verdict() == models::BoundsVerdict::holds_at_both)
    return ", with screws bonded to bone or soft in it";
  return fmt::format(", with screws {}", models::interface_name(state.interface->taken));
}

bool is_known(const models::InterfaceBounds& bounds) { return bounds.verdict() != models::BoundsVerdict::unknown; }

}  // namespace

std::string standing_word(models::Standing standing) {
  switch (standing) {
    case models::Standing::holds:
      return "holds";
    case models::Standing::fails:
      return "FAILS";
    case models::Standing::not_trusted:
      break;
  }
  return "NOT TO BE TRUSTED";
}

std::vector<std::string> alarms_of(const models::ResultState& state, const RestStands& rest) {
  std::vector<std::string> lines;
  for (const auto& doubt : state.not_trusted)
    lines.push_back("NOT TO BE TRUSTED: " + models::doubt_sentence(doubt) + ".");
  for (const auto& failure : state.fails) lines.push_back("FAILS: " + failure_line(failure));
  if (const auto* bounds = warning_bounds(state))
    lines.push_back(fmt::format("{}: {}.", is_known(*bounds) ? "FAILS AT THE SOFT BOUND" : "NOT KNOWN",
                                models::soft_bound_warning(*bounds)));
  constexpr std::size_t most_limits = 2;
  for (std::size_t k = 0; k < std::min(most_limits, state.limits.size()); ++k)
    lines.push_back("LIMIT: " + models::limit_sentence(state.limits[k]));
  if (state.limits.size() > most_limits)
    lines.push_back(
        fmt::format("LIMIT: {} more are passed, see {}.", state.limits.size() - most_limits, rest.limits));
  if (!state.estimated.empty())
    lines.push_back(fmt::format("ESTIMATE, not measured: {}. Order nothing by them.", estimate_names(state)));
  return lines;
}

std::vector<std::string> short_alarms_of(const models::ResultState& state, const RestStands& rest) {
  std::vector<std::string> lines, failures;
  for (const auto& failure : state.fails)
    failures.push_back(fmt::format("{}, {}", models::failed_part(failure), models::failure_time(failure.when)));
  const auto names = check_names(state);
  if (!names.empty()) lines.push_back(fmt::format("NOT TO BE TRUSTED: {}.", fmt::join(names, "; ")));
  if (!failures.empty()) lines.push_back(fmt::format("FAILS: {}.", fmt::join(failures, "; ")));
  if (const auto* bounds = warning_bounds(state))
    lines.push_back(fmt::format("{}: {}.", is_known(*bounds) ? "FAILS AT THE SOFT BOUND" : "NOT KNOWN",
                                models::soft_bound_warning_in_short(*bounds)));
  if (!state.limits.empty())
    lines.push_back(state.limits.size() == 1
                        ? "LIMIT: " + models::limit_sentence(state.limits.front())
                        : fmt::format("LIMIT: {} are passed, see {}.", state.limits.size(), rest.limits));
  if (!state.estimated.empty())
    lines.push_back(fmt::format("ESTIMATE: {}. Order nothing by them.", estimate_names(state)));
  if (!state.second_order.empty()) lines.push_back("LARGE AXIAL LOAD: second-order effects are in the figures.");
  if (!state.turned.empty()) lines.push_back("LARGE TURNS: parts are followed as they turn.");
  if (!state.softening.empty()) lines.push_back("SCREWS SOFTEN in bone as stated by the case.");
  return lines;
}

std::vector<std::string> state_sentences(const models::ResultState& state, const RestStands& rest) {
  auto sentences = alarms_of(state, rest);
  if (state.standing() == models::Standing::holds)
    sentences.insert(
        sentences.begin(),
        fmt::format("HOLDS: no part that has a margin fails under the loads entered{}.", holding_words(state)));
  if (!state.second_order.empty())
    sentences.push_back(fmt::format("LARGE AXIAL LOAD: {}.", models::second_order_sentence(state.second_order)));
  if (!state.turned.empty())
    sentences.push_back(fmt::format("LARGE TURNS: {}.", models::turned_sentence(state.turned)));
  if (!state.softening.empty())
    sentences.push_back(fmt::format("SCREWS SOFTEN in bone, {}.", models::softening_sentence(state.softening)));
  return sentences;
}

std::string state_head(const models::ResultState& state, std::size_t width) {
  std::string text;
  for (const auto& line : state_sentences(state))
    for (const auto& part : wrap(line, width, 2)) text += part + "\n";
  return text;
}

std::string state_cell(const models::ResultState& state) {
  std::vector<std::string> parts;
  for (const auto& failure : state.fails) parts.push_back(models::failed_part(failure));
  std::string cell = standing_word(state.standing());
  const auto checks = check_names(state);
  if (!checks.empty()) cell += fmt::format(" ({})", fmt::join(checks, "; "));
  if (!state.fails.empty())
    cell += fmt::format("{} ({})", state.not_trusted.empty() ? "" : "; FAILS", fmt::join(parts, "; "));
  if (const auto* bounds = warning_bounds(state))
    cell += is_known(*bounds) ? "; FAILS with screws soft in bone" : "; not known with screws soft in bone";
  if (!state.estimated.empty()) cell += fmt::format("; ESTIMATE ({})", estimate_names(state));
  if (!state.second_order.empty()) cell += "; with second-order effects";
  if (!state.turned.empty()) cell += "; with large turns";
  if (!state.softening.empty()) cell += "; screws soften as stated";
  return cell;
}

std::vector<std::string> keys_of(const std::vector<models::Estimate>& estimated) {
  std::vector<std::string> keys;
  for (const auto estimate : estimated) keys.emplace_back(models::key_of(estimate));
  return keys;
}

std::string with_result_column(const std::string& table, const models::ResultState& state) {
  const std::string column = "," + csv_cell(state_cell(state));
  std::string result;
  bool is_heading = true;
  for (std::size_t begin = 0; begin < table.size();) {
    const std::size_t end = std::min(table.find("\r\n", begin), table.size());
    result += table.substr(begin, end - begin) + (is_heading ? ",result" : column) + "\r\n";
    is_heading = false;
    begin = end + 2;
  }
  return result;
}

}  // namespace gapstrain::cases
