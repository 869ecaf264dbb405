// Where a reader finds what a sentence had no room for: sentences go to screens beside files, and into pages that
// have none.
#pragma once

#include <string_view>

namespace gapstrain::cases {

struct RestStands {
  std::string_view margins = "margins.txt", margins_say = "margins.txt says";
  std::string_view limits = "findings.json";
};

inline constexpr RestStands in_files{};
inline constexpr RestStands in_page{"the margins below", "the margins below say", "the limits below"};

}  // namespace gapstrain::cases
