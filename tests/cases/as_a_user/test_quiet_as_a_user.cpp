// What --quiet may not swallow, what a full disk is answered, and what is found before the work rather than after
// it.
#include "tests/cases/as_a_user/study_runs.h"

#include <catch2/catch.hpp>

#include <unistd.h>
#include <cstdlib>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

namespace {

// A tube whose plate, of a known metal, yields under its load.
std::string failing_tube() { return replaced(coarse_tube(6, "[1, 2, 5, 6]"), "100 N", "9000 N"); }

// Every row leaves too little plate for its holes.
const std::string hopeless_study =
    "case = \"tube.toml\"\n[[vary]]\nkey = \"plate.length\"\nvalues = [\"20 mm\", \"21 mm\"]\n";

}  // namespace

TEST_CASE("a quiet analysis says on stderr what fails", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", failing_tube());
  const Run run = run_program({"analyse", "tube.toml", "--no-pictures", "--quiet"}, scratch.path());
  CHECK(run.out.empty());
  CHECK_THAT(run.err, Catch::Contains("tube.toml: FAILS: "));
}

TEST_CASE("a quiet comparison says on stderr which construct fails", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", failing_tube());
  write_file(scratch.path() / "other.toml",
             "base = \"tube.toml\"\nname = \"Other\"\n[plate]\nthickness = \"3.5 mm\"\n");
  const Run run = run_program({"compare", "tube.toml", "other.toml", "--no-pictures", "--quiet"}, scratch.path());
  CHECK(run.out.empty());
  CHECK_THAT(run.err, Catch::Contains("tube.toml: FAILS: "));
}

TEST_CASE("a sweep in which every row failed says so first, also when quiet, and by its status",
          "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", coarse_tube(6, "[1, 2, 5, 6]"));
  write_file(scratch.path() / "study.toml", hopeless_study);
  const Run loud = run_program({"sweep", "study.toml", "--no-pictures"}, scratch.path());
  CHECK(loud.status == 1);
  CHECK_THAT(loud.out, Catch::StartsWith("NO RESULT: all 2 rows failed, the first because: "));
  const Run quiet = run_program({"sweep", "study.toml", "--no-pictures", "--quiet"}, scratch.path());
  CHECK(quiet.status == 1);
  CHECK(quiet.out.empty());
  CHECK_THAT(quiet.err, Catch::StartsWith("study.toml: NO RESULT: all 2 rows failed, the first because: "));
}

TEST_CASE("a study's folder runs again as it stands, and is known as the same study", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  fs::create_directories(scratch.path() / "cases");
  write_file(scratch.path() / "cases" / "tube.toml", coarse_tube(6, "[1, 2, 5, 6]"));
  write_file(scratch.path() / "loads.toml",
             "# why: a note\n\"case\" = 'cases/tube.toml'  # the bench's\n[[vary]]\nkey = \"load[0].axial\"\n"
             "values = [\"100 N\", \"200 N\"]\n");
  REQUIRE(run_program({"sweep", "loads.toml", "--no-pictures", "--out", "out"}, scratch.path()).status == 0);
  const std::string study = read_file(scratch.path() / "out" / "study.toml");
  CHECK_THAT(study, Catch::StartsWith("# why: a note\n"));
  CHECK_THAT(study, Catch::Contains("  # the bench's\n"));
  const Run again = run_program({"sweep", "out/study.toml", "--no-pictures", "--out", "again"}, scratch.path());
  INFO(again.err);
  CHECK(again.status == 0);
  CHECK(contents(scratch.path() / "again") == contents(scratch.path() / "out"));
  CHECK(run_program({"sweep", "out/study.toml", "--no-pictures", "--out", "out"}, scratch.path()).status == 0);
}

TEST_CASE("what is printed to a full disk is an error, whatever was worked out", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", coarse_tube(6, "[1, 2, 5, 6]"));
  const std::string program = "cd '" + scratch.path().string() + "' && '" GAPSTRAIN_PROGRAM "' ";
  const auto status = [&](const std::string& arguments) {
    return WEXITSTATUS(std::system((program + arguments + " 2> err").c_str()));
  };
  CHECK(status("analyse tube.toml --no-pictures > /dev/full") == 2);
  CHECK_THAT(read_file(scratch.path() / "err"),
             Catch::Contains("what is printed cannot be written: No space left"));
  CHECK(status("analyse nowhere.toml > /dev/full") == 2);
  const int standing = status("analyse tube.toml --no-pictures > /dev/null");
  CHECK(status("analyse tube.toml --no-pictures 2> /dev/full > /dev/null") == standing);
  CHECK(standing < 2);
  CHECK(status("analyse nowhere.toml 2> /dev/full") == 2);
  CHECK(status("analyse nowhere.toml 2>&-") == 2);
}
