#include "tests/cases/as_a_user/run_program.h"
#include "tests/cases/study/toy_worker.h"

#include <unistd.h>
#include <catch2/catch.hpp>

#include <atomic>

namespace fs = std::filesystem;
using namespace gapstrain::cases;
using namespace gapstrain::tests;

namespace {

void make_whole(const fs::path& out, std::size_t rows) {
  Ranks alone;
  StudyFolder folder(out, toy_study(rows), toy_heading);
  REQUIRE(make_rows_silently(&folder, toy_work(2), alone).complete);
}

}  // namespace

TEST_CASE("a study's folder says what it holds before its first row, and is complete after its last",
          "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "deep" / "out/";
  Ranks alone;
  StudyFolder folder(out, toy_study(100), toy_heading);
  CHECK(folder.target() == scratch.path() / "deep" / "out");
  CHECK(read_run(folder.target()) == toy_study(100));
  CHECK_FALSE(folder.complete());
  CHECK(folder.missing().end == 100);
  CHECK(make_rows_silently(&folder, toy_work(1), alone).rows == 100);
  CHECK(folder.complete());
  folder.write("charts/summary.txt", "one hundred");
  CHECK(read_file(out / "rows.csv") == toy_file(100));
  CHECK(read_file(out / "charts/summary.txt") == "one hundred");
  CHECK(std::distance(fs::directory_iterator(out), fs::directory_iterator()) == 3);
}

TEST_CASE("a study that is complete makes no row again", "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  make_whole(out, 100);
  { StudyFolder(out, toy_study(100), toy_heading).write("summary.txt", "one hundred"); }
  const auto written = fs::last_write_time(out / "rows.csv");
  Ranks alone;
  StudyFolder again(out, toy_study(100), toy_heading);
  CHECK(again.complete());
  std::atomic<int> hired = 0;
  auto work = toy_work(2);
  work.hire = [&]() -> std::unique_ptr<Worker> {
    ++hired;
    return std::make_unique<ToyWorker>();
  };
  const auto outcome = make_rows_silently(&again, work, alone);
  CHECK(outcome.complete);
  CHECK(outcome.rows == 0);
  CHECK(hired == 0);
  CHECK(fs::last_write_time(out / "rows.csv") == written);
}

TEST_CASE("a folder of another study or another part is refused and left alone", "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  make_whole(out, 100);
  auto other = toy_study(100);
  other.fingerprint = "beef";
  CHECK_THROWS_WITH(StudyFolder(out, other, toy_heading),
                    Catch::Contains(out.string()) && Catch::Contains("another study"));
  CHECK_THROWS_WITH(StudyFolder(out, toy_study(101), toy_heading), Catch::Contains("another study"));
  CHECK_THROWS_WITH(StudyFolder(out, toy_study(100, {2, 3}), toy_heading), Catch::Contains("not part 2/3"));
  CHECK_THROWS_WITH(StudyFolder(out, toy_study(100), "another,heading"), Catch::Contains("another heading"));
  CHECK(read_file(out / "rows.csv") == toy_file(100));
  CHECK(read_run(out) == toy_study(100));
}

TEST_CASE("a folder with anything else in it is refused and left alone", "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  for (const std::string name : {"thesis.txt", "findings.json", "rows.csv", "run.json"}) {
    fs::create_directory(out);
    write_file(out / name, "{}");
    CHECK_THROWS_WITH(StudyFolder(out, toy_study(10), toy_heading), Catch::Contains(name));
    CHECK(read_file(out / name) == "{}");
    CHECK(std::distance(fs::directory_iterator(out), fs::directory_iterator()) == 1);
    fs::remove_all(out);
  }
  fs::create_directory(out);
  write_file(out / "rows.csv.part", toy_file(3));  // rows, but of what study?
  CHECK_THROWS_WITH(StudyFolder(out, toy_study(10), toy_heading), Catch::Contains("unknown study"));
}

TEST_CASE("a study ended before its first row goes on", "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  fs::create_directory(out);
  write_file(out / "rows.csv.part", "row,nu");
  write_file(out / "run.json.4711.part", "{");
  make_whole(out, 10);
  CHECK(read_file(out / "rows.csv") == toy_file(10));
}

TEST_CASE("a second run is refused while one is at work in the folder", "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  Ranks alone;
  {
    StudyFolder first(out, toy_study(50), toy_heading);
    CHECK_THROWS_WITH(StudyFolder(out, toy_study(50), toy_heading), Catch::Contains("another run"));
    first.append(toy_line(0), 1);
    CHECK_THROWS_WITH(StudyFolder(out, toy_study(50), toy_heading), Catch::Contains("another run"));
    CHECK(make_rows_silently(&first, toy_work(1), alone).rows == 49);
    CHECK_THROWS_WITH(StudyFolder(out, toy_study(50), toy_heading), Catch::Contains("another run"));
  }
  CHECK(StudyFolder(out, toy_study(50), toy_heading).complete());
  CHECK(read_file(out / "rows.csv") == toy_file(50));
}

TEST_CASE("a table of rows that somebody shortened or lengthened is not taken for complete", "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  make_whole(out, 10);
  for (const std::size_t rows : {9, 11}) {
    write_file(out / "rows.csv", toy_file(rows));
    CHECK_THROWS_WITH(StudyFolder(out, toy_study(10), toy_heading), Catch::Contains("where 10 belong"));
  }
}

TEST_CASE("a study's folder that cannot be made or written is refused", "[cases][study]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "file", "x");
  for (const fs::path& out : {scratch.path() / "file", scratch.path() / "file" / "out",
                              fs::path("/proc/gapstrain"), fs::path("/"), fs::path()})
    CHECK_THROWS_AS(StudyFolder(out, toy_study(10), toy_heading), OutputError);

  // Root may write anywhere, so as root the test is carried out as nobody.
  const bool root = geteuid() == 0;
  constexpr uid_t nobody = 65534;
  const auto out = scratch.path() / "out", inside = out / "inside";
  fs::create_directory(out);
  fs::permissions(scratch.path(), fs::perms::owner_all | fs::perms::others_exec);
  fs::permissions(out,
                  fs::perms::owner_read | fs::perms::owner_exec | fs::perms::others_read | fs::perms::others_exec);
  if (root) {
    INFO("root has to be able to become nobody here, or the tests are to be run by somebody else");
    REQUIRE(seteuid(nobody) == 0);
  }
  CHECK_THROWS_WITH(StudyFolder(out, toy_study(10), toy_heading), Catch::Contains(out.string()));
  CHECK_THROWS_WITH(StudyFolder(inside, toy_study(10), toy_heading), Catch::Contains(inside.string()));
  if (root) REQUIRE(seteuid(0) == 0);
  CHECK(fs::is_empty(out));
}
