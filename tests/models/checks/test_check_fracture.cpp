#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

template <class Spoil>
void check_fracture_error(const std::string& where, const std::string& words, Spoil spoil) {
  Construct construct = sound_construct();
  construct.loads.pop_back();  // the rollers
  spoil(construct);
  check_finds_only_error(construct, where, words);
}

// Nothing but holes 4 and 5 free, at 73.9 and 86.2 mm along the bone; the others at 61.6 and 98.5 mm.
Construct transverse() {
  Construct construct = sound_construct();
  construct.loads.pop_back();
  construct.bone = round_bone(163.0, 13.0, 2.2);
  only(construct.fractures).obliquity = 0.0 * degree;
  return construct;
}

}  // namespace

TEST_CASE("a fracture's sizes are ordinary numbers", "[models][parts]") {
  check_fracture_error("fracture.position", "ordinary",
                       [](Construct& c) { only(c.fractures).position = not_a_number * mm; });
  check_fracture_error("fracture.gap", "0 mm or more", [](Construct& c) { only(c.fractures).gap = -0.1 * mm; });
  check_fracture_error("fracture.gap", "nan", [](Construct& c) { only(c.fractures).gap = not_a_number * mm; });
  check_fracture_error("fracture.direction", "ordinary",
                       [](Construct& c) { only(c.fractures).direction = not_a_number * radian; });
  check_fracture_error("fracture.obliquity", "66 deg",
                       [](Construct& c) { only(c.fractures).obliquity = 66.0 * degree; });
  check_fracture_error("fracture.obliquity", "180 deg",
                       [](Construct& c) { only(c.fractures).obliquity = -3.0 * degree; });
}

TEST_CASE("a reduced fracture has no gap, and then no tissue in it", "[models][parts]") {
  Construct construct = sound_construct();
  only(construct.fractures).gap = 0.0 * mm;
  check_finds_only_error(construct, "fracture.gap", "no room for a tissue");
  only(construct.fractures).tissue.reset();
  CHECK(check(construct).empty());
}

TEST_CASE("a fracture lies inside the bone with both fragments whole", "[models][parts]") {
  for (const double position : {-4.0, 0.0, 163.0, 180.0})
    check_fracture_error("fracture.position", "outside the bone",
                         [&](Construct& c) { only(c.fractures).position = position * mm; });
  check_fracture_error("fracture.gap", "to its end", [](Construct& c) { only(c.fractures).gap = 200.0 * mm; });
  // Reaches 6.1 tan 60 = 10.6 mm from its middle along z: to 163 - 1.9.
  check_fracture_error("fracture.obliquity", "to its end", [](Construct& c) {
    only(c.fractures).position = 149.0 * mm;
    only(c.fractures).obliquity = 60.0 * degree;
    only(c.fractures).direction = 0.0 * degree;
  });
}

TEST_CASE("a screw keeps half a core radius of bone to the fracture's edge", "[models][parts]") {
  // Hole 3 lies at 61.6 mm; needed are one and a half core radii, 1.8 mm.
  Construct construct = transverse();
  only(construct.fractures).position = 66.0 * mm;
  only(construct.fractures).gap = 5.1 * mm;  // edge at 63.45
  CHECK(check(construct).empty());
  only(construct.fractures).gap = 5.3 * mm;  // edge at 63.35
  check_finds_only_error(construct, "screw[2]", "\"S3\" passes 1.75 mm from the fracture's edge");
  only(construct.fractures).position = 62.0 * mm;
  check_finds_only_error(construct, "screw[2]", "goes into the fracture gap");
}

TEST_CASE("an oblique edge is measured square to the cut, at either cortex", "[models][parts]") {
  // At the near mid-cortex (z = 5.4) the edge lies 5.4 tan 30 further distally, at the far one further proximally:
  // 66 - 0.75 - 3.12 = 62.13, 0.53 mm from hole 3's axis at 61.6, square to the cut 0.46 mm.
  Construct construct = transverse();
  only(construct.fractures).position = 66.0 * mm;
  only(construct.fractures).gap = 1.5 * mm;
  only(construct.fractures).obliquity = 30.0 * degree;
  only(construct.fractures).direction = 0.0 * degree;
  check_finds_only_error(construct, "screw[2]", "passes 0.461 mm");
  construct.screws[2].cortices = 1;
  CHECK(check(construct).empty());
  only(construct.fractures).direction = 180.0 * degree;  // now the near cortex is the close one
  check_finds_only_error(construct, "screw[2]", "passes 0.461 mm");
}

TEST_CASE("a screw must not hold both fragments", "[models][parts]") {
  // A long oblique cut leaves hole 3's axis clear of both edges, proximal of the gap here and distal there.
  Construct construct = transverse();
  only(construct.fractures).position = 61.6 * mm;
  only(construct.fractures).gap = 0.8 * mm;
  only(construct.fractures).obliquity = 50.0 * degree;
  only(construct.fractures).direction = 0.0 * degree;
  check_finds_only_error(construct, "screw[2]", "crosses the fracture");
}

TEST_CASE("a gap wider than the working length is one error", "[models][parts]") {
  Construct construct = transverse();
  only(construct.fractures).gap = 40.0 * mm;  // holes 3 and 6 are 36.9 mm apart
  check_finds_only_error(construct, "fracture.gap", "only 36.9 mm apart");
}
