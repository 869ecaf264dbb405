// Hostile and everyday mistakes, out of the catalogues in tests/cases/bad_inputs: each is answered with status 2,
// the place, what was found, what is allowed or how to mend it, and nothing is written. A new one is a new entry
// there. `test_bad_inputs "[table]"` prints them all with status and seconds.
#include "tests/cases/as_a_user/bad_input.h"
#include "tests/cases/as_a_user/expected_messages.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <algorithm>

using namespace gapstrain::tests;

namespace {

const std::string analyse = "gapstrain analyse bad.toml --no-pictures";
const std::string lesson = "gapstrain lesson bad.toml --no-pictures --quiet";
const std::string sweep = "gapstrain sweep bad.toml --no-pictures --threads 1";

struct Catalogue {
  std::string file, command;
};

const std::vector<Catalogue> catalogues{
    {"quantities.txt", analyse}, {"structure.txt", analyse}, {"toml.txt", analyse},  {"studies.txt", sweep},
    {"commands.txt", ""},        {"loads.txt", analyse},     {"lessons.txt", lesson}};

void refuses(const BadInput& input, const Answer& answer) {
  CHECK(answer.status == 2);
  CHECK(answer.out.empty());
  CHECK(answer.left.empty());
  CHECK_FALSE(input.expected.empty());
}

// Every message, and no other.
void check_messages(const Catalogue& catalogue) {
  for (const auto& input : read_catalogue(catalogue.file, catalogue.command)) {
    const Answer given = answer(input);
    INFO(input.title << " was answered:\n" << given.err);
    refuses(input, given);
    const auto messages = lines_of(given.err);
    CHECK(messages.size() == input.expected.size());
    for (std::size_t i = 0; i < std::min(messages.size(), input.expected.size()); ++i) {
      INFO("expected: " << input.expected[i]);
      CHECK(answers(messages[i], "bad.toml", input.expected[i]));
    }
  }
}

}  // namespace

TEST_CASE("a case with values that cannot be meant is refused before anything is built", "[cases][as-a-user]") {
  check_messages(catalogues[0]);
}

TEST_CASE("a case with wrong counts, names, lists or tables is refused", "[cases][as-a-user]") {
  check_messages(catalogues[1]);
}

TEST_CASE("a text that is no TOML, or too much of it, is refused", "[cases][as-a-user]") {
  check_messages(catalogues[2]);
}

TEST_CASE("a study with a fault is refused before its first row", "[cases][as-a-user]") {
  check_messages(catalogues[3]);
}

TEST_CASE("a case whose loads cannot act so is refused", "[cases][as-a-user]") { check_messages(catalogues[5]); }

TEST_CASE("a lesson with a fault, or that says what its solved scenes do not bear out, is refused",
          "[cases][as-a-user]") {
  check_messages(catalogues[6]);
}

TEST_CASE("a command line that cannot be carried out is refused before any work", "[cases][as-a-user]") {
  for (const auto& input : read_catalogue(catalogues[4].file, catalogues[4].command)) {
    const Answer given = answer(input);
    INFO(input.title << " was answered:\n" << given.err);
    refuses(input, given);
    for (const auto& words : input.expected) {
      INFO("expected: " << words);
      CHECK(says(given.err, words));
    }
  }
}

TEST_CASE("the catalogues are as long as they are said to be", "[cases]") {
  std::size_t inputs = 0;
  for (const auto& [file, command] : catalogues) inputs += read_catalogue(file, command).size();
  CHECK(inputs >= 250);
}

TEST_CASE("a table of the bad inputs", "[.][table]") {
  for (const auto& [file, command] : catalogues)
    for (const auto& input : read_catalogue(file, command)) {
      const Answer given = answer(input);
      fmt::print("{:<15} {:<58} {:>2} {:6.2f} s  {}\n", file, input.title, given.status, given.seconds,
                 given.err.substr(0, given.err.find('\n')).substr(0, 160));
    }
}
