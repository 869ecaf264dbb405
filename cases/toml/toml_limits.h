// What a TOML text may hold at most, looked at before it is parsed: the parser goes one call deeper with each
// level, so a deep enough text would end the process.
#pragma once

#include "cases/toml/document.h"

#include <optional>
#include <string>
#include <string_view>

namespace gapstrain::cases {

struct LimitFault {
  Place place;
  std::string key;      // as the line begins
  std::string message;  // what was found, what is allowed
};

// The first thing in the text that is beyond a limit: parts of a dotted key, brackets in brackets, keys in all.
// Nothing for a text within them, which may still be no TOML.
std::optional<LimitFault> find_limit_fault(std::string_view text);

}  // namespace gapstrain::cases
