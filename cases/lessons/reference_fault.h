// What is wrong with a figure that a lesson names.
#pragma once

#include "cases/lessons/lesson_file.h"

#include <optional>
#include <string>

namespace gapstrain::cases {

// Of a reference in the scene at `scene`, from 0: no such figure, load or state. A sentence.
std::optional<std::string> fault_of_reference(const std::string& text, const std::vector<Scene>& scenes,
                                              std::size_t scene);

// The same of a figure that the page shows of whatever construct is at hand: it names no state.
std::optional<std::string> fault_of_shown_figure(const std::string& text, const std::vector<Scene>& scenes,
                                                 std::size_t scene);

}  // namespace gapstrain::cases
