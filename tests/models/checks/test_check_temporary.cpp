#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

// Holes 4 and 5 are free; they lie at 43.9 and 56.2 mm along the plate, 73.9 and 86.2 mm along the bone. Each hold
// is placed and taken out in a step of its own before the screws go in.
Construct held() {
  Construct construct = sound_construct();
  only(construct.fractures).gap = 0.7 * mm;
  TemporaryHold wire, plate_clamp, fracture_clamp;
  wire.label = "W";
  wire.hole = 4;
  wire.diameter = 1.6 * mm;
  plate_clamp.label = "P";
  plate_clamp.kind = HoldKind::plate_clamp;
  plate_clamp.along = 62.0 * mm;
  plate_clamp.force = 130.0 * newton;
  fracture_clamp.label = "F";
  fracture_clamp.kind = HoldKind::fracture_clamp;
  fracture_clamp.force = 90.0 * newton;
  construct.temporary = {wire, plate_clamp, fracture_clamp};
  construct.steps = {{{"W", "P", "F"}, {}, {}, {"W", "P", "F"}, {}}};
  for (const Screw& screw : construct.screws) construct.steps.push_back({{}, {screw.label}, {}, {}, {}});
  return construct;
}

template <class Spoil>
void check_hold_error(const std::string& where, const std::string& words, Spoil spoil) {
  Construct construct = held();
  spoil(construct);
  check_finds_only_error(construct, where, words);
}

}  // namespace

TEST_CASE("nothing is wrong with sound wires and clamps", "[models][parts]") {
  for (const auto& problem : check(held())) FAIL_CHECK(problem.where << ": " << problem.message);
}

TEST_CASE("a fracture clamp needs a cut that is oblique enough", "[models][parts]") {
  // By hand: the bone's outer half-width over the way to its nearer end.
  check_hold_error("temporary[2].kind", "obliquity is 0 degrees: that line leaves the bone beyond its end",
                   [](Construct& c) { only(c.fractures).obliquity = 0.0 * degree; });
  check_hold_error("temporary[2].kind", "press a transverse one with a compression screw",
                   [](Construct& c) { only(c.fractures).obliquity = 2.0 * degree; });
}

TEST_CASE("a wire passes a hole of its own", "[models][parts]") {
  check_hold_error("temporary[0].diameter", "above 0 mm",
                   [](Construct& c) { c.temporary[0].diameter = not_a_number * mm; });
  check_hold_error("temporary[0].diameter", "does not pass hole 4 of 3.1 mm",
                   [](Construct& c) { c.temporary[0].diameter = 3.1 * mm; });
  for (const int hole : {0, 9})
    check_hold_error("temporary[0].hole", "holes 1 to 8", [&](Construct& c) { c.temporary[0].hole = hole; });
  check_hold_error("temporary[0].hole",
                   "wire \"W\" and the screw \"S2\" go through the same hole 2; the mesh needs room",
                   [](Construct& c) { c.temporary[0].hole = 2; });
  check_hold_error("temporary[3].hole", "wire \"V\" and the wire \"W\" go through the same hole 4",
                   [](Construct& c) {
                     c.temporary.push_back(c.temporary[0]);
                     c.temporary.back().label = "V";
                     c.steps[0].place.push_back("V");
                     c.steps[0].remove.push_back("V");
                   });
}

TEST_CASE("a wire keeps off the fracture like a screw", "[models][parts]") {
  check_hold_error("temporary[0]", "wire \"W\" passes",
                   [](Construct& c) { only(c.fractures).position = 76.0 * mm; });
  check_hold_error("temporary[0]", "goes into the fracture gap", [](Construct& c) {
    only(c.fractures).position = 74.0 * mm;
    only(c.fractures).gap = 4.5 * mm;
  });
  check_hold_error("temporary[0]", "wire \"W\" crosses the fracture", [](Construct& c) {
    only(c.fractures).position = 73.9 * mm;
    only(c.fractures).obliquity = 50.0 * degree;
    only(c.fractures).direction = 0.0 * degree;
  });
}

TEST_CASE("a wire and a screw must not meet in the bone", "[models][parts]") {
  check_hold_error("temporary[0]", "screw \"S3\" and the wire \"W\" meet in the bone", [](Construct& c) {
    only(c.plates).standoff = 24.0 * mm;
    c.screws[2].kind = ScrewKind::cortical;
    c.screws[2].tilt_along = 20.0 * degree;
    c.steps[3].tighten = {"S3"};
    only(c.fractures).position = 85.0 * mm;
    only(c.fractures).obliquity = 0.0 * degree;
    c.temporary.pop_back();  // the fracture clamp, which a transverse cut gives nothing to hold
    c.steps[0].place.pop_back();
    c.steps[0].remove.pop_back();
  });
}

TEST_CASE("a wire does not hold a fragment for good", "[models][parts]") {
  check_hold_error("screw", "No screw holds the proximal fragment", [](Construct& c) {
    c.screws.erase(c.screws.begin(), c.screws.begin() + 3);
    c.steps.erase(c.steps.begin() + 1, c.steps.begin() + 4);
    c.temporary[0].hole = 1;
  });
}

TEST_CASE("a clamp is closed with a force", "[models][parts]") {
  check_hold_error("temporary[1].force", "clamp \"P\" is 0 N; it must be above 0 N",
                   [](Construct& c) { c.temporary[1].force = 0.0 * newton; });
  check_hold_error("temporary[2].force", "clamp \"F\" is -90 N",
                   [](Construct& c) { c.temporary[2].force = -90.0 * newton; });
  check_hold_error("temporary[2].force", "nan",
                   [](Construct& c) { c.temporary[2].force = not_a_number * newton; });
}

TEST_CASE("a plate clamp stands on the plate's metal", "[models][parts]") {
  for (const double along : {-0.5, 101.3, not_a_number})
    check_hold_error("temporary[1].along", "from 0 mm to 101 mm",
                     [&](Construct& c) { c.temporary[1].along = along * mm; });
  // Hole 5 reaches to 57.75 mm, and a tenth of it beyond to 58.06 mm.
  check_hold_error("temporary[1].along", "presses 1.8 mm from the centre of hole 5",
                   [](Construct& c) { c.temporary[1].along = 58.0 * mm; });
  Construct construct = held();
  construct.temporary[1].along = 58.1 * mm;
  CHECK(check(construct).empty());
}

TEST_CASE("a plate clamp grips one fragment", "[models][parts]") {
  check_hold_error("temporary[1].along", "grips the bone over the fracture", [](Construct& c) {
    c.temporary[1].along = 50.0 * mm;  // 80 mm along the bone
    only(c.fractures).position = 80.3 * mm;
  });
}

TEST_CASE("a wire stands for a screw of one diameter through both cortices", "[models][parts]") {
  const Construct construct = held();
  const Screw wire = wire_as_screw(construct.temporary[0], only(construct.plates).material);
  CHECK(wire.label == "W");
  CHECK(wire.hole == 4);
  CHECK(wire.kind == ScrewKind::cortical);
  CHECK(wire.cortices == 2);
  CHECK(wire.size.core_diameter.value() == 1.6);
  CHECK(wire.size.thread_diameter.value() == 1.6);
  CHECK(wire.material.name == only(construct.plates).material.name);
  CHECK(wire.tilt_along.value() == 0.0);
}
