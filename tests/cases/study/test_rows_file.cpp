#include "cases/study/rows_file.h"
#include "tests/cases/as_a_user/run_program.h"
#include "tests/cases/as_a_user/small_disk.h"
#include "tests/cases/study/toy_worker.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace fs = std::filesystem;
using namespace gapstrain::cases;
using namespace gapstrain::tests;

TEST_CASE("rows torn at any byte are cut back to the last whole line and gone on from", "[cases][study]") {
  const ScratchFolder scratch;
  const auto path = scratch.path() / "rows";
  const std::string whole = toy_file(5);
  for (std::size_t length = 0; length <= whole.size(); ++length) {
    const std::string torn = whole.substr(0, length);
    write_file(path, torn);
    const auto lines = static_cast<std::size_t>(std::count(torn.begin(), torn.end(), '\n'));
    {
      RowsFile file(path, toy_heading);
      INFO(length << " bytes");
      REQUIRE(file.rows() == (lines == 0 ? 0 : lines - 1));
      for (std::size_t row = file.rows(); row < 5; ++row) file.append(toy_line(row), 1);
      REQUIRE(file.rows() == 5);
    }
    REQUIRE(read_file(path) == whole);
  }
}

TEST_CASE("a tail longer than what is read at once is found all the same", "[cases][study]") {
  const ScratchFolder scratch;
  const auto path = scratch.path() / "rows";
  const std::string rows = toy_file(20'000);
  REQUIRE(rows.size() > 2 << 20);
  write_file(path, rows + std::string(3 << 20, 'x'));
  CHECK(RowsFile(path, toy_heading).rows() == 20'000);
  CHECK(read_file(path) == rows);
}

TEST_CASE("what a loss of power leaves as null bytes is cut off, whole lines behind it too", "[cases][study]") {
  const ScratchFolder scratch;
  const auto path = scratch.path() / "rows";
  write_file(path, toy_file(3) + "3,1" + std::string(100, '\0') + "\n4,5,b\n");
  CHECK(RowsFile(path, toy_heading).rows() == 3);
  CHECK(read_file(path) == toy_file(3));
}

TEST_CASE("rows under another heading are refused and left alone", "[cases][study]") {
  const ScratchFolder scratch;
  const auto path = scratch.path() / "rows";
  for (const std::string text : {"row,other\n1,2\n", "x", "row,number,text,more\n1,2"}) {
    write_file(path, text);
    CHECK_THROWS_WITH(RowsFile(path, toy_heading), Catch::Contains("another heading"));
    CHECK(read_file(path) == text);
  }
}

TEST_CASE("one run at a time holds a file of rows, also once it has its final name", "[cases][study]") {
  const ScratchFolder scratch;
  const auto path = scratch.path() / "rows.part", whole = scratch.path() / "rows";
  {
    RowsFile first(path, toy_heading);
    CHECK_THROWS_WITH(RowsFile(path, toy_heading), Catch::Contains("another run"));
    first.append(toy_line(0), 1);
    first.finish(whole);
    CHECK_FALSE(fs::exists(path));
    CHECK_THROWS_WITH(RowsFile(whole, toy_heading), Catch::Contains("another run"));
  }
  CHECK(RowsFile(whole, toy_heading).rows() == 1);
}

TEST_CASE("a full disk leaves whole rows, and a file that goes on once there is room", "[cases][study]") {
  const ScratchFolder scratch;
  const auto path = scratch.path() / "rows";
  const std::string whole = toy_file(400);
  for (const std::size_t room : {std::size_t{17}, std::size_t{5'000}, std::size_t{5'001}, whole.size() - 1}) {
    INFO(room << " bytes");
    fs::remove(path);
    RowsFile file(path, toy_heading);
    {
      const SmallDisk disk(room);
      const auto fill = [&] {
        for (std::size_t row = file.rows(); row < 400; row += 4) {
          std::string lines;
          for (std::size_t i = 0; i < 4; ++i) lines += toy_line(row + i);
          file.append(lines, 4);
        }
      };
      CHECK_THROWS_WITH(fill(), Catch::Contains(path.string()) && Catch::Contains("room on the disk"));
      CHECK_THROWS_AS(fill(), OutputError);  // still no room, and still whole
    }
    CHECK(read_file(path) == toy_file(file.rows()));
    CHECK(file.rows() < 400);
    for (std::size_t row = file.rows(); row < 400; ++row) file.append(toy_line(row), 1);
    CHECK(read_file(path) == whole);
  }
}

TEST_CASE("a file of rows that cannot be made is refused by name", "[cases][study]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "file", "x");
  const auto path = scratch.path() / "file" / "rows";
  CHECK_THROWS_WITH(RowsFile(path, toy_heading), Catch::Contains(path.string()));
}
