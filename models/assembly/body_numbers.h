// Which of a construct's bodies is which, by number: its plates first, then its fragments from proximal to distal.
#pragma once

#include "models/parts/construct.h"

#include <cstddef>

namespace gapstrain::models {

inline std::size_t fragment_count(const Construct& construct) { return construct.fractures.size() + 1; }
inline std::size_t body_count(const Construct& construct) {
  return construct.plates.size() + fragment_count(construct);
}

// The plate's, for what does not yet look at several (see only.h).
inline constexpr std::size_t only_plate_body = 0;

constexpr std::size_t body_of_plate(std::size_t plate) { return plate; }
inline std::size_t body_of_fragment(const Construct& construct, std::size_t fragment) {
  return construct.plates.size() + fragment;
}
inline bool is_plate(const Construct& construct, std::size_t body) { return body < construct.plates.size(); }

}  // namespace gapstrain::models
