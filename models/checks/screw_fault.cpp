#include "models/checks/screw_fault.h"

#include <fmt/format.h>

#include <utility>

namespace gapstrain::models {

std::optional<std::string> fault_of_last(const Construct& construct, std::vector<Screw> screws) {
  Construct alone = construct;
  alone.screws = std::move(screws);
  alone.steps.clear();
  alone.temporary.clear();
  const std::string path = fmt::format("screw[{}]", alone.screws.size() - 1);
  for (const auto& problem : check(alone))
    if (problem.severity == Severity::error && problem.where.starts_with(path)) return problem.message;
  return std::nullopt;
}

}  // namespace gapstrain::models
