#include "cases/reader/problems.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

std::string format_problems(const std::string& file, std::vector<CaseProblem> problems) {
  std::stable_sort(problems.begin(), problems.end(),
                   [](const CaseProblem& a, const CaseProblem& b) { return a.place < b.place; });
  std::string lines;
  for (const auto& problem : problems)
    lines += fmt::format("{}:{}:{}: {}{}{}{}\n", file, problem.place.line, problem.place.column,
                         problem.warning ? "warning: " : "", problem.key, problem.key.empty() ? "" : ": ",
                         problem.message);
  return lines;
}

CaseError::CaseError(const std::string& file, std::vector<CaseProblem> found)
    : std::runtime_error(format_problems(file, found)), problems(std::move(found)) {}

}  // namespace gapstrain::cases
