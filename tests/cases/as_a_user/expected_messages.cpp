#include "tests/cases/as_a_user/expected_messages.h"

#include <fmt/format.h>

namespace gapstrain::tests {

namespace {

struct Expectation {
  std::string line;                // "7"
  std::string key;                 // " plate.width:", empty for a fault of no key
  std::vector<std::string> words;  // pieces of the message in their order
};

// "found ... mm" in pieces.
std::vector<std::string> pieces_of(std::string words) {
  const std::string dots = " ... ";
  std::vector<std::string> pieces;
  for (auto at = words.find(dots); at != std::string::npos; at = words.find(dots)) {
    pieces.push_back(words.substr(0, at));
    words = words.substr(at + dots.size());
  }
  pieces.push_back(words);
  return pieces;
}

// Whether they stand in the text behind `at`, in their order.
bool has_pieces(const std::string& text, std::size_t at, const std::vector<std::string>& pieces) {
  for (const auto& piece : pieces) {
    const auto next = text.find(piece, at);
    if (next == std::string::npos) return false;
    at = next + piece.size();
  }
  return true;
}

// From "7: plate.width: found ... mm".
Expectation parse(const std::string& text) {
  const auto colon = text.find(':');
  Expectation result{text.substr(0, colon), "", {}};
  std::string rest = text.substr(colon + 2);
  const auto key = rest.find(": ");
  if (key < rest.find(' ')) {
    result.key = fmt::format(" {}", rest.substr(0, key + 1));
    rest = rest.substr(key + 2);
  }
  result.words = pieces_of(rest);
  return result;
}

}  // namespace

std::vector<std::string> expectations(const std::string& text) {
  const std::string mark = "# expect: ";
  std::vector<std::string> found;
  for (const auto& line : lines_of(text))
    if (line.starts_with(mark)) found.push_back(line.substr(mark.size()));
  return found;
}

bool says(const std::string& text, const std::string& words) { return has_pieces(text, 0, pieces_of(words)); }

bool answers(const std::string& message, const std::string& file, const std::string& expectation) {
  const auto [line, key, words] = parse(expectation);
  const std::string beginning = file + ":" + line + ":";
  if (!message.starts_with(beginning)) return false;
  auto at = message.find(':', beginning.size());
  if (at == std::string::npos || !message.substr(at + 1).starts_with(key)) return false;
  return has_pieces(message, at + 1 + key.size(), words);
}

}  // namespace gapstrain::tests
