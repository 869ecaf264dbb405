#include "tests/cases/as_a_user/run_program.h"
#include "tests/viz/picture_file.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

namespace {

// One load, on a coarse mesh.
std::string coarse(const std::string& more) {
  return read_file(fs::path(GAPSTRAIN_EXAMPLES) / "minimal.toml") +
         "\n[[load]]\nname = \"push\"\naxial = \"70 N\"\n" + more +
         "\n[mesh]\nrefinement = 0.5\nrim_elements = 24\n";
}

const std::string healing = "cycles_per_day = 1500\n[healing]\nweeks_from = 8\nweeks_to = 12\n";

// All PNG files of a folder, by name; each with something on it.
std::vector<std::string> pictures(const fs::path& folder) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder)) {
    if (entry.path().extension() != ".png") continue;
    names.push_back(entry.path().filename());
    INFO(names.back());
    const PictureFile picture = read_picture(entry.path());
    CHECK(picture.width >= 1000);
    CHECK(picture.height >= 400);
    CHECK(picture.share_not_white() > 0.02);
    CHECK(picture.share_not_white() < 0.98);
  }
  std::sort(names.begin(), names.end());
  return names;
}

}  // namespace

TEST_CASE("an analysis draws the plan, the margins and its only load", "[cases][as-a-user][pictures]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "case.toml", coarse(""));
  const Run run = run_program({"analyse", "case.toml", "--out", "out"}, scratch.path());
  INFO(run.out << run.err);
  CHECK(pictures(scratch.path() / "out" / "pictures") ==
        std::vector<std::string>{"1_push_along_plate.png", "1_push_construct.png", "1_push_hottest_hole.png",
                                 "gap_strain.png", "margins.png", "plan.png"});
  CHECK(read_file(scratch.path() / "out" / "pictures" / "plan.pdf").starts_with("%PDF"));
}

TEST_CASE("pictures come in the format and width that are asked for", "[cases][as-a-user][pictures]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "case.toml", coarse(""));
  const Run vectors = run_program({"analyse", "case.toml", "--out", "vectors", "--format", "svg"}, scratch.path());
  INFO(vectors.out << vectors.err);
  std::size_t svg = 0;
  for (const auto& entry : fs::directory_iterator(scratch.path() / "vectors" / "pictures")) {
    const std::string extension = entry.path().extension();
    CHECK((extension == ".svg" || entry.path().filename() == "plan.pdf"));
    if (extension != ".svg") continue;
    ++svg;
    CHECK(read_file(entry.path()).find("not a medical device") != std::string::npos);
  }
  CHECK(svg == 6);
  const Run small = run_program({"analyse", "case.toml", "--out", "small", "--size", "800"}, scratch.path());
  INFO(small.out << small.err);
  CHECK(read_picture(scratch.path() / "small" / "pictures" / "plan.png").width == 800);
  for (const std::vector<std::string>& wrong :
       {std::vector<std::string>{"--format", "gif"}, {"--size", "12"}, {"--size", "wide"}}) {
    std::vector<std::string> arguments{"analyse", "case.toml", "--out", "wrong"};
    arguments.insert(arguments.end(), wrong.begin(), wrong.end());
    const Run run = run_program(arguments, scratch.path());
    CHECK(run.status == 2);
    CHECK_FALSE(fs::exists(scratch.path() / "wrong"));
  }
}

TEST_CASE("an analysis of a fracture that heals draws the race and the gap's windows",
          "[cases][as-a-user][pictures]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "case.toml", coarse(healing));
  const Run run = run_program({"analyse", "case.toml", "--out", "out", "--quiet"}, scratch.path());
  INFO(run.err);
  CHECK(run.err.empty());
  const auto names = pictures(scratch.path() / "out" / "pictures");
  CHECK(names.size() == 8);
  for (const auto* name : {"race.png", "gap_windows.png"})
    CHECK(std::find(names.begin(), names.end(), name) != names.end());
}

TEST_CASE("a comparison draws each load, the margins and the races", "[cases][as-a-user][pictures]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "one.toml", coarse(healing));
  write_file(scratch.path() / "other.toml",
             "base = \"one.toml\"\nname = \"Other\"\n[[screw]]\nholes = [1, 2, 7, 8]\nsize = \"locking 3.5\"\n");
  const Run run = run_program({"compare", "one.toml", "other.toml", "--out", "out"}, scratch.path());
  INFO(run.out << run.err);
  CHECK(pictures(scratch.path() / "out") ==
        std::vector<std::string>{"1_push_gap_strain.png", "1_push_side_by_side.png", "margins.png", "race.png"});
}
