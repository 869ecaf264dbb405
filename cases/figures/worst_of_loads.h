// What the figures of a row are of, in words.
#pragma once

#include <fmt/format.h>

#include <string>

namespace gapstrain::cases {

// "its only load", or "the worst of its 3 loads": what a row's figures are of.
inline std::string worst_of_loads(std::size_t loads) {
  return loads == 1 ? "its only load" : fmt::format("the worst of its {} loads", loads);
}

}  // namespace gapstrain::cases
