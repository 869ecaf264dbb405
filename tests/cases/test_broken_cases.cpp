// Every file of tests/cases/broken is a case with faults, and says on top what the program must answer:
//   # expect: LINE: KEY: words ... more words
// one line per message, in the order of the messages. A new broken case is a new file.
#include "tests/cases/run_program.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <sstream>

using namespace gapstrain::tests;

namespace {

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

// Whether a message is FILE:LINE:COLUMN: KEY: with the expected words.
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

}  // namespace

TEST_CASE("every broken case is answered at its place with what is wrong, and nothing is written",
          "[cases][as-a-user]") {
  const auto files = toml_files(std::filesystem::path(GAPSTRAIN_TESTS) / "broken");
  REQUIRE(files.size() >= 40);
  for (const auto& file : files) {
    const auto expected = expectations(read_file(file));
    const ScratchFolder scratch;
    const Run run = run_program({"analyse", file.string(), "--no-pictures"}, scratch.path());
    INFO(file.filename().string() << " was answered:\n" << run.err);
    CHECK_FALSE(expected.empty());
    CHECK(run.status == 2);
    CHECK(run.out.empty());
    CHECK(std::filesystem::is_empty(scratch.path()));
    const auto messages = lines_of(run.err);
    CHECK(messages.size() == expected.size());
    for (std::size_t i = 0; i < std::min(messages.size(), expected.size()); ++i) {
      INFO("expected: " << expected[i]);
      CHECK(answers(messages[i], file.string(), expected[i]));
    }
  }
}

TEST_CASE("the comparison of messages can fail", "[cases]") {
  const std::string message = "a.toml:7:9: plate.width: found \"3 N\", which is a force; a length is wanted here";
  CHECK(answers(message, "a.toml", "7: plate.width: found \"3 N\" ... a length"));
  CHECK_FALSE(answers(message, "a.toml", "8: plate.width: found"));
  CHECK_FALSE(answers(message, "a.toml", "7: plate.thickness: found"));
  CHECK_FALSE(answers(message, "a.toml", "7: plate.width: a length ... found"));
  CHECK_FALSE(answers(message, "b.toml", "7: plate.width: found"));
  CHECK_FALSE(answers(message, "a.toml", "7: plate.width: found ... a mass"));
}
