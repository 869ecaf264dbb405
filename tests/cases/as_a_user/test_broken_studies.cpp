// Every file of tests/cases/broken_studies is a study with faults, and says on top what it must be answered. A new
// broken study is a new file.
#include "cases/study/study_file.h"
#include "tests/cases/as_a_user/expected_messages.h"
#include "tests/cases/as_a_user/run_program.h"

#include <catch2/catch.hpp>

using namespace gapstrain;
using namespace gapstrain::tests;

namespace {

std::vector<cases::StudyFinding> known_findings_of(const models::Construct& /*like*/) {
  return {{"gap_strain", ""}, {"peak_stress", "MPa"}, {"axial_stiffness", "N/mm"}};
}

std::string answer(const std::filesystem::path& file) {
  try {
    cases::read_study(file, known_findings_of);
  } catch (const cases::CaseError& error) {
    return error.what();
  }
  return {};
}

}  // namespace

TEST_CASE("every broken study is answered at its place with what is wrong, all of it together", "[cases][study]") {
  const auto files = toml_files(std::filesystem::path(GAPSTRAIN_TESTS) / "broken_studies");
  REQUIRE(files.size() >= 60);
  for (const auto& file : files) {
    const auto expected = expectations(read_file(file));
    const std::string answered = answer(file);
    INFO(file.filename().string() << " was answered:\n" << answered);
    CHECK_FALSE(expected.empty());
    const auto messages = lines_of(answered);
    CHECK(messages.size() == expected.size());
    for (std::size_t i = 0; i < std::min(messages.size(), expected.size()); ++i) {
      INFO("expected: " << expected[i]);
      CHECK(answers(messages[i], file.string(), expected[i]));
    }
  }
}
