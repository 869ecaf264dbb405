#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

template <class Spoil>
void check_plate_error(const std::string& where, const std::string& words, Spoil spoil) {
  Construct construct = sound_construct();
  spoil(only(construct.plates));
  check_finds_only_error(construct, where, words);
}

}  // namespace

TEST_CASE("every size of a plate must be above zero", "[models][parts]") {
  check_plate_error("plate.length", "0 mm", [](Plate& plate) { plate.length = 0.0 * mm; });
  check_plate_error("plate.standoff", "-0.5 mm", [](Plate& plate) { plate.standoff = -0.5 * mm; });
  check_plate_error("plate.proximal_end", "nan", [](Plate& plate) { plate.proximal_end = not_a_number * mm; });
  check_plate_error("plate.section[1].width", "above 0",
                    [](Plate& plate) { plate.sections[1].width = -8.0 * mm; });
  check_plate_error("plate.section[0].thickness", "above 0",
                    [](Plate& plate) { plate.sections[0].thickness = not_a_number * mm; });
  check_plate_error("plate.hole[2].diameter", "above 0", [](Plate& plate) { plate.holes[2].diameter = 0.0 * mm; });
  check_plate_error("plate.hole[7].position", "nan",
                    [](Plate& plate) { plate.holes[7].position = not_a_number * mm; });
}

TEST_CASE("a plate needs sections in order and on the plate", "[models][parts]") {
  check_plate_error("plate.section", "no width and thickness", [](Plate& plate) { plate.sections.clear(); });
  check_plate_error("plate.section[1].position", "110 mm",
                    [](Plate& plate) { plate.sections[1].position = 110.0 * mm; });
  check_plate_error("plate.section[1].position", "not beyond",
                    [](Plate& plate) { plate.sections[1].position = 5.0 * mm; });
}

TEST_CASE("holes stay apart from one another, from the ends and within the width", "[models][parts]") {
  // Hole 5 is empty in the sound construct. It lies at 56.2 mm; its neighbours at 43.9 and 68.5 mm.
  check_plate_error("plate.hole[4].diameter", "9 mm across",
                    [](Plate& plate) { plate.holes[4].diameter = plate.holes[4].slot_length = 9.0 * mm; });
  check_plate_error("plate.hole[4].position", "overlap by 0.8 mm",
                    [](Plate& plate) { plate.holes[4].position = 46.2 * mm; });
  check_plate_error("plate.hole[4].position", "only 0.1 mm apart",
                    [](Plate& plate) { plate.holes[4].position = 47.1 * mm; });
  check_plate_error("plate.hole[4].position", "from the plate's proximal end",
                    [](Plate& plate) { plate.holes[4].position = 43.9 * mm; });
  check_plate_error("plate.hole[7].position", "cuts its end", [](Plate& plate) { plate.length = 94.0 * mm; });
  check_plate_error("plate.hole[0].position", "cuts its end",
                    [](Plate& plate) { plate.holes[0].position = 1.6 * mm; });
  check_plate_error("plate.hole[5].position", "overlap by 0.55 mm", [](Plate& plate) {
    plate.holes[4] = {57.2 * mm, HoleShape::slot, 3.1 * mm, 20.6 * mm};
  });
}

TEST_CASE("a slot is not shorter than wide, and a round hole is round", "[models][parts]") {
  check_plate_error("plate.hole[4].slot_length", "must not be shorter", [](Plate& plate) {
    plate.holes[4].shape = HoleShape::slot;
    plate.holes[4].slot_length = 2.9 * mm;
  });
  check_plate_error("plate.hole[4].slot_length", "at a round hole",
                    [](Plate& plate) { plate.holes[4].slot_length = 5.0 * mm; });
  Construct construct = sound_construct();
  only(construct.plates).holes[4].shape = HoleShape::slot;
  only(construct.plates).holes[4].slot_length = 6.0 * mm;
  CHECK(check(construct).empty());
}

TEST_CASE("a prebend is a few millimetres on a plate that follows the bone", "[models][parts]") {
  check_plate_error("plate.prebend", "from 0 mm to 5 mm", [](Plate& plate) { plate.prebend = -0.3 * mm; });
  check_plate_error("plate.prebend", "5.1 mm", [](Plate& plate) { plate.prebend = 5.1 * mm; });
  check_plate_error("plate.prebend", "nan", [](Plate& plate) { plate.prebend = not_a_number * mm; });
  check_plate_error("plate.prebend", "left straight", [](Plate& plate) {
    plate.prebend = 1.5 * mm;
    plate.contour = Contour::straight;
  });
  Construct construct = sound_construct();
  only(construct.plates).prebend = 1.5 * mm;
  CHECK(check(construct).empty());
}

TEST_CASE("a plate without holes holds nothing", "[models][parts]") {
  Construct construct = sound_construct();
  only(construct.plates).holes.clear();
  check_finds_only_error(construct, "plate.hole", "no holes");
}

TEST_CASE("a plate stays on the bone", "[models][parts]") {
  Construct construct = sound_construct();
  // The outer hole of either side is empty, so that only the plate itself leaves the bone.
  only(construct.plates).length = 200.0 * mm;
  only(construct.plates).proximal_end = 20.0 * mm;
  for (auto& hole : only(construct.plates).holes) hole.position += 10.0 * mm;
  check_finds_only_error(construct, "plate.proximal_end", "beyond the bone's distal end at 163 mm");
  only(construct.plates).length = 160.0 * mm;
  only(construct.plates).proximal_end = -12.0 * mm;
  for (auto& hole : only(construct.plates).holes) hole.position += 32.0 * mm;
  check_finds_only_error(construct, "plate.proximal_end", "12 mm beyond the bone's proximal end");
}

TEST_CASE("a plate on a bone that bows sideways from under it is refused", "[models][parts]") {
  Construct construct = sound_construct();
  construct.bone.stations[1].bow_lateral = 3.6 * mm;
  check_finds_only_error(construct, "plate.aspect", "to the side");
  only(construct.plates).aspect = Aspect::lateral;  // the bow then lies in the plate's plane
  CHECK(check(construct).empty());
}
