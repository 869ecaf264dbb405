// Names of the files of one analysis.
#pragma once

#include <string>
#include <string_view>

namespace gapstrain::cases {

// Everything but letters, digits, '-' and '.' as '_', one for several, none at the end.
std::string file_stem(std::string_view name);

// "1_axial_100_N": number from 1, then the load's name with everything but letters, digits, '-' and '.' as '_'.
std::string load_stem(std::size_t index, std::string_view name);

}  // namespace gapstrain::cases
