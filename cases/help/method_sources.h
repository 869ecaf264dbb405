// The published sources that the method rests on, as the code names them where it uses them.
#pragma once

#include <string_view>
#include <vector>

namespace gapstrain::cases {

struct MethodSource {
  std::string_view of;         // what in the method
  std::string_view reference;  // authors, year and place, in the words of the code
  bool from_memory = false;    // so the code says: not looked up when it was written
};

// By layer, from the mesh to the review. Rules of the trade, figures of materials and a patient's loads carry
// their sources in the outputs beside each figure, and are not among these.
const std::vector<MethodSource>& method_sources();

}  // namespace gapstrain::cases
