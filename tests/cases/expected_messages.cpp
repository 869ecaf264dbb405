#include "tests/cases/expected_messages.h"

#include <fmt/format.h>

#include <sstream>

namespace gapstrain::tests {

namespace {

struct Expectation {
  std::string line;                // "7"
  std::string key;                 // " plate.width:", empty for a fault of no key
  std::vector<std::string> words;  // pieces of the message in their order
};

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
  const std::string dots = " ... ";
  for (auto at = rest.find(dots); at != std::string::npos; at = rest.find(dots)) {
    result.words.push_back(rest.substr(0, at));
    rest = rest.substr(at + dots.size());
  }
  result.words.push_back(rest);
  return result;
}

}  // namespace

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

std::vector<std::string> expectations(const std::string& text) {
  const std::string mark = "# expect: ";
  std::vector<std::string> found;
  for (const auto& line : lines_of(text))
    if (line.starts_with(mark)) found.push_back(line.substr(mark.size()));
  return found;
}

bool answers(const std::string& message, const std::string& file, const std::string& expectation) {
  const auto [line, key, words] = parse(expectation);
  const std::string beginning = file + ":" + line + ":";
  if (!message.starts_with(beginning)) return false;
  auto at = message.find(':', beginning.size());
  if (at == std::string::npos || !message.substr(at + 1).starts_with(key)) return false;
  at += 1 + key.size();
  for (const auto& piece : words) {
    const auto next = message.find(piece, at);
    if (next == std::string::npos) return false;
    at = next + piece.size();
  }
  return true;
}

}  // namespace gapstrain::tests
