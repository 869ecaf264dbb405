#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

void make_slot(Construct& construct, std::size_t hole, double length) {
  only(construct.plates).holes[hole].shape = HoleShape::slot;
  only(construct.plates).holes[hole].slot_length = length * mm;
}

// A long oblique cut between the screws, and a lag screw across it from 70 degrees round the bone.
Construct lagged() {
  Construct construct = sound_construct();
  construct.loads.pop_back();
  construct.bone = round_bone(163.0, 13.0, 2.2);
  only(construct.fractures).position = 80.0 * mm;
  only(construct.fractures).gap = 0.0 * mm;
  only(construct.fractures).tissue.reset();
  only(construct.fractures).obliquity = 50.0 * degree;
  only(construct.fractures).direction = 70.0 * degree;
  Screw lag = construct.screws[0];
  lag.label = "L";
  lag.hole = 0;
  lag.kind = ScrewKind::lag;
  lag.entry = FreeEntry{80.0 * mm, 70.0 * degree};
  construct.screws.push_back(lag);
  return construct;
}

template <class Spoil>
void check_lag_error(const std::string& where, const std::string& words, Spoil spoil) {
  Construct construct = lagged();
  spoil(construct.screws[6], construct);
  check_finds_only_error(construct, where, words);
}

}  // namespace

TEST_CASE("ball heads sit in round holes and in slots", "[models][parts]") {
  Construct construct = sound_construct();
  construct.screws[0].kind = construct.screws[5].kind = ScrewKind::cortical;
  make_slot(construct, 7, 5.0);
  CHECK(check(construct).empty());
}

TEST_CASE("a compression screw needs a slot with room to slide", "[models][parts]") {
  check_construct_error("screw[2].hole", "no room to slide",
                        [](Construct& c) { c.screws[2].kind = ScrewKind::compression; });
  check_construct_error("screw[2].hole", "no room to slide", [](Construct& c) {
    c.screws[2].kind = ScrewKind::compression;
    make_slot(c, 2, 3.1);
  });
  Construct construct = sound_construct();
  construct.screws[2].kind = ScrewKind::compression;
  make_slot(construct, 2, 4.5);
  CHECK(check(construct).empty());
}

TEST_CASE("a slide that the slot cuts short is pointed out", "[models][parts]") {
  Construct construct = sound_construct();
  construct.screws[2].kind = ScrewKind::compression;
  make_slot(construct, 2, 4.5);  // leaves 0.7 mm
  construct.screws[2].slide = 0.69 * mm;
  CHECK(check(construct).empty());
  construct.screws[2].slide = 0.9 * mm;
  check_finds_only_warning(construct, "screw[2].slide", "slide 0.9 mm, but its slot leaves 0.7 mm only");
  construct.screws[2].slide = -0.1 * mm;
  check_finds_only_error(construct, "screw[2].slide", "0 mm or more");
  construct.screws[2].slide = not_a_number * mm;
  check_finds_only_error(construct, "screw[2].slide", "nan");
}

TEST_CASE("an eccentric screw is held against the fracture where it is drilled", "[models][parts]") {
  // Hole 3 lies at 61.6 mm; needed are 1.8 mm from the edge, which drilling 1 mm away from it gives.
  Construct construct = sound_construct();
  construct.loads.pop_back();
  construct.bone = round_bone(163.0, 13.0, 2.2);
  only(construct.fractures).obliquity = 0.0 * degree;
  only(construct.fractures).position = 64.0 * mm;
  only(construct.fractures).gap = 2.0 * mm;
  construct.screws[2].kind = ScrewKind::compression;
  make_slot(construct, 2, 6.0);
  construct.screws[2].slide = 1.0 * mm;
  CHECK(check(construct).empty());
  construct.screws[2].slide = 0.2 * mm;
  check_finds_only_error(construct, "screw[2]", "passes 1.6 mm from the fracture's edge");
}

TEST_CASE("only what is tightened has a preload or a torque, and only one of them", "[models][parts]") {
  check_construct_error("screw[1].preload", "locking screw \"S2\" has no preload",
                        [](Construct& c) { c.screws[1].preload = 400.0 * newton; });
  check_construct_error("screw[1].torque", "locking",
                        [](Construct& c) { c.screws[1].insertion_torque = 400.0 * newton_mm; });
  const auto cortical = [](Construct& c) -> Screw& {
    c.screws[1].kind = ScrewKind::cortical;
    return c.screws[1];
  };
  check_construct_error("screw[1].torque", "both a preload and a torque", [&](Construct& c) {
    cortical(c).preload = 400.0 * newton;
    c.screws[1].insertion_torque = 700.0 * newton_mm;
  });
  for (const double value : {0.0, -3.0, not_a_number}) {
    check_construct_error("screw[1].preload", "above 0 N",
                          [&](Construct& c) { cortical(c).preload = value * newton; });
    check_construct_error("screw[1].torque", "above 0 N mm",
                          [&](Construct& c) { cortical(c).insertion_torque = value * newton_mm; });
  }
  check_construct_error("screw[1].slide", "no compression screw",
                        [&](Construct& c) { cortical(c).slide = 0.5 * mm; });
  Construct construct = sound_construct();
  cortical(construct).insertion_torque = 700.0 * newton_mm;
  CHECK(check(construct).empty());
}

TEST_CASE("a ball head tilts further than a locking one", "[models][parts]") {
  Construct construct = sound_construct();
  construct.screws[0].kind = ScrewKind::cortical;
  construct.screws[0].tilt_along = -24.5 * degree;
  CHECK(check(construct).empty());
  construct.screws[0].tilt_along = -26.0 * degree;
  check_finds_only_error(construct, "screw[0].tilt_along", "26 deg in all; a ball head allows at most 25 deg");
}

TEST_CASE("a lag screw crosses the fracture, beside the plate or through it", "[models][parts]") {
  for (const auto& problem : check(lagged())) FAIL_CHECK(problem.where << ": " << problem.message);
  Construct construct = lagged();
  construct.screws[6].entry.reset();
  construct.screws[6].hole = 5;  // at 86.2 mm along the bone
  only(construct.fractures).position = 86.2 * mm;
  only(construct.fractures).direction = 0.0 * degree;
  CHECK(check(construct).empty());
}

TEST_CASE("a lag screw that does not cross the fracture presses nothing", "[models][parts]") {
  check_lag_error("screw[6]", "does not cross the fracture: both its cortices lie in the distal fragment",
                  [](Screw& lag, Construct&) { lag.entry->position = 93.0 * mm; });
  check_lag_error("screw[6].cortices", "give it 2 cortices", [](Screw& lag, Construct&) { lag.cortices = 1; });
}

TEST_CASE("a lag screw keeps off the fracture's edge in both cortices", "[models][parts]") {
  check_lag_error("screw[6]", "screw \"L\" passes",
                  [](Screw& lag, Construct&) { lag.entry->position = 84.5 * mm; });
}

TEST_CASE("lag screws do not hold the plate", "[models][parts]") {
  Construct construct = lagged();
  construct.screws.erase(construct.screws.begin() + 3, construct.screws.begin() + 6);
  check_finds_only_error(construct, "screw", "No screw holds the distal fragment");
}

TEST_CASE("only a lag screw stands beside the plate, in the bone", "[models][parts]") {
  check_lag_error("screw[6].position", "only a lag screw",
                  [](Screw& lag, Construct&) { lag.kind = ScrewKind::cortical; });
  check_lag_error("screw[6].hole", "both hole 5 and an entry", [](Screw& lag, Construct&) { lag.hole = 5; });
  check_lag_error("screw[6].hole", "goes in hole 0", [](Screw& lag, Construct&) { lag.entry.reset(); });
  for (const double position : {-1.0, 0.0, 163.0, not_a_number})
    check_lag_error("screw[6].position", "outside the bone",
                    [&](Screw& lag, Construct&) { lag.entry->position = position * mm; });
  check_lag_error("screw[6].around", "ordinary",
                  [](Screw& lag, Construct&) { lag.entry->around = not_a_number * radian; });
  check_lag_error("screw[6].tilt_along", "a head beside the plate allows at most 60 deg",
                  [](Screw& lag, Construct&) { lag.tilt_along = 61.0 * degree; });
}

TEST_CASE("a head and a tip beside the plate keep out of its way", "[models][parts]") {
  check_lag_error("screw[6].around", "head of the screw \"L\" stands in the plate's way",
                  [](Screw& lag, Construct&) { lag.entry->around = 20.0 * degree; });
  check_lag_error("screw[6].around", "leaves the bone under the plate", [](Screw& lag, Construct& c) {
    lag.entry->around = 180.0 * degree;
    only(c.fractures).direction = 180.0 * degree;
  });
}
