// A short fingerprint of a text, to tell whether findings belong to a case file. Not for security.
#pragma once

#include <cstdint>
#include <string_view>

namespace gapstrain::cases {

// FNV-1a, 64 bits: Fowler, Noll & Vo, IETF draft-eastlake-fnv, "The FNV Non-Cryptographic Hash Algorithm".
constexpr std::uint64_t fnv1a64(std::string_view text) {
  std::uint64_t hash = 0xcbf29ce484222325;
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001b3;
  }
  return hash;
}

}  // namespace gapstrain::cases
