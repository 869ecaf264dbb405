#include "cases/files/output_file.h"
#include "cases/files/output_folder.h"
#include "tests/cases/as_a_user/run_program.h"

#include <fmt/format.h>
#include <unistd.h>
#include <catch2/catch.hpp>

namespace fs = std::filesystem;
using namespace gapstrain::cases;
using gapstrain::tests::read_file;
using gapstrain::tests::ScratchFolder;
using gapstrain::tests::write_file;

namespace {

// As an analysis leaves it.
void publish_own(const fs::path& target, const std::string& table) {
  OutputFolder folder(target);
  folder.write("table.csv", table);
  folder.write("findings.json", R"({"program": {"name": "gapstrain"}, "files": ["findings.json", "table.csv"]})");
  folder.publish();
}

}  // namespace

TEST_CASE("an output folder appears complete or not at all", "[cases][outputs]") {
  const ScratchFolder scratch;
  const auto target = scratch.path() / "out";
  {
    OutputFolder folder(target);
    folder.write("sub/table.csv", "1,2");
    CHECK_FALSE(fs::exists(target));
  }
  CHECK(fs::is_empty(scratch.path()));
  {
    OutputFolder folder(target);
    folder.write("sub/table.csv", "1,2");
    CHECK(folder.files() == std::vector<std::string>{"sub/table.csv"});
    folder.publish();
  }
  CHECK(read_file(target / "sub/table.csv") == "1,2");
  CHECK(std::distance(fs::directory_iterator(scratch.path()), fs::directory_iterator()) == 1);
}

TEST_CASE("what a killed run left is cleared, and what a living one is writing is not", "[cases][outputs]") {
  const ScratchFolder scratch;
  const auto target = scratch.path() / "out";
  const auto dead = scratch.path() / ".out.unfinished-999999999";  // above any process number
  const auto alive = scratch.path() / fmt::format(".out.unfinished-{}", getppid());
  const auto another = scratch.path() / ".other.unfinished-999999999";
  for (const auto& folder : {dead, alive, another}) fs::create_directories(folder / "tables");
  publish_own(target, "new");
  CHECK_FALSE(fs::exists(dead));
  CHECK(fs::exists(alive));
  CHECK(fs::exists(another));
}

TEST_CASE("a folder that a killed run had moved away comes back, unless there is a newer one",
          "[cases][outputs]") {
  const ScratchFolder scratch;
  const auto target = scratch.path() / "out", moved = scratch.path() / ".out.unfinished-999999999.old";
  publish_own(target, "old");
  fs::rename(target, moved);
  { OutputFolder(target).workspace(); }
  CHECK(read_file(target / "table.csv") == "old");
  fs::create_directories(moved);
  { OutputFolder(target).workspace(); }
  CHECK_FALSE(fs::exists(moved));
  CHECK(read_file(target / "table.csv") == "old");
}

TEST_CASE("a file that a killed run was writing is cleared by the next", "[cases][outputs]") {
  const ScratchFolder scratch;
  const auto half = scratch.path() / "case.toml.999999999.part";
  write_file(half, "na");
  write_file_whole(scratch.path() / "case.toml", "name = \"x\"\n");
  CHECK_FALSE(fs::exists(half));
}

TEST_CASE("a folder of an earlier analysis is replaced as a whole", "[cases][outputs]") {
  const ScratchFolder scratch;
  const auto target = scratch.path() / "out";
  publish_own(target, "old");
  publish_own(target, "new");
  CHECK(read_file(target / "table.csv") == "new");
  CHECK(std::distance(fs::directory_iterator(scratch.path()), fs::directory_iterator()) == 1);
}

TEST_CASE("an earlier analysis survives one that breaks off", "[cases][outputs]") {
  const ScratchFolder scratch;
  const auto target = scratch.path() / "out";
  publish_own(target, "old");
  { OutputFolder(target).write("table.csv", "half"); }
  CHECK(read_file(target / "table.csv") == "old");
}

TEST_CASE("nobody else's files are ever replaced", "[cases][outputs]") {
  const ScratchFolder scratch;
  const auto foreign = scratch.path() / "foreign";
  fs::create_directory(foreign);
  write_file(foreign / "thesis.txt", "years of work");
  CHECK_THROWS_AS(OutputFolder(foreign), OutputError);

  const auto own = scratch.path() / "own";
  publish_own(own, "old");
  write_file(own / "notes.txt", "the surgeon's");
  CHECK_THROWS_WITH(OutputFolder(own), Catch::Contains("notes.txt"));
  CHECK(read_file(own / "notes.txt") == "the surgeon's");

  const auto claims = scratch.path() / "claims";
  fs::create_directory(claims);
  write_file(claims / "findings.json", R"({"program": {"name": "another"}, "files": ["findings.json"]})");
  CHECK_THROWS_AS(OutputFolder(claims), OutputError);
}

TEST_CASE("a file that turns up during the work stops the replacement", "[cases][outputs]") {
  const ScratchFolder scratch;
  const auto target = scratch.path() / "out";
  OutputFolder folder(target);
  folder.write("table.csv", "mine");
  fs::create_directory(target);
  write_file(target / "thesis.txt", "years of work");
  CHECK_THROWS_AS(folder.publish(), OutputError);
  CHECK(read_file(target / "thesis.txt") == "years of work");
}

TEST_CASE("an impossible output folder is refused before any work", "[cases][outputs]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "file", "x");
  CHECK_THROWS_AS(OutputFolder(scratch.path() / "file"), OutputError);
  CHECK_THROWS_AS(OutputFolder(scratch.path() / "file" / "inside"), OutputError);
  CHECK_THROWS_AS(OutputFolder("/proc/gapstrain/out").workspace(), OutputError);
  CHECK_THROWS_AS(OutputFolder("/"), OutputError);
  CHECK_THROWS_AS(OutputFolder(""), OutputError);
}

TEST_CASE("an empty folder, a slash at the end and missing parents are fine", "[cases][outputs]") {
  const ScratchFolder scratch;
  fs::create_directory(scratch.path() / "empty");
  CHECK_NOTHROW(OutputFolder(scratch.path() / "empty"));
  const auto deep = scratch.path() / "a" / "b" / "out/";
  publish_own(deep, "deep");
  CHECK(read_file(scratch.path() / "a/b/out/table.csv") == "deep");
}
