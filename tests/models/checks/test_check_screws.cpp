#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;
using namespace gapstrain::tests;

TEST_CASE("every size of a screw must be above zero and in proportion", "[models][parts]") {
  check_construct_error("screw[0].thread_diameter", "above 0",
                        [](Construct& c) { c.screws[0].size.thread_diameter = -1.0 * mm; });
  check_construct_error("screw[3].core_diameter", "above 0",
                        [](Construct& c) { c.screws[3].size.core_diameter = not_a_number * mm; });
  check_construct_error("screw[5].pitch", "above 0", [](Construct& c) { c.screws[5].size.pitch = 0.0 * mm; });
  check_construct_error("screw[5].core_diameter", "exchange",
                        [](Construct& c) { c.screws[5].size.core_diameter = 3.05 * mm; });
  check_construct_error("screw[2].size", "too thick for hole 3 of 3.1 mm", [](Construct& c) {
    c.screws[2].size.core_diameter = 3.2 * mm;
    c.screws[2].size.thread_diameter = 3.5 * mm;
  });
  check_construct_error("screw[1].cortices", "has 3 cortices", [](Construct& c) { c.screws[1].cortices = 3; });
  check_construct_error("screw[1].root_radius", "above 0",
                        [](Construct& c) { c.screws[1].size.root_radius = 0.0 * mm; });
}

TEST_CASE("bone holds a screw no stiffer than bonded, and not next to nothing", "[models][parts]") {
  for (const double stiffness : {0.0, 0.04, 1.01, -1.0, not_a_number}) {
    check_construct_error("screw[2].interface", "allowed is 0.05 to 1",
                          [&](Construct& c) { c.screws[2].interface = stiffness; });
    check_construct_error("screws.interface", "allowed is 0.05 to 1",
                          [&](Construct& c) { c.screw_interface = stiffness; });
  }
}

TEST_CASE("a course of screws in bone goes on in time and never firmer", "[models][parts]") {
  const auto with = [](std::vector<InterfaceStage> course) {
    return [course](Construct& c) {
      c.screw_interface = mean_interface;
      c.interface_course = course;
    };
  };
  check_construct_error("screws.interface_course[0].week", "after week 0", with({{0.0, 0.5}}));
  check_construct_error("screws.interface_course[1].week", "after week 8", with({{8.0, 0.7}, {8.0, 0.6}}));
  check_construct_error("screws.interface_course[0].week", "after week 0", with({{not_a_number, 0.5}}));
  check_construct_error("screws.interface_course[0].interface", "can only soften", with({{3.0, 0.9}}));
  check_construct_error("screws.interface_course[1].interface", "can only soften", with({{3.0, 0.5}, {6.0, 0.6}}));
  check_construct_error("screws.interface_course[0].interface", "allowed is 0.05 to 1", with({{3.0, 0.01}}));
  check_construct_error("screws.interface_course[0].interface", "allowed is 0.05 to 1",
                        with({{3.0, not_a_number}}));
}

TEST_CASE("a screw goes in a hole of its own that suits it", "[models][parts]") {
  for (const int hole : {0, -2, 9})
    check_construct_error("screw[2].hole", "holes 1 to 8", [&](Construct& c) { c.screws[2].hole = hole; });
  check_construct_error("screw[3].hole", "\"S3\" and \"S6\" are both in hole 3",
                        [](Construct& c) { c.screws[3].hole = 3; });
  check_construct_error("screw[3].hole", "Two screws are in hole 3", [](Construct& c) {
    c.screws[3].hole = 3;
    c.screws[3].label = c.screws[2].label;
  });
  check_construct_error("screw[4].hole", "slot without thread", [](Construct& c) {
    only(c.plates).holes[6].shape = HoleShape::slot;
    only(c.plates).holes[6].slot_length = 5.0 * mm;
  });
}

TEST_CASE("a locking head allows fifteen degrees of tilt in all", "[models][parts]") {
  check_construct_error("screw[0].tilt_along", "15.5 deg",
                        [](Construct& c) { c.screws[0].tilt_along = -15.5 * degree; });
  check_construct_error("screw[0].tilt_across", "at most 15 deg",
                        [](Construct& c) { c.screws[0].tilt_across = 17.0 * degree; });
  check_construct_error("screw[0].tilt_across", "16.", [](Construct& c) {
    c.screws[0].tilt_along = 10.0 * degree;
    c.screws[0].tilt_across = 13.0 * degree;
  });
  check_construct_error("screw[0].tilt_along", "170 deg",
                        [](Construct& c) { c.screws[0].tilt_along = 170.0 * degree; });
  check_construct_error("screw[0].tilt_along", "ordinary",
                        [](Construct& c) { c.screws[0].tilt_along = not_a_number * radian; });
  check_construct_error("screw[0].tilt_across", "ordinary",
                        [](Construct& c) { c.screws[0].tilt_across = not_a_number * radian; });
  Construct construct = sound_construct();
  construct.screws[0].tilt_along = -15.0 * degree;
  CHECK(check(construct).empty());
}

TEST_CASE("a screw must pass two clear walls", "[models][parts]") {
  // A plate that stands far off: a tilt across then carries the screw past the canal.
  check_construct_error("screw[5]", "\"S8\" does not pass two clear walls", [](Construct& c) {
    only(c.plates).standoff = 12.0 * mm;
    c.screws[5].tilt_across = 14.0 * degree;
  });
}

TEST_CASE("a screw that only grazes the canal is refused", "[models][parts]") {
  check_construct_error("screw[5]", "grazes the canal", [](Construct& c) {
    only(c.plates).standoff = 10.35 * mm;
    c.screws[5].tilt_across = 14.0 * degree;
  });
}

TEST_CASE("screws must not meet in the bone", "[models][parts]") {
  // Towards each other from neighbouring holes 12.3 mm apart, they meet 23 mm below the plate: only under a
  // standoff.
  check_construct_error("screw[1]", "screw \"S1\" and the screw \"S2\" meet in the bone", [](Construct& c) {
    only(c.plates).standoff = 11.0 * mm;
    c.screws[1].cortices = 2;
    c.screws[0].tilt_along = 14.0 * degree;
    c.screws[1].tilt_along = -14.0 * degree;
  });
}

TEST_CASE("screws must not go through one cortex side by side", "[models][parts]") {
  // Parallel and one core and a twentieth apart: they do not meet, but leave no bone between them.
  check_construct_error("screw[6]", "through one cortex only 2.5", [](Construct& c) {
    only(c.plates).holes.resize(8);
    only(c.plates).holes[3].position = 43.9 * mm;
    only(c.plates).holes[0] = {7.0 * mm, HoleShape::round, 2.4 * mm, 2.4 * mm};
    only(c.plates).holes.insert(only(c.plates).holes.begin() + 1,
                                {9.53 * mm, HoleShape::round, 2.4 * mm, 2.4 * mm});
    for (std::size_t i = 1; i < c.screws.size(); ++i) ++c.screws[i].hole;
    c.screws.push_back(c.screws[0]);
    c.screws.back().hole = 2;
    c.screws.back().label = "extra";
  });
}

TEST_CASE("a screw keeps off the bone's end", "[models][parts]") {
  check_construct_error("screw[0]", "from the bone's end", [](Construct& c) {
    only(c.plates).proximal_end = 0.0 * mm;
    only(c.plates).holes[0].position = 2.2 * mm;
    only(c.plates).length = 131.0 * mm;
    for (std::size_t i = 1; i < 8; ++i) only(c.plates).holes[i].position += 30.0 * mm;
  });
}

TEST_CASE("each fragment needs a screw, and is better held by two", "[models][parts]") {
  Construct construct = sound_construct();
  construct.screws.resize(3);
  check_finds_only_error(construct, "screw", "No screw holds the distal fragment");
  construct = sound_construct();
  construct.screws.erase(construct.screws.begin(), construct.screws.begin() + 3);
  check_finds_only_error(construct, "screw", "No screw holds the proximal fragment");
  construct = sound_construct();
  construct.screws.resize(4);
  check_finds_only_warning(construct, "screw", "Only one screw holds the distal fragment");
  construct.screws.clear();
  check_finds_only_error(construct, "screw", "There is no screw");
}
