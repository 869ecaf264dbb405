// What the build writes of the sources' commit, on checkouts of the test's own.
#include "cases/version.h"
#include "tests/cases/as_a_user/run_program.h"

#include <catch2/catch.hpp>

#include <cstdlib>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

namespace {

// In a shell, in that folder.
int shell(const fs::path& folder, const std::string& command) {
  return std::system(("cd '" + folder.string() + "' && { " + command + "; } >/dev/null 2>&1").c_str());
}

// Without it the tests of commits fail: what is not tested must not look tested.
void require_git() {
  INFO("git has to be there: bash cases/install_packages.sh");
  REQUIRE(shell("/", "git --version") == 0);
}

// Sources with the files that tell them from others.
void make_sources(const fs::path& folder) {
  fs::create_directories(folder / "cases");
  write_file(folder / "CMakeLists.txt", "");
  fs::copy(VERSION_TEMPLATE, folder / "cases" / "version.cpp.in");
}

const std::string commit_all =
    "git init && git add . && git -c user.name=t -c user.email=t@localhost commit --date=2026-01-31T12:00:00Z -m "
    "t";

std::string version_of(const fs::path& sources, const fs::path& result) {
  const std::string command = std::string("'" CMAKE "' -DVERSION=1.2.3 '-DSOURCES=") + sources.string() +
                              "' -DTEMPLATE=" VERSION_TEMPLATE " '-DRESULT=" + result.string() +
                              "' -P " VERSION_SCRIPT;
  REQUIRE(shell(sources, command) == 0);
  return read_file(result);
}

// What `function` answers in the written file.
std::string answer(const std::string& text, const std::string& function) {
  const auto start = text.find('"', text.find(function + "()")) + 1;
  return text.substr(start, text.find('"', start) - start);
}

}  // namespace

TEST_CASE("sources outside a checkout, or unpacked in another's, have no commit", "[cases][version]") {
  const ScratchFolder scratch;
  const auto sources = scratch.path() / "sources", result = scratch.path() / "version.cpp";
  make_sources(sources);
  const std::string text = version_of(sources, result);
  CHECK(answer(text, "version") == "1.2.3");
  CHECK(answer(text, "commit") == "unknown");
  CHECK(answer(text, "commit_date").empty());
  require_git();
  write_file(scratch.path() / "other", "");
  REQUIRE(shell(scratch.path(),
                "git init && git add other && git -c user.name=t -c user.email=t@localhost commit -m t") == 0);
  CHECK(answer(version_of(sources, result), "commit") == "unknown");
}

TEST_CASE("a checkout has its commit, and says when files differ from it", "[cases][version]") {
  require_git();
  const ScratchFolder scratch;
  const auto sources = scratch.path() / "sources", result = scratch.path() / "version.cpp";
  make_sources(sources);
  REQUIRE(shell(sources, commit_all) == 0);
  const std::string commit = answer(version_of(sources, result), "commit");
  CHECK(commit.size() == 12);
  CHECK(commit.find_first_not_of("0123456789abcdef") == std::string::npos);
  CHECK(answer(read_file(result), "commit_date").size() == 10);
  const auto written = fs::last_write_time(result);
  version_of(sources, result);
  CHECK(fs::last_write_time(result) == written);  // so that nothing is built again
  write_file(sources / "new", "not part of it");
  CHECK(answer(version_of(sources, result), "commit") == commit);
  write_file(sources / "CMakeLists.txt", "# changed");
  CHECK(answer(version_of(sources, result), "commit") == commit + "-modified");
}

TEST_CASE("the program names version and commit in one line", "[cases][version]") {
  using namespace gapstrain::cases;
  CHECK(program_and_version() == std::string("gapstrain ") + version() + " (commit " + commit() + ")");
  CHECK_FALSE(std::string(commit()).empty());
}
