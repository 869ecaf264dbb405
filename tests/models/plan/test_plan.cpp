#include "models/plan/plan.h"
#include "models/words/plan_words.h"
#include "tests/models/constructs.h"
#include "tests/models/rules/arc_bone.h"
#include "tests/models/rules/review_help.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gapstrain::models;
using namespace gapstrain::tests;  // NOLINT: helpers of these tests

namespace {

bool any_says(const std::vector<PlanNote>& notes, const std::string& words) {
  return std::any_of(notes.begin(), notes.end(),
                     [&](const PlanNote& note) { return says(note_sentence(note), words); });
}

// The first of its kind. @pre there is one
template <class Note>
Note note_of(const Plan& plan) {
  for (const auto& note : plan.notes)
    if (const auto* found = std::get_if<Note>(&note)) return *found;
  FAIL("there is no such note");
  return {};
}

const OrderedScrew& screw_of(const Plan& plan, const std::string& label) {
  return *std::find_if(plan.screws.begin(), plan.screws.end(),
                       [&](const OrderedScrew& screw) { return screw.label == label; });
}

// From the bone's axis to the middle of a plate on the tube.
constexpr double tube_to_plate = 7.0 + 1.5 + 1.25;

}  // namespace

TEST_CASE("26 mm measured are a screw of 28 mm", "[models][review]") {
  // Common practice, no source.
  const Stock stock;
  CHECK(length_to_order(26.0 * mm, stock) == 28.0 * mm);
  CHECK(length_to_order(26.01 * mm, stock) == 30.0 * mm);
  CHECK(length_to_order(25.0 * mm, stock) == 28.0 * mm);
  CHECK(length_to_order(24.0 * mm, stock) == 26.0 * mm);
  CHECK(length_to_order(26.0 * mm, {5.0 * mm, 2.0 * mm}) == 30.0 * mm);
  CHECK(length_to_order(26.0 * mm, {2.0 * mm, 0.0 * mm}) == 26.0 * mm);
}

TEST_CASE("a square screw is as long as plate, distance and bone, a tilted one longer by its cosine",
          "[models][review]") {
  // Plate 2.5, standoff 1.5, bone 14 mm: 18 mm from the plate's top face to the far surface.
  Plan plan = make_plan(plated_tube());
  REQUIRE(plan.screws.size() == 6);
  for (const auto& screw : plan.screws) {
    CHECK(screw.measured.value() == Approx(18.0).epsilon(1e-9));
    CHECK(screw.length == 20.0 * mm);
  }
  TubeSizes sizes;
  sizes.tilt = 10.0;
  plan = make_plan(plated_tube(sizes));
  for (const auto& screw : plan.screws) {
    CHECK(screw.measured.value() == Approx(18.0 / std::cos(10.0 * degree.value())).epsilon(1e-9));  // 18.28
    CHECK(screw.length == 22.0 * mm);
  }
}

TEST_CASE("a screw in one cortex ends in the canal", "[models][review]") {
  TubeSizes sizes;
  sizes.cortices = 1;
  Construct construct = plated_tube(sizes);
  // From the plate's top face the near wall ends at 6.5 mm, the canal's middle lies at 11, its far side at 15.5.
  const auto ordered = [&](double step) {
    construct.stock.screw_step = step * mm;
    return make_plan(construct).screws.front();
  };
  CHECK(ordered(2.0).measured.value() == Approx(11.0).epsilon(1e-9));
  CHECK(ordered(2.0).length == 10.0 * mm);
  CHECK(ordered(1.0).length == 11.0 * mm);
  CHECK(ordered(6.0).length == 12.0 * mm);  // 6 mm do not pass the wall
}

TEST_CASE("a lag screw beside the plate counts from the bone and gets a gliding hole of its thread",
          "[models][review]") {
  Construct construct = plated_tube();
  Screw lag = construct.screws.front();
  lag.label = "L1";
  lag.hole = 0;
  lag.kind = ScrewKind::lag;
  lag.size = find_screw_size("HA 3.5").value();
  lag.entry = FreeEntry{80.0 * mm, 90.0 * degree};
  construct.screws.insert(construct.screws.begin(), lag);
  const Plan plan = make_plan(construct);
  const auto& ordered = screw_of(plan, "L1");
  CHECK(ordered.measured.value() == Approx(14.0).epsilon(1e-9));
  CHECK(ordered.length == 16.0 * mm);
  CHECK(ordered.drill == 2.5 * mm);
  CHECK(ordered.gliding == 3.5 * mm);
  CHECK(plan.screws.back().label == "L1");  // after those in holes
  CHECK_FALSE(screw_of(plan, "S1").gliding);
  CHECK_FALSE(screw_of(plan, "S1").drill);
  CHECK(any_says(plan.notes, "The drill for S1"));
  CHECK(note_of<UnknownDrills>(plan).screws.front().screw == construct.screws[1].id);
  CHECK(note_of<GlidingHoleNote>(plan).screw.label == "L1");
  CHECK(note_of<GlidingHoleNote>(plan).diameter == 3.5 * mm);
  const auto entry = note_of<FreeEntryNote>(plan);
  CHECK(entry.position == 80.0 * mm);
  CHECK(in_degrees(entry.around) == Approx(90.0));
  CHECK(note_sentence(entry) ==
        "L1: enters 80 mm from the bone's proximal end, 90 deg round it from the plate's side towards medial.");
  CHECK(note_of<LengthsNote>(plan).step == construct.stock.screw_step);
}

TEST_CASE("a compression screw is drilled off its slot's middle by its slide", "[models][review]") {
  Construct construct = plated_tube();
  for (auto& hole : only(construct.plates).holes) {
    hole.shape = HoleShape::slot;
    hole.slot_length = 5.0 * mm;
  }
  for (auto& screw : construct.screws) screw.kind = ScrewKind::cortical;
  construct.screws[3].kind = ScrewKind::compression;
  construct.screws[3].slide = 0.7 * mm;
  const Plan plan = make_plan(construct);
  CHECK(plan.slots == plan.holes);
  CHECK(plan.screws[3].off_centre.value() == Approx(0.7));
  CHECK(plan.screws[2].off_centre.value() == 0.0);
  CHECK(any_says(plan.notes, "drill 0.7 mm off the middle of the slot, away from the fracture"));
  CHECK(note_of<OffCentreNote>(plan).screw.screw == construct.screws[3].id);
  CHECK(note_of<OffCentreNote>(plan).off_centre.value() == Approx(0.7));
  CHECK(plan.steps[3] == "insert and tighten " + construct.screws[3].label);
}

TEST_CASE("on a bone that is a circle's arc every interval bends by its length over the plate's radius",
          "[models][review]") {
  Construct construct = plated_tube();
  const double radius = 400.0;
  arc_bone(construct.bone, radius);
  const Plan plan = make_plan(construct);
  REQUIRE(plan.bends.size() == 11);
  double sum = 0.0;
  for (const auto& bend : plan.bends) {
    INFO("from hole " << bend.from_hole);
    const bool is_end = bend.from_hole == 0 || bend.to_hole == 11;
    const double length = is_end ? 6.5 : 11.0;
    CHECK(bend.bend.value() == Approx(length / (radius + tube_to_plate)).epsilon(0.01));
    sum += bend.bend.value();
  }
  CHECK(sum == Approx(112.0 / (radius + tube_to_plate)).epsilon(1e-3));
  CHECK(plan.bends.front().at.value() == Approx(3.25));
  CHECK(plan.bends[5].at.value() == Approx(56.0));
}

TEST_CASE("bends add up to the turn between the plate's ends, and a hollow bone bends the other way",
          "[models][review]") {
  Construct construct = gapstrain::tests::random_construct(7);
  const BoneShape bone(construct.bone, only(construct.plates).aspect);
  const PlateShape shape(only(construct.plates), bone);
  const Eigen::Vector3d first = shape.mid_surface(0.0, 0.0).normal;
  const Eigen::Vector3d last = shape.mid_surface(only(construct.plates).length.value(), 0.0).normal;
  double sum = 0.0;
  for (const auto& bend : make_plan(construct).bends) sum += bend.bend.value();
  CHECK(sum == Approx(std::atan2(last.x(), last.z()) - std::atan2(first.x(), first.z())).margin(1e-12));

  Construct hollow = plated_tube();
  arc_bone(hollow.bone, 400.0);
  only(hollow.plates).aspect = Aspect::caudal;
  for (const auto& bend : make_plan(hollow).bends) CHECK(bend.bend < Angle());
}

TEST_CASE("a straight plate is not bent", "[models][review]") {
  Construct construct = plated_tube();
  arc_bone(construct.bone, 900.0);
  only(construct.plates).contour = Contour::straight;
  CHECK(make_plan(construct).bends.empty());
  for (const auto& bend : make_plan(plated_tube()).bends) CHECK(bend.bend.value() == Approx(0.0).margin(1e-12));
}

TEST_CASE("the prebend is the angle between two straight halves", "[models][review]") {
  Construct construct = plated_tube();
  CHECK_FALSE(make_plan(construct).prebend);
  only(construct.plates).prebend = 1.5 * mm;
  const auto prebend = make_plan(construct).prebend;
  REQUIRE(prebend);
  CHECK(prebend->at.value() == Approx(56.0));
  CHECK(in_degrees(prebend->bend) == Approx(2.0 * std::atan(1.5 / 56.0) / degree.value()));
  CHECK(any_says(make_plan(construct).notes, "Prebend"));
}

TEST_CASE("a bend of more than 5 degrees at a locking hole is noted", "[models][review]") {
  // Gallagher, Silva & Ricci 2014, J. Orthop. Trauma 28:427 (from the abstract).
  const auto notes = [](double turn) {
    Construct construct = plated_tube();
    arc_bone(construct.bone, 11.0 / (turn * degree.value()) - tube_to_plate);
    return make_plan(construct).notes;
  };
  CHECK_FALSE(any_says(notes(4.9), "a locking head may not hold"));
  CHECK(any_says(notes(5.1), "a locking head may not hold"));
}

TEST_CASE("steps stand in the order in which they are done", "[models][review]") {
  Construct construct = plated_tube();
  CHECK(make_plan(construct).steps.size() == 6);
  CHECK(any_says(make_plan(construct).notes, "gives no steps"));
  construct.steps = {insert({"S10", "S1"}), insert({"S4"})};
  const auto steps = make_plan(construct).steps;
  CHECK(steps[0] == "lock S10, S1");
  CHECK(steps[1] == "lock S4");
  CHECK(steps.size() == 5);  // what no step names follows
}

TEST_CASE("a plan's screw knows its place in the construct and the step it goes in with", "[models][review]") {
  TubeSizes sizes;
  sizes.screws = {0, 2};  // holes 3, 5, 6 and 8
  Construct construct = plated_tube(sizes);
  Plan plan = make_plan(construct);
  REQUIRE(plan.screws.size() == 4);
  for (std::size_t k = 0; k < 4; ++k) {
    CHECK(plan.screws[k].screw == construct.screws[k].id);
    CHECK(plan.screws[k].step == static_cast<int>(k) + 1);  // without steps in the construct's order
  }
  // The steps put them in from distal, the last one twice.
  Step first, both, again, last;
  first.insert = {construct.screws[3].label};
  both.insert = {construct.screws[0].label, construct.screws[2].label};
  again.remove = {construct.screws[3].label};
  last.insert = {construct.screws[3].label, construct.screws[1].label};
  construct.steps = {first, both, again, last};
  plan = make_plan(construct);
  std::vector<int> steps;
  for (const auto& screw : plan.screws) steps.push_back(screw.step);
  CHECK(steps == std::vector<int>{2, 4, 2, 1});
}
