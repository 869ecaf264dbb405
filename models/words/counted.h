// Counts in words.
#pragma once

#include <string>
#include <string_view>

namespace gapstrain::models {

// "1 screw", "3 screws"
std::string counted(int count, std::string_view one);
// "one" to "nine"; in figures beyond.
std::string in_letters(int count);

}  // namespace gapstrain::models
