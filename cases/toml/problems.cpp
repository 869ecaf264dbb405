#include "cases/toml/problems.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

std::string format_problems(const std::string& file, std::vector<CaseProblem> problems) {
  std::stable_sort(problems.begin(), problems.end(),
                   [](const CaseProblem& a, const CaseProblem& b) { return a.place < b.place; });
  constexpr std::size_t most_lines = 100;  // a file with more is wrong from end to end
  const std::size_t left_out = problems.size() - std::min(problems.size(), most_lines);
  problems.resize(problems.size() - left_out);
  std::string lines;
  for (const auto& problem : problems)
    lines += fmt::format("{}:{}:{}: {}{}{}{}\n", file, problem.place.line, problem.place.column,
                         problem.warning ? "warning: " : "", problem.key, problem.key.empty() ? "" : ": ",
                         problem.message);
  if (left_out > 0) lines += fmt::format("{}: and {} more faults\n", file, left_out);
  return lines;
}

CaseError::CaseError(const std::string& file, std::vector<CaseProblem> found)
    : std::runtime_error(format_problems(file, found)), problems(std::move(found)) {}

}  // namespace gapstrain::cases
