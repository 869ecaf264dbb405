#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

template <class Spoil>
void check_bone_error(const std::string& where, const std::string& words, Spoil spoil) {
  Construct construct = sound_construct();
  spoil(construct.bone);
  check_finds_only_error(construct, where, words);
}

}  // namespace

TEST_CASE("every size of a bone must be above zero", "[models][parts]") {
  check_bone_error("bone.length", "-3 mm", [](Bone& bone) { bone.length = -3.0 * mm; });
  check_bone_error("bone.length", "nan", [](Bone& bone) { bone.length = not_a_number * mm; });
  check_bone_error("bone.station[1].width_mediolateral", "above 0",
                   [](Bone& bone) { bone.stations[1].width_mediolateral = 0.0 * mm; });
  check_bone_error("bone.station[0].width_craniocaudal", "-1 mm",
                   [](Bone& bone) { bone.stations[0].width_craniocaudal = -1.0 * mm; });
  check_bone_error("bone.station[2].cortex", "above 0", [](Bone& bone) { bone.stations[2].cortex = 0.0 * mm; });
  check_bone_error("bone.station[2].bow_lateral", "nan",
                   [](Bone& bone) { bone.stations[2].bow_lateral = not_a_number * mm; });
  check_bone_error("bone.station[1].bow_cranial", "nan",
                   [](Bone& bone) { bone.stations[1].bow_cranial = not_a_number * mm; });
  check_bone_error("bone.station[1].position", "nan",
                   [](Bone& bone) { bone.stations[1].position = not_a_number * mm; });
}

TEST_CASE("a bone needs stations in order and on the bone", "[models][parts]") {
  check_bone_error("bone.station", "no station", [](Bone& bone) { bone.stations.clear(); });
  check_bone_error("bone.station[2].position", "170 mm",
                   [](Bone& bone) { bone.stations[2].position = 170.0 * mm; });
  check_bone_error("bone.station[0].position", "-2 mm", [](Bone& bone) { bone.stations[0].position = -2.0 * mm; });
  check_bone_error("bone.station[1].position", "proximal to distal",
                   [](Bone& bone) { bone.stations[1].position = 19.0 * mm; });
  check_bone_error("bone.station[1].position", "not beyond",
                   [](Bone& bone) { bone.stations[1].position = 20.0 * mm; });
}

TEST_CASE("a cortex must leave a canal", "[models][parts]") {
  check_bone_error("bone.station[0].cortex", "leaves no canal",
                   [](Bone& bone) { bone.stations[0].cortex = 6.1 * mm; });
  // 20 by 8 mm is rounded at its sharp sides with 1.6 mm.
  check_bone_error("bone.station[1].cortex", "radius 1.6 mm",
                   [](Bone& bone) { bone.stations[1] = station(90.0, 20.0, 8.0, 1.7); });
}

TEST_CASE("a section that is too thick between sound stations is found", "[models][parts]") {
  // From round to flat the radius of the sharp sides, narrow^2 / 2 wide, falls faster than the cortex: half-way it
  // is 12^2/32 = 4.5 mm and the cortex 4.65 mm. (So thick a wall at a station also gives a warning of its own.)
  Construct construct = sound_construct();
  construct.bone.stations = {station(0.0, 16.0, 16.0, 7.4), station(163.0, 16.0, 8.0, 1.9)};
  const auto problems = check(construct);
  REQUIRE(problems.size() == 2);
  CHECK(problems[0].severity == Severity::error);
  CHECK(problems[0].where == "bone.station");
  CHECK_THAT(problems[0].message, Catch::Matchers::Contains("Between its stations"));
  CHECK(problems[1].severity == Severity::warning);
}

TEST_CASE("a bow that folds the bone is refused", "[models][parts]") {
  check_bone_error("bone.station", "too sharply", [](Bone& bone) {
    bone.stations.insert(bone.stations.begin() + 2, station(93.0, 13.1, 11.7, 2.3, 0.4, 9.0));
  });
}

TEST_CASE("a cortex outside shell theory's range is warned of", "[models][parts]") {
  Construct construct = sound_construct();
  construct.bone.stations[2].cortex = 2.9 * mm;  // mean radius (13.45 - 2.9)/2 = 5.27 mm, 1.8 walls
  check_finds_only_warning(construct, "bone.station[2].cortex", "1.82 times");
  construct.bone.stations[2].cortex = 0.6 * mm;
  check_finds_only_warning(construct, "bone.station[2].cortex", "below 5 %");
}
