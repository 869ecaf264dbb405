// Studies that are interrupted or started wrongly, and their parts joined: what the user is told, and what is
// left.
#include "tests/cases/as_a_user/small_disk.h"
#include "tests/cases/as_a_user/study_runs.h"

#include <catch2/catch.hpp>

#include <csignal>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

namespace {

// A folder with tube.toml and study.toml of a few rows or of many that take a while.
class StudyToRun {
 public:
  explicit StudyToRun(int rows) {
    write_file(path() / "tube.toml", coarse_tube(6, "[1, 2, 5, 6]"));
    write_study(rows);
  }
  void write_study(int rows) const {
    write_file(
        path() / "study.toml",
        "case = \"tube.toml\"\n\n[[vary]]\nkey = \"load[0].axial\"\nfrom = \"10 N\"\nto = \"200 N\"\nsteps = " +
            std::to_string(rows) + "\n");
  }
  const fs::path& path() const { return scratch_.path(); }

  static std::vector<std::string> arguments(const std::string& out, std::vector<std::string> rest = {}) {
    rest.insert(rest.begin(), {"sweep", "study.toml", "--no-pictures", "--quiet", "--threads", "1", "--out", out});
    return rest;
  }
  Run run(const std::string& out, const std::vector<std::string>& rest = {}) const {
    return run_program(arguments(out, rest), path());
  }

 private:
  ScratchFolder scratch_;
};

// Interrupts the study once it has written so many bytes of its rows into `out`.
Run interrupted_after(std::size_t bytes, const std::vector<std::string>& arguments, const fs::path& directory,
                      const fs::path& out, int signal) {
  const RowHold hold{bytes, directory / "release"};
  Started study(arguments, directory, hold);
  REQUIRE(study.wait_for_hold(out));
  study.send(signal);
  write_file(hold.release, "");  // without the signal it would now go on to its end
  const Run end = study.wait();
  fs::remove(hold.release);
  return end;
}

void refuses(const Run& run, const std::string& message) {
  CHECK(run.status == 2);
  CHECK_THAT(run.err, Catch::Contains(message));
  CHECK(run.out.empty());
}

}  // namespace

TEST_CASE("an interrupted sweep says that it goes on, and does", "[cases][as-a-user]") {
  const StudyToRun study(120);
  const fs::path out = study.path() / "out";
  std::size_t before = 0;
  for (const int signal : {SIGINT, SIGTERM}) {
    const Run interrupted =
        interrupted_after(before + 2'000, StudyToRun::arguments("out"), study.path(), out, signal);
    CHECK(interrupted.status == 3);
    CHECK(interrupted.err == "interrupted; the same command goes on where it stopped, in out\n");
    CHECK_FALSE(fs::exists(out / "rows.csv"));
    CHECK(read_file(out / "rows.csv.part").back() == '\n');
    before = fs::file_size(out / "rows.csv.part");
  }
  const std::string left = read_file(out / "rows.csv.part");
  CHECK(study.run("out").status == 0);
  const std::string rows = read_file(out / "rows.csv");
  CHECK(rows.starts_with(left));
  CHECK(data_rows(out / "rows.csv") == 120);
  CHECK(study.run("once").status == 0);
  CHECK(contents(out) == contents(study.path() / "once"));
}

TEST_CASE("interrupted layouts say that they go on, and do", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml",
             coarse_tube(10, "[1, 3, 8, 10]") + "\n[layouts]\nleast_per_fragment = 1\n");
  const std::vector<std::string> layouts{"layouts",   "tube.toml", "--no-pictures", "--quiet", "--out", "out",
                                         "--threads", "1",         "--part",        "1/2"};
  const Run interrupted = interrupted_after(2'000, layouts, scratch.path(), scratch.path() / "out", SIGINT);
  CHECK(interrupted.status == 3);
  CHECK(interrupted.err == "interrupted; the same command goes on where it stopped, in out\n");
  CHECK(run_program(layouts, scratch.path()).status == 0);
  CHECK(data_rows(scratch.path() / "out" / "rows.csv") == (31 * 31 + 1) / 2);
}

TEST_CASE("a folder that cannot be made is refused, and nothing is left", "[cases][as-a-user]") {
  const StudyToRun study(3);
  write_file(study.path() / "file", "");
  const auto before = contents(study.path());
  refuses(study.run("file/out"),
          "cannot be made because " + (study.path() / "file").string() + " is not a folder");
  refuses(study.run("file"), "is not a folder");
  refuses(run_program({"layouts", "tube.toml", "--out", "file/out"}, study.path()), "is not a folder");
  refuses(study.run("out", {"--part", "4/3"}), "parts are counted from 1 to 3");
  CHECK(contents(study.path()) == before);
}

TEST_CASE("a folder of another study, or of something else, is refused and stays as it is", "[cases][as-a-user]") {
  const StudyToRun study(3);
  REQUIRE(study.run("out").status == 0);
  fs::create_directory(study.path() / "thesis");
  write_file(study.path() / "thesis" / "thesis.txt", "years of work");
  study.write_study(4);
  const auto before = contents(study.path());
  refuses(study.run("out"), (study.path() / "out").string() + " holds another study");
  refuses(study.run("thesis"), "holds thesis.txt, and no study of gapstrain");
  refuses(run_program({"layouts", "tube.toml", "--out", "out"}, study.path()), "holds another study");
  CHECK(contents(study.path()) == before);
}

TEST_CASE("a study that is complete is not worked out again", "[cases][as-a-user]") {
  const StudyToRun study(3);
  REQUIRE(study.run("out").status == 0);
  const auto before = contents(study.path());
  const auto written = fs::last_write_time(study.path() / "out" / "rows.csv");
  CHECK(study.run("out").status == 0);
  CHECK(contents(study.path()) == before);
  CHECK(fs::last_write_time(study.path() / "out" / "rows.csv") == written);
}

TEST_CASE("a second run in the same folder is refused while the first is at work", "[cases][as-a-user]") {
  const StudyToRun study(40);
  Started first(StudyToRun::arguments("out"), study.path(), RowHold{2'000, study.path() / "never"});
  REQUIRE(first.wait_for_hold(study.path() / "out"));
  refuses(study.run("out"), "another run");
  CHECK(first.is_running());  // it was at work all the while
}

TEST_CASE("a full disk is said, and the study goes on once there is room", "[cases][as-a-user]") {
  const StudyToRun study(40);
  {
    const SmallDisk disk(15'000);  // room for the first block of rows, not for all
    refuses(study.run("out"), "room on the disk");
  }
  const std::string left = read_file(study.path() / "out" / "rows.csv.part");
  CHECK(left.size() > 2'000);
  CHECK(left.size() <= 15'000);
  CHECK(left.back() == '\n');
  CHECK(study.run("out").status == 0);
  CHECK(read_file(study.path() / "out" / "rows.csv").starts_with(left));
  CHECK(data_rows(study.path() / "out" / "rows.csv") == 40);
}

TEST_CASE("parts are merged only when all are there, once each and of one study", "[cases][as-a-user]") {
  const StudyToRun study(3);
  for (const std::string part : {"1", "2", "3"}) {
    const Run made = study.run(part, {"--part", part + "/3"});
    CHECK(made.status == 0);
    CHECK_FALSE(fs::exists(study.path() / part / "summary.txt"));
  }
  refuses(study.run("1", {"--part", "2/3"}), "holds part 1/3 of this study, not part 2/3");
  study.write_study(4);
  REQUIRE(study.run("other", {"--part", "4/4"}).status == 0);
  fs::create_directory(study.path() / "empty");
  fs::copy(study.path() / "3", study.path() / "broken");
  fs::rename(study.path() / "broken" / "rows.csv", study.path() / "broken" / "rows.csv.part");
  fs::copy(study.path() / "2", study.path() / "longer");
  write_file(study.path() / "longer" / "rows.csv", read_file(study.path() / "2" / "rows.csv") + "1,ok\n");

  const auto merge = [&](std::vector<std::string> parts) {
    parts.insert(parts.begin(), "merge");
    parts.insert(parts.end(), {"--out", "merged"});
    return run_program(parts, study.path());
  };
  refuses(merge({"1", "3"}), "part 2/3 is missing");
  refuses(merge({"1", "2", "3", "2"}), "part 2/3 is there twice, in 2 and in 2");
  refuses(merge({"1", "2", "other"}), "the folders 1 and other hold parts of different studies");
  refuses(merge({"1", "2", "empty"}), "the folder empty holds no study");
  refuses(merge({"1", "2", "nowhere"}), "the folder nowhere holds no study");
  refuses(merge({"1", "2", "broken"}), "part 3/3 in broken is not complete");
  CHECK_FALSE(fs::exists(study.path() / "merged"));
  refuses(merge({"1", "longer", "3"}), "longer/rows.csv does not hold the 1 rows of part 2/3");
  refuses(run_program({"merge", "1", "2", "3"}, study.path()), "--out is required");

  const Run merged = merge({"3", "2", "1"});  // goes on in what the wrong part left
  CHECK(merged.status == 0);
  CHECK_THAT(merged.out, Catch::StartsWith("Merged into merged."));
  std::string rows;
  for (const std::string part : {"1", "2", "3"}) {
    const auto lines = lines_of(read_file(study.path() / part / "rows.csv"));
    REQUIRE(lines.size() == 2);
    rows += (rows.empty() ? lines[0] + '\n' : "") + lines[1] + '\n';
  }
  CHECK(read_file(study.path() / "merged" / "rows.csv") == rows);
}
