#include "tests/cases/run_program.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

TEST_CASE("an analysis draws four pictures for its only load", "[cases][as-a-user][pictures]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "case.toml", read_file(fs::path(GAPSTRAIN_EXAMPLES) / "minimal.toml") +
                                               "\n[[load]]\nname = \"push\"\naxial = \"70 N\"\n"
                                               "\n[mesh]\nrefinement = 0.5\nrim_elements = 24\n");
  const Run run = run_program({"analyse", "case.toml", "--out", "out"}, scratch.path());
  INFO(run.out << run.err);
  for (const auto* name :
       {"gap_strain.png", "1_push_construct.png", "1_push_hottest_hole.png", "1_push_along_plate.png"}) {
    INFO(name);
    const std::string picture = read_file(scratch.path() / "out" / "pictures" / name);
    CHECK(picture.size() > 5000);
    CHECK(picture.starts_with("\x89PNG"));
  }
}
