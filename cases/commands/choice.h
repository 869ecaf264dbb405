// An option of a few words: one is checked, told in messages and offered by completion.
#pragma once

#include <string>
#include <vector>

namespace CLI {
class Option;
}

namespace gapstrain::cases {

// Lets the option take these words only.
void take_one_of(CLI::Option& option, const std::vector<std::string>& words);

}  // namespace gapstrain::cases
