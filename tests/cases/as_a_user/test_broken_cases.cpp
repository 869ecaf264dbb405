// Every file of tests/cases/broken is a case with faults, and says on top what the program must answer. A new
// broken case is a new file.
#include "tests/cases/as_a_user/expected_messages.h"
#include "tests/cases/as_a_user/run_program.h"

#include <catch2/catch.hpp>

using namespace gapstrain::tests;

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
