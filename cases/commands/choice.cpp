#include "cases/commands/choice.h"

#include "cases/text/words.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <algorithm>

namespace gapstrain::cases {

void take_one_of(CLI::Option& option, const std::vector<std::string>& words) {
  option.type_name(fmt::format("{}", fmt::join(words, "|")));
  option.check([words](const std::string& found) -> std::string {
    if (std::find(words.begin(), words.end(), found) != words.end()) return {};
    return fmt::format("found \"{}\"; allowed: {}{}", found, join_or(words), did_you_mean(found, words));
  });
}

}  // namespace gapstrain::cases
