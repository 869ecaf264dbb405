// The charts and pictures of studies.
#include "tests/cases/as_a_user/study_runs.h"

#include <catch2/catch.hpp>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

namespace {

void check_pictures(const fs::path& folder, const std::vector<std::string>& names) {
  std::size_t found = 0;
  for (const auto& name : names) {
    INFO(name);
    const std::string picture = read_file(folder / name);
    CHECK(picture.size() > 3'000);
    CHECK(picture.starts_with("\x89PNG"));
  }
  for (const auto& [name, bytes] : contents(folder)) {
    INFO(name);
    CHECK(bytes.starts_with("\x89PNG"));
    ++found;
  }
  CHECK(found == names.size());
}

Run sweep(const fs::path& folder, const std::string& study) {
  write_file(folder / "tube.toml", coarse_tube(6, "[1, 2, 5, 6]"));
  write_file(folder / "study.toml", "case = \"tube.toml\"\n" + study);
  return run_program({"sweep", "study.toml", "--out", "out", "--quiet"}, folder);
}

const std::string two_samples =
    "[[vary]]\nkey = \"load[0].axial\"\nname = \"push\"\ndistribution = \"uniform\"\nlow = \"50 N\"\n"
    "high = \"130 N\"\n[[vary]]\nkey = \"bone.cortical_bone.youngs_modulus\"\nname = \"bone\"\n"
    "distribution = \"normal\"\nmean = \"17 GPa\"\nsd = \"2 GPa\"\n"
    "[[limit]]\nfinding = \"gap_strain\"\nmost = 0.06\n";

}  // namespace

TEST_CASE("layouts draw three charts and the best", "[cases][as-a-user][pictures]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml",
             coarse_tube(6, "[1, 2, 5, 6]") + "\n[layouts]\nbarred = [3]\nfilled = [1, 5, 6]\n");
  const Run run = run_program({"layouts", "tube.toml", "--out", "out", "--quiet"}, scratch.path());
  INFO(run.err);
  REQUIRE(run.status == 0);
  CHECK(run.err.empty());
  check_pictures(scratch.path() / "out" / "charts",
                 {"front.png", "gap_strain_over_working_length.png", "peak_stress_over_working_length.png"});
  CHECK(data_rows(scratch.path() / "out" / "best.csv") == 2);
  CHECK(contents(scratch.path() / "out" / "best").size() == 2);
  for (const auto& [name, bytes] : contents(scratch.path() / "out" / "best")) CHECK(bytes.starts_with("\x89PNG"));
}

TEST_CASE("a grid draws its charts, maps, main effects and swings", "[cases][as-a-user][pictures]") {
  const ScratchFolder scratch;
  const Run run = sweep(scratch.path(),
                        "[[vary]]\nkey = \"load[0].axial\"\nname = \"push\"\nvalues = [\"50 N\", \"100 N\"]\n"
                        "[[vary]]\nkey = \"bone.cortical_bone.youngs_modulus\"\nname = \"bone\"\n"
                        "values = [\"10 GPa\", \"17 GPa\"]\n"
                        "[[chart]]\nx = \"push\"\ny = \"gap_strain\"\nseries = \"bone\"\n");
  INFO(run.err);
  REQUIRE(run.status == 0);
  CHECK(run.err.empty());
  check_pictures(scratch.path() / "out" / "charts", {"push_gap_strain.png", "map_gap_strain.png",
                                                     "main_effects_gap_strain.png", "swings_gap_strain.png"});
}

TEST_CASE("samples draw their spread and swings, a Saltelli design its indices", "[cases][as-a-user][pictures]") {
  const ScratchFolder random, saltelli;
  REQUIRE(sweep(random.path(), "[design]\nkind = \"monte-carlo\"\npoints = 8\n" + two_samples).status == 0);
  check_pictures(random.path() / "out" / "charts", {"spread_gap_strain.png", "swings_gap_strain.png"});
  REQUIRE(sweep(saltelli.path(), "[design]\nkind = \"saltelli\"\npoints = 4\n" + two_samples).status == 0);
  check_pictures(saltelli.path() / "out" / "charts", {"sobol_indices_gap_strain.png", "swings_gap_strain.png"});
}
