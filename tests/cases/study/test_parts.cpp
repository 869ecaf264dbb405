#include "cases/study/merge.h"
#include "tests/cases/as_a_user/run_program.h"
#include "tests/cases/study/toy_worker.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace fs = std::filesystem;
using namespace gapstrain::cases;
using namespace gapstrain::tests;

namespace {

constexpr std::size_t part_rows = 5'000;

fs::path folder_of(const fs::path& scratch, const Part& part) {
  return scratch / ("part-" + std::to_string(part.number) + "-of-" + std::to_string(part.of));
}

fs::path make_part(const fs::path& scratch, const Part& part) {
  Ranks alone;
  const auto out = folder_of(scratch, part);
  StudyFolder folder(out, toy_study(part_rows, part), toy_heading);
  REQUIRE(make_rows_silently(&folder, toy_work(2), alone).complete);
  return out;
}

std::vector<fs::path> make_parts(const fs::path& scratch, std::size_t of) {
  std::vector<fs::path> folders;
  for (std::size_t number = 1; number <= of; ++number) folders.push_back(make_part(scratch, {number, of}));
  return folders;
}

void merge_silently(const std::vector<fs::path>& folders, const fs::path& out) {
  Progress progress({}, true);
  merge_rows(folders, out, progress);
}

}  // namespace

TEST_CASE("a part is read as number/count, and anything else refused with what to write", "[cases][study]") {
  CHECK(parse_part("1/1") == Part{1, 1});
  CHECK(parse_part("12/128") == Part{12, 128});
  for (const std::string text :
       {"", "/", "3", "3/", "/3", "a/b", "1/2/3", "-1/2", "1 /2", "1/2 ", "1.5/2", "99999999999999999999999/2"})
    CHECK_THROWS_WITH(parse_part(text), Catch::Contains("--part 2/8"));
  for (const std::string text : {"0/3", "4/3"})
    CHECK_THROWS_WITH(parse_part(text), Catch::Contains("from 1 to 3"));
  CHECK_THROWS_AS(parse_part("0/0"), OutputError);
}

TEST_CASE("parts follow one another, cover all rows and differ by one row at most", "[cases][study]") {
  for (const std::size_t all : {0, 1, 7, 100, 1'000'000})
    for (const std::size_t of : {1, 2, 3, 7, 64}) {
      std::size_t next = 0;
      for (std::size_t number = 1; number <= of; ++number) {
        const auto range = rows_of_part({number, of}, all);
        CHECK(range.first == next);
        CHECK((range.end - range.first == all / of || range.end - range.first == all / of + 1));
        next = range.end;
      }
      CHECK(next == all);
    }
}

TEST_CASE("parts merged in any order are the undivided study, bit for bit", "[cases][study]") {
  const ScratchFolder scratch;
  for (const std::size_t of : {1, 3, 8}) {
    auto folders = make_parts(scratch.path(), of);
    std::reverse(folders.begin(), folders.end());
    const auto out = scratch.path() / ("merged-" + std::to_string(of));
    merge_silently(folders, out);
    CHECK(read_file(out / "rows.csv") == toy_file(part_rows));
    CHECK(read_run(out) == toy_study(part_rows));
    merge_silently(folders, out);  // again: nothing to do
    CHECK(StudyFolder(out, toy_study(part_rows), toy_heading).complete());
  }
}

TEST_CASE("a study with more parts than rows has empty parts, and merges", "[cases][study]") {
  const ScratchFolder scratch;
  Ranks alone;
  std::vector<fs::path> folders;
  for (std::size_t number = 1; number <= 5; ++number) {
    folders.push_back(scratch.path() / std::to_string(number));
    StudyFolder folder(folders.back(), toy_study(3, {number, 5}), toy_heading);
    CHECK(make_rows_silently(&folder, toy_work(2), alone).complete);
  }
  merge_silently(folders, scratch.path() / "merged");
  CHECK(read_file(scratch.path() / "merged/rows.csv") == toy_file(3));
}

TEST_CASE("a merge that was ended goes on", "[cases][study]") {
  const ScratchFolder scratch;
  const auto folders = make_parts(scratch.path(), 3);
  const auto out = scratch.path() / "merged";
  {
    StudyFolder begun(out, toy_study(part_rows), toy_heading);
    for (std::size_t row = 0; row < 1'800; ++row) begun.append(toy_line(row), 1);
  }
  merge_silently(folders, out);
  CHECK(read_file(out / "rows.csv") == toy_file(part_rows));
}

TEST_CASE("parts missing, there twice, not complete or of another study are refused by name", "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "merged";
  const auto folders = make_parts(scratch.path(), 3);
  CHECK_THROWS_WITH(merge_silently({}, out), Catch::Contains("no parts"));
  CHECK_THROWS_WITH(merge_silently({folders[0], folders[2]}, out), Catch::Contains("part 2/3 is missing"));
  CHECK_THROWS_WITH(merge_silently({folders[0], folders[1], folders[2], folders[1]}, out),
                    Catch::Contains("part 2/3 is there twice") && Catch::Contains(folders[1].string()));
  CHECK_THROWS_WITH(merge_silently({folders[0], make_part(scratch.path(), {2, 4})}, out),
                    Catch::Contains("different studies"));
  CHECK_THROWS_WITH(merge_silently({folders[0], scratch.path()}, out), Catch::Contains(scratch.path().string()));

  auto other = toy_study(part_rows, {3, 3});
  other.fingerprint = "beef";
  const auto foreign = scratch.path() / "foreign";
  const auto begun = scratch.path() / "begun";
  { StudyFolder(foreign, other, toy_heading); }
  { StudyFolder(begun, toy_study(part_rows, {3, 3}), toy_heading).append(toy_line(3'334), 1); }
  CHECK_THROWS_WITH(merge_silently({folders[0], folders[1], begun}, out),
                    Catch::Contains(begun.string()) && Catch::Contains("not complete"));
  fs::rename(foreign / "rows.csv.part", foreign / "rows.csv");
  CHECK_THROWS_WITH(merge_silently({folders[0], folders[1], foreign}, out), Catch::Contains("different studies"));
  CHECK_FALSE(fs::exists(out));
}

TEST_CASE("a part that lost or gained rows is not merged as complete", "[cases][study]") {
  const ScratchFolder scratch;
  const auto folders = make_parts(scratch.path(), 3);
  const auto table = folders[1] / "rows.csv";
  const std::string whole = read_file(table);
  int attempt = 0;
  for (const std::string& text : {whole + "5,5,5\n", whole.substr(0, whole.size() - 1), toy_heading + '\n',
                                  "other,heading" + whole.substr(toy_heading.size())}) {
    write_file(table, text);
    const auto out = scratch.path() / ("merged" + std::to_string(attempt++));
    CHECK_THROWS_WITH(merge_silently(folders, out), Catch::Contains(table.string()));
    CHECK_FALSE(fs::exists(out / "rows.csv"));
  }
}
