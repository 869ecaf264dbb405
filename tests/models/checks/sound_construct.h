// A construct in which `check` finds nothing, and ways to hold a spoilt copy against it.
#pragma once

#include "models/parts/construct.h"
#include "tests/models/geometry/sample_bones.h"

#include <limits>
#include <string>

namespace gapstrain::tests {

// A slightly bowed elliptic bone, 163 mm long, 13.8 by 12.2 mm; eight round holes of 3.1 mm in a plate of 101 mm;
// six screws of 2.4 mm core, one of them in one cortex and one tilted; an oblique gap of 3.3 mm at 81 mm.
Construct sound_construct();

// Requires that `check` finds exactly one problem: of this severity, at this place, with these words in its
// message.
void check_finds_only(const Construct& construct, Severity severity, const std::string& where,
                      const std::string& words);
inline void check_finds_only_error(const Construct& construct, const std::string& where,
                                   const std::string& words) {
  check_finds_only(construct, Severity::error, where, words);
}
inline void check_finds_only_warning(const Construct& construct, const std::string& where,
                                     const std::string& words) {
  check_finds_only(construct, Severity::warning, where, words);
}

// The sound construct spoilt: exactly one error, at this place, with these words.
template <class Spoil>
void check_construct_error(const std::string& where, const std::string& words, Spoil spoil) {
  models::Construct construct = sound_construct();
  spoil(construct);
  check_finds_only_error(construct, where, words);
}

inline constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

}  // namespace gapstrain::tests
