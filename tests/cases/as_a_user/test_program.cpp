#include "cases/version.h"
#include "tests/cases/as_a_user/run_program.h"

#include <catch2/catch.hpp>

using gapstrain::tests::run_program;
using gapstrain::tests::ScratchFolder;
using gapstrain::tests::write_file;

namespace {

const std::string minimal_case = GAPSTRAIN_EXAMPLES "/minimal.toml";

gapstrain::tests::Run run(const std::vector<std::string>& arguments) {
  const ScratchFolder scratch;
  auto result = run_program(arguments, scratch.path());
  CHECK(std::filesystem::is_empty(scratch.path()));
  return result;
}

}  // namespace

TEST_CASE("help is there at every level, on stdout, with status 0", "[cases][as-a-user]") {
  for (const auto& arguments : std::vector<std::vector<std::string>>{
           {"--help"}, {"analyse", "--help"}, {"compare", "--help"}, {"keys", "--help"}}) {
    const auto result = run(arguments);
    CHECK(result.status == 0);
    CHECK(result.out.find("Usage: gapstrain") != std::string::npos);
    CHECK(result.err.empty());
  }
  CHECK(run({"--help"}).out.find("not a medical device") != std::string::npos);
  CHECK(run({"analyse", "--help"}).out.find("--no-pictures") != std::string::npos);
}

TEST_CASE("the version is the build's", "[cases][as-a-user]") {
  const auto result = run({"--version"});
  CHECK(result.status == 0);
  CHECK(result.out == gapstrain::cases::program_and_version() + "\n");
}

TEST_CASE("keys prints the documentation of all three files", "[cases][as-a-user]") {
  CHECK(run({"keys"}).out.find("[[bone.station]]") != std::string::npos);
  CHECK(run({"keys", "--study"}).out.find("[[vary]]") != std::string::npos);
  CHECK(run({"keys", "--study", "--findings"}).status == 2);
  CHECK(run({"keys", "--findings"}).out.find("loads[].gap.axial_strain.min") != std::string::npos);
}

TEST_CASE("a bad command line is told what is missing, with status 2", "[cases][as-a-user]") {
  CHECK(run({}).status == 2);
  CHECK(run({"analyse"}).status == 2);
  CHECK(run({"analyse"}).err.find("case is required") != std::string::npos);
  CHECK(run({"analyse", minimal_case, "--outt", "x"}).status == 2);
  CHECK(run({"analyse", minimal_case, "more"}).status == 2);
  CHECK(run({"analyse", minimal_case, "--out"}).status == 2);
  const auto misspelt = run({"analyze", minimal_case});
  CHECK(misspelt.status == 2);
  CHECK(misspelt.err.find("Did you mean \"gapstrain analyse\"?") != std::string::npos);
}

TEST_CASE("a case file that is none is told apart, with status 2", "[cases][as-a-user]") {
  const ScratchFolder cases;
  const auto answer = [&](const std::filesystem::path& path) {
    const auto result = run({"analyse", path.string()});
    CHECK(result.status == 2);
    CHECK(result.out.empty());
    return result.err;
  };
  CHECK(answer(cases.path() / "absent.toml").find("absent.toml:1:1: there is no such file") != std::string::npos);
  CHECK(answer(cases.path()).find("no ordinary file") != std::string::npos);
  CHECK(answer("/dev/null").find("no ordinary file") != std::string::npos);
  write_file(cases.path() / "empty.toml", "");
  CHECK(answer(cases.path() / "empty.toml").find("bone: missing; add [bone]") != std::string::npos);
  write_file(cases.path() / "bytes.toml", std::string("\xff\xfe\0\x01", 4));
  CHECK(answer(cases.path() / "bytes.toml").find("this is no TOML") != std::string::npos);
  write_file(cases.path() / "large.toml", std::string(2U << 20U, '#'));
  CHECK(answer(cases.path() / "large.toml").find("larger than 1 MB") != std::string::npos);
  write_file(cases.path() / "deep.toml", "name = " + std::string(100000, '['));
  CHECK(answer(cases.path() / "deep.toml").find("brackets in brackets, more than 16 deep") != std::string::npos);
}

TEST_CASE("a bad output folder is refused before the work, with status 2", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "thesis.txt", "years of work");
  const auto foreign = run_program({"analyse", minimal_case, "--out", "."}, scratch.path());
  CHECK(foreign.status == 2);
  CHECK(foreign.err.find("was not written by gapstrain") != std::string::npos);
  const auto file = run_program({"analyse", minimal_case, "--out", "thesis.txt"}, scratch.path());
  CHECK(file.status == 2);
  CHECK(file.err.find("is not a folder") != std::string::npos);
  CHECK(gapstrain::tests::read_file(scratch.path() / "thesis.txt") == "years of work");
  CHECK(std::distance(std::filesystem::directory_iterator(scratch.path()), {}) == 1);
}
