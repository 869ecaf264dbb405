#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

namespace gapstrain::tests {

void check_finds_only(const Construct& construct, Severity severity, const std::string& where,
                      const std::string& words) {
  const auto problems = check(construct);
  std::string all;
  for (const auto& problem : problems) all += problem.where + ": " + problem.message + "\n";
  CAPTURE(all, where, words);
  REQUIRE(problems.size() == 1);
  CHECK(problems.front().severity == severity);
  CHECK(problems.front().where == where);
  CHECK_THAT(problems.front().message, Catch::Matchers::Contains(words));
  CHECK_THAT(problems.front().message, Catch::Matchers::EndsWith("."));
}

}  // namespace gapstrain::tests
