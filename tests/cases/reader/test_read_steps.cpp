#include "cases/reader/read_case.h"
#include "tests/cases/as_a_user/run_program.h"
#include "tests/cases/as_a_user/texts.h"

#include <catch2/catch.hpp>

using namespace gapstrain;
using namespace gapstrain::cases;

using gapstrain::tests::replaced;

namespace {

// A reduced oblique fracture under a plate with slots: screws of every kind that fits, holds, and an order.
const std::string pressed = R"(
[bone]
length = "150 mm"
width = "13 mm"
cortex = "2.2 mm"
material = "isotropic-bone"

[plate]
length = "86 mm"
width = "8.5 mm"
thickness = "2.6 mm"
holes = 8
pitch = "10.5 mm"
hole_diameter = "3.6 mm"
slot_length = "6.1 mm"
prebend = "0.8 mm"
material = "stainless-steel-cold-worked"

[fracture]
position = "73 mm"
gap = "0.2 mm"
obliquity = "50 deg"
direction = "70 deg"

[screws]
kind = "cortical"
size = "HA 3.5"
torque = "0.7 N m"

[[screw]]
holes = [1, 2]

[[screw]]
hole = 7
kind = "compression"
preload = "450 N"
slide = "0.6 mm"

[[screw]]
hole = 8

[[screw]]
kind = "lag"
position = "74 mm"
around = "65 deg"
tilt_along = "5 deg"
size = "HA 2.7"

[[temporary]]
label = "wire"
kind = "wire"
hole = 4
diameter = "1.6 mm"

[[temporary]]
label = "forceps"
kind = "plate-clamp"
along = "63.9 mm"
force = "120 N"

[[temporary]]
label = "reduction"
kind = "fracture-clamp"
force = "80 N"

[contact]
friction = "stick"
bone_on_bone = 0.31

[[step]]
place = ["wire", "reduction"]
screw = "S1"

[[step]]
place = "forceps"
insert = ["S2", "S8"]
tighten = "S8"
screw = ["S7", "L1"]
remove = ["wire", "forceps", "reduction"]

[[step]]
tissue = "hard-callus"
tighten = "S2"
)";

CaseFile read(const std::string& text) { return read_case_text("pressed.toml", text); }

std::string assumptions(const std::string& text) {
  std::string all;
  for (const auto& sentence : read(text).assumptions) all += sentence + "\n";
  return all;
}

using Labels = std::vector<std::string>;

}  // namespace

TEST_CASE("screws by function are read as they stand in the file", "[cases][reader]") {
  const auto file = read(pressed);
  CHECK(format_problems(file.file, file.warnings).empty());
  const auto& screws = file.construct.screws;
  REQUIRE(screws.size() == 5);
  CHECK(screws[1].kind == models::ScrewKind::cortical);
  CHECK(screws[1].insertion_torque->value() == Approx(700.0));
  CHECK_FALSE(screws[1].preload.has_value());
  CHECK(screws[2].kind == models::ScrewKind::compression);
  CHECK(screws[2].preload->value() == Approx(450.0));
  CHECK_FALSE(screws[2].insertion_torque.has_value());  // its own preload stands in place of the default torque
  CHECK(screws[2].slide->value() == Approx(0.6));
  CHECK_FALSE(screws[3].slide.has_value());
  CHECK(screws[4].kind == models::ScrewKind::lag);
  CHECK(screws[4].label == "L1");
  CHECK(screws[4].hole == 0);
  REQUIRE(screws[4].entry.has_value());
  CHECK(screws[4].entry->position.value() == Approx(74.0));
  CHECK((screws[4].entry->around / models::degree).value() == Approx(65.0));
  CHECK(screws[4].size.designation == "HA 2.7");
}

TEST_CASE("a row of slots, a prebend and contact are read", "[cases][reader]") {
  const auto construct = read(pressed).construct;
  REQUIRE(only(construct.plates).holes.size() == 8);
  for (const auto& hole : only(construct.plates).holes) {
    CHECK(hole.shape == models::HoleShape::slot);
    CHECK(hole.diameter.value() == Approx(3.6));
    CHECK(hole.slot_length.value() == Approx(6.1));
  }
  CHECK(only(construct.plates).prebend.value() == Approx(0.8));
  CHECK(construct.contact.friction == models::FrictionLaw::stick);
  CHECK(construct.contact.bone_on_bone == 0.31);
  CHECK(construct.contact.plate_on_bone == models::Contact{}.plate_on_bone);
  const auto free = read(replaced(pressed, "\"stick\"", "\"none\"")).construct;
  CHECK(free.contact.friction == models::FrictionLaw::none);
}

TEST_CASE("wires, clamps and steps are read in their order", "[cases][reader]") {
  const auto construct = read(pressed).construct;
  REQUIRE(construct.temporary.size() == 3);
  CHECK(construct.temporary[0].kind == models::HoldKind::wire);
  CHECK(construct.temporary[0].hole == 4);
  CHECK(construct.temporary[0].diameter.value() == Approx(1.6));
  CHECK(construct.temporary[1].kind == models::HoldKind::plate_clamp);
  CHECK(construct.temporary[1].along.value() == Approx(63.9));
  CHECK(construct.temporary[1].force.value() == Approx(120.0));
  CHECK(construct.temporary[2].kind == models::HoldKind::fracture_clamp);
  CHECK(construct.temporary[2].label == "reduction");
  REQUIRE(construct.steps.size() == 3);
  CHECK(construct.steps[0].place == Labels{"wire", "reduction"});
  CHECK(construct.steps[1].remove == Labels{"wire", "forceps", "reduction"});
  CHECK(construct.steps[2].tighten == Labels{"S2"});
  CHECK(construct.steps[2].tissue->name == "hard-callus");
  CHECK_FALSE(construct.steps[0].tissue.has_value());
}

TEST_CASE("`screw` in a step is short for inserting and, unless it locks, tightening", "[cases][reader]") {
  const auto steps = read(pressed).construct.steps;
  CHECK(steps[0].insert == Labels{"S1"});
  CHECK(steps[0].tighten == Labels{"S1"});
  CHECK(steps[1].insert == Labels{"S2", "S8", "S7", "L1"});
  CHECK(steps[1].tighten == Labels{"S8", "S7", "L1"});

  const auto locking = read(R"([bone]
length = "150 mm"
width = "13 mm"
cortex = "2.2 mm"
material = "isotropic-bone"
[plate]
length = "86 mm"
width = "8.5 mm"
thickness = "2.6 mm"
holes = 8
pitch = "10.5 mm"
hole_diameter = "3.6 mm"
material = "stainless-steel-cold-worked"
[fracture]
position = "73 mm"
gap = "0.2 mm"
[screws]
size = "locking 3.5"
[[screw]]
holes = [1, 8]
[[screw]]
holes = [3, 6]
kind = "cortical"
[[step]]
screw = ["S3", "S1", "S6", "S8"]
)");
  CHECK(locking.construct.steps[0].insert == Labels{"S3", "S1", "S6", "S8"});
  CHECK(locking.construct.steps[0].tighten == Labels{"S3", "S6"});
}

TEST_CASE("a fault of a label that `screw` stands for is told at its place", "[cases][reader]") {
  const auto problem_of = [](const std::string& from, const std::string& to) {
    try {
      read(replaced(pressed, from, to));
    } catch (const CaseError& error) {
      REQUIRE(error.problems.size() == 1);
      return error.problems.front();
    }
    FAIL("nothing was wrong");
    return CaseProblem{};
  };
  const auto unknown = problem_of("[\"S7\", \"L1\"]", "[\"S7\", \"L1\", \"S9\"]");
  CHECK(unknown.key == "step[1].screw[2]");
  CHECK_THAT(unknown.message, Catch::Matchers::Contains("known are S1, S2, S7, S8, L1, wire, forceps, reduction"));
  const auto twice = problem_of("tighten = \"S8\"", "tighten = [\"S8\", \"S1\"]");
  CHECK(twice.key == "step[1].tighten[1]");
  CHECK_THAT(twice.message, Catch::Matchers::Contains("tight already"));
  const auto tight = problem_of("tighten = \"S8\"", "tighten = [\"S8\", \"L1\"]");
  CHECK(tight.key == "step[1].screw[1]");
  CHECK_THAT(tight.message, Catch::Matchers::Contains("\"L1\" is tight already"));
}

TEST_CASE("a plate that ball heads press on lies on the bone unless told otherwise", "[cases][reader]") {
  CHECK(only(read(pressed).construct.plates).standoff.value() == 0.0);
  CHECK(only(read(replaced(pressed, "prebend", "standoff = \"0.4 mm\"\nprebend")).construct.plates)
            .standoff.value() == Approx(0.4));
  // A lag screw beside the plate does not press it on.
  auto locked =
      replaced(pressed, "kind = \"cortical\"\nsize = \"HA 3.5\"\ntorque = \"0.7 N m\"", "size = \"locking 3.5\"");
  locked = replaced(locked, "slot_length = \"6.1 mm\"\n", "");
  locked = replaced(locked, "kind = \"compression\"\npreload = \"450 N\"\nslide = \"0.6 mm\"\n", "");
  locked = replaced(locked, "tighten = \"S8\"\n", "");
  locked = replaced(locked, "tighten = \"S2\"\n", "");
  CHECK(only(read(locked).construct.plates).standoff.value() == 1.0);
}

TEST_CASE("a locking screw takes no preload from [screws]", "[cases][reader]") {
  auto text = replaced(pressed, "slot_length = \"6.1 mm\"\n", "");
  text = replaced(text, "hole = 7\nkind = \"compression\"\npreload = \"450 N\"\nslide = \"0.6 mm\"",
                  "hole = 7\nkind = \"locking\"");
  const auto construct = read(text).construct;
  CHECK_FALSE(construct.screws[2].insertion_torque.has_value());
  CHECK(construct.screws[3].insertion_torque.has_value());
  CHECK(construct.steps[1].tighten == Labels{"S8", "L1"});
}

TEST_CASE("what tightening rests on is stated where the case is silent", "[cases][reader]") {
  using Catch::Matchers::Contains;
  const auto all = assumptions(pressed);
  CHECK_THAT(all, Contains("No standoff is given: 0 mm"));
  CHECK_THAT(all, !Contains("pull-out"));
  CHECK_THAT(all, !Contains("No slide"));
  CHECK_THAT(all, !Contains("Friction"));  // surfaces stick
  CHECK_THAT(all, !Contains("no steps"));

  const auto silent = assumptions(replaced(pressed, "torque = \"0.7 N m\"\n", ""));
  CHECK_THAT(silent, Contains("given for S1, S2, S8, L1: half the pull-out strength"));
  CHECK_THAT(assumptions(replaced(pressed, "slide = \"0.6 mm\"\n", "")), Contains("the thread S7 1 mm are taken"));
  const auto friction = assumptions(replaced(pressed, "friction = \"stick\"\n", ""));
  CHECK_THAT(friction, Contains("0.37 of the plate on bone"));
  CHECK_THAT(friction, !Contains("of bone on bone"));

  const auto without_order = pressed.substr(0, pressed.find("[[temporary]]"));
  const auto unordered = assumptions(without_order);
  CHECK_THAT(unordered, Contains("lists no steps"));
  CHECK_THAT(unordered, Contains("0.37 of the plate on bone") && Contains("0.45 of bone on bone"));
  CHECK_THAT(assumptions(replaced(pressed, "prebend", "standoff = \"0 mm\"\nprebend")), !Contains("standoff"));
}
