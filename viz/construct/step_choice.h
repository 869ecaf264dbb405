// Which steps a picture with little room shows.
#pragma once

#include <vector>

namespace gapstrain::viz {

// Indices, rising, of at most `most` of the steps: the first, the last, and those that change the force most.
// @pre most >= 2
std::vector<std::size_t> chosen_steps(const std::vector<double>& forces, std::size_t most);

}  // namespace gapstrain::viz
