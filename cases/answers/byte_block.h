// Numbers of an answer that are too many for a text: one block of bytes, little-endian as hosts of the core are.
#pragma once

#include "cases/files/json_value.h"

#include <Eigen/Core>

#include <cstdint>
#include <string>
#include <vector>

namespace gapstrain::cases {

class ByteBlock {
 public:
  // Where it went: {"offset": bytes, "count": numbers}.
  Json add(const std::vector<float>& numbers) { return add_all(numbers); }
  Json add(const std::vector<std::uint32_t>& numbers) { return add_all(numbers); }

  std::string take() { return std::move(bytes_); }

 private:
  template <class Number>
  Json add_all(const std::vector<Number>& numbers) {
    const std::size_t offset = bytes_.size();  // a multiple of four: all numbers are
    bytes_.append(reinterpret_cast<const char*>(numbers.data()), numbers.size() * sizeof(Number));
    return {{"offset", offset}, {"count", numbers.size()}};
  }
  std::string bytes_;
};

}  // namespace gapstrain::cases
