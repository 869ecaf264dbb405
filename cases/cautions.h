// What every output carries, so that no figure travels without it.
#pragma once

#include <array>
#include <string_view>

namespace gapstrain::cases {

inline constexpr std::array<std::string_view, 3> cautions{
    "This is a calculation from simplified geometry. It is not a medical device.",
    "It does not replace a licensed surgeon's judgement, the implant maker's instructions or local rules.",
    "Threads hold in bone, and locking heads in the plate, for good: loosening and wear are not in it."};

}  // namespace gapstrain::cases
