// Which steps a picture with little room shows, and which parts a step is about.
#pragma once

#include <string>
#include <vector>

namespace gapstrain::viz {

// Indices, rising, of at most `most` of the steps: the first, the last, and those that change the force most.
// @pre most >= 2
std::vector<std::size_t> chosen_steps(const std::vector<double>& forces, std::size_t most);

// Whether a text names a label as a whole word: "insert S1 and S4" names S1, "insert S14" does not.
bool names(const std::string& text, const std::string& label);

}  // namespace gapstrain::viz
