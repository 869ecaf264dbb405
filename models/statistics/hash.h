// Random numbers as a pure function of what they are for: the same in any order, thread and machine.
#pragma once

#include <cstdint>

namespace gapstrain::models {

// A bijection of 64-bit numbers that scatters them. The finaliser of G. L. Steele, D. Lea and C. H. Flood, Fast
// splittable pseudorandom number generators, Proc. OOPSLA 2014, 453-472, with their increment put first so that
// zero does not stay zero.
constexpr std::uint64_t scatter(std::uint64_t bits) {
  bits += 0x9e3779b97f4a7c15U;
  bits = (bits ^ (bits >> 30U)) * 0xbf58476d1ce4e5b9U;
  bits = (bits ^ (bits >> 27U)) * 0x94d049bb133111ebU;
  return bits ^ (bits >> 31U);
}

// 64 random bits for the pair (which, what) under this seed.
constexpr std::uint64_t hash(std::uint64_t seed, std::uint64_t which, std::uint64_t what) {
  return scatter(scatter(scatter(seed) ^ which) ^ what);
}

// The middle of that one of 2^52 equal cells of the unit interval that the leading bits name: never 0, never 1.
constexpr double to_unit_interval(std::uint64_t bits) {
  return (static_cast<double>(bits >> 12U) + 0.5) * 0x1p-52;
}

}  // namespace gapstrain::models
