// What is written on a picture, as its drawing code hands it to Cairo. Ink tells that something stands there; only
// this tells what.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace gapstrain::tests {

// Every text that Cairo is given while `draw` runs, in that order; a text broken into lines is one a line.
std::vector<std::string> words_written_by(const std::function<void()>& draw);

}  // namespace gapstrain::tests
