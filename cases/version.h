// The program's version, as the build names it.
#pragma once

namespace gapstrain::cases {

inline constexpr const char* version = GAPSTRAIN_VERSION;

}  // namespace gapstrain::cases
