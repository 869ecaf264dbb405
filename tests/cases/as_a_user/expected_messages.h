// Broken files say on top what they are to be answered:
//   # expect: LINE: KEY: words ... more words
// one line per message, in the order of the messages.
#pragma once

#include "tests/cases/as_a_user/texts.h"

#include <string>
#include <vector>

namespace gapstrain::tests {

// What follows "# expect: ", in the order of the text.
std::vector<std::string> expectations(const std::string& text);

// Whether the pieces of "words ... more words" stand in the text in their order.
bool says(const std::string& text, const std::string& words);

// Whether a message is FILE:LINE:COLUMN: KEY: with the expected words.
bool answers(const std::string& message, const std::string& file, const std::string& expectation);

}  // namespace gapstrain::tests
