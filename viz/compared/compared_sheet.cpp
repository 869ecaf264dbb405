#include "viz/compared/compared_sheet.h"

#include <algorithm>
#include <stdexcept>

namespace gapstrain::viz {

void check_compared(const std::vector<ComparedConstruct>& constructs) {
  if (constructs.size() < 2 || constructs.size() > 4)
    throw std::invalid_argument("two to four constructs can be compared in one picture");
}

std::optional<std::string> common_load(const std::vector<ComparedConstruct>& constructs) {
  const std::string& first = constructs.front().findings->load;
  const bool same = std::all_of(constructs.begin(), constructs.end(),
                                [&](const auto& construct) { return construct.findings->load == first; });
  return same ? std::optional(first) : std::nullopt;
}

}  // namespace gapstrain::viz
