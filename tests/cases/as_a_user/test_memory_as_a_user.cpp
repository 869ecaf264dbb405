// Too little memory: said in a sentence, with status 1.
#include "tests/cases/as_a_user/study_runs.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <sys/wait.h>
#include <cstdlib>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

namespace {

// With so much address space, in kB. Ended after ten minutes: OpenBLAS tries for ever for memory that it does not
// get.
Run run_within(std::size_t kilobytes, const std::string& arguments, const fs::path& folder) {
  const std::string command =
      fmt::format("cd '{}' && ulimit -v {} && timeout --signal=KILL 600 '{}' {} > out 2> err", folder.string(),
                  kilobytes, GAPSTRAIN_PROGRAM, arguments);
  const int code = std::system(command.c_str());
  return {WIFEXITED(code) ? WEXITSTATUS(code) : -1, read_file(folder / "out"), read_file(folder / "err")};
}

}  // namespace

TEST_CASE("a case too fine for the machine is refused with what it needs, before it is meshed",
          "[cases][as-a-user]") {
  const ScratchFolder scratch;
  std::string tube = coarse_tube(6, "[1, 2, 5, 6]");
  write_file(scratch.path() / "fine.toml", tube.substr(0, tube.find("[mesh]")) + "[mesh]\nrefinement = 4\n");
  const Run run = run_within(3'000'000, "analyse fine.toml --no-pictures --out found", scratch.path());
  INFO(run.err);
  CHECK(run.status == 1);
  CHECK_THAT(run.err, Catch::Contains("too fine for this machine") && Catch::Contains("GB are free") &&
                          Catch::Contains("mesh.refinement (now 4)"));
  CHECK_FALSE(fs::exists(scratch.path() / "found"));
}

TEST_CASE("memory that gives out on the way ends the program with a sentence", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", coarse_tube(6, "[1, 2, 5, 6]"));
  // From what does not even start to what is enough: nothing between ends otherwise.
  bool has_run = false, was_refused = false;
  for (const std::size_t megabytes : {700, 800, 900, 1000, 1200, 1500, 4000}) {
    const Run run = run_within(1000 * megabytes, "analyse tube.toml --no-pictures --out found", scratch.path());
    INFO(megabytes << " MB: " << run.err);
    if (run.status == 127) continue;             // its libraries alone do not fit
    if (fs::exists(scratch.path() / "found")) {  // with a status of its own: so coarse a mesh is not to be trusted
      has_run = true;
      fs::remove_all(scratch.path() / "found");
      continue;
    }
    was_refused = true;
    CHECK(run.status == 1);
    CHECK_THAT(run.err, Catch::Contains("memory"));
  }
  CHECK(has_run);
  CHECK(was_refused);
}
