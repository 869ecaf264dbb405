// Rules on where screws stand, how they are turned and in which order they go in, each at its bound, just inside
// and just outside.
#include "models/rules/rules.h"
#include "tests/models/constructs.h"
#include "tests/models/rules/arc_bone.h"
#include "tests/models/rules/review_help.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gapstrain::models;
using namespace gapstrain::tests;  // NOLINT: helpers of these tests

namespace {

// Ten holes, five a side: 1 to 5 proximal, 6 to 10 distal.
Construct tube(std::vector<int> screws, double gap = 2.0) {
  TubeSizes sizes;
  sizes.screws = std::move(screws);
  sizes.gap = gap;
  return plated_tube(sizes);
}

// Slots, a compression screw in hole 6; holes 1, 3, 5 and 6, 8, 10 are filled.
Construct compressed() {
  Construct construct = tube({0, 2, 4}, 0.7);
  for (auto& hole : only(construct.plates).holes) {
    hole.shape = HoleShape::slot;
    hole.slot_length = 5.0 * mm;
  }
  for (auto& screw : construct.screws) screw.kind = ScrewKind::cortical;
  screw_in(construct, 6).kind = ScrewKind::compression;
  return construct;
}

std::vector<Step> one_by_one(const std::vector<std::string>& labels, const Construct& construct) {
  std::vector<Step> steps;
  for (const auto& label : labels) {
    const auto screw = std::find_if(construct.screws.begin(), construct.screws.end(),
                                    [&](const Screw& s) { return s.label == label; });
    steps.push_back(insert({label}, is_tightened(*screw) ? Labels{label} : Labels{}));
  }
  return steps;
}

}  // namespace

TEST_CASE("two to three holes stay empty over a simple fracture that is bridged", "[models][review]") {
  // Gautier & Sommer 2003, Injury 34 Suppl. 2 (from memory).
  const std::string rule = "holes over the fracture when bridging";
  Construct construct = tube({0, 1, 2, 4});
  CHECK(verdict_of(construct, rule) == Verdict::broken);  // 0
  take_out(construct, 5);
  CHECK(verdict_of(construct, rule) == Verdict::broken);  // 1
  take_out(construct, 6);
  CHECK(says(figure_text(finding_of(construct, rule)), "2 empty; working length 33 mm, 2.4 bone diameters"));
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  take_out(construct, 4);
  CHECK(verdict_of(construct, rule) == Verdict::kept);  // 3
  take_out(construct, 7);
  CHECK(verdict_of(construct, rule) == Verdict::broken);  // 4
  CHECK(verdict_of(compressed(), rule) == Verdict::not_applicable);
}

TEST_CASE("screws stand as close to a comminuted zone as bone allows", "[models][review]") {
  // Gautier & Sommer 2003, Injury 34 Suppl. 2 (from memory). Holes 4 and 7 lie 16.5 mm from the middle; their
  // screws of 3 mm need 4.5 mm to the edge.
  const std::string rule = "holes over the fracture when bridging";
  const auto pieces = [](std::vector<int> screws, double gap) {
    Construct construct = tube(std::move(screws), gap);
    only(construct.fractures).pattern = FracturePattern::comminuted;
    return construct;
  };
  CHECK(verdict_of(pieces({1, 2, 4}, 12.0), rule) == Verdict::kept);
  const auto too_far = finding_of(pieces({2, 3, 4}, 24.0), rule);
  CHECK(too_far.verdict == Verdict::broken);
  CHECK(says(advice_text(too_far), "hole 4"));
  CHECK(says(advice_text(too_far), "hole 7"));
  CHECK(verdict_of(pieces({2, 3, 4}, 24.02), rule) == Verdict::kept);
}

TEST_CASE("screws are spread over each fragment", "[models][review]") {
  // Common practice, no source.
  const std::string rule = "spread of the screws";
  CHECK(verdict_of(tube({1, 2, 4}), rule) == Verdict::kept);
  CHECK(verdict_of(tube({1, 2, 3}), rule) == Verdict::kept);
  const auto ends = finding_of(tube({0, 1, 2}), rule);
  CHECK(ends.verdict == Verdict::broken);
  CHECK(says(advice_text(ends), "out to hole 1"));
  CHECK(says(advice_text(ends), "out to hole 10"));

  Construct construct = compressed();
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  take_out(construct, 5);  // leaves holes 5 and 4 empty, next to the fracture
  const auto inner = finding_of(construct, rule);
  CHECK(inner.verdict == Verdict::broken);
  CHECK(says(advice_text(inner), "in to hole 5 or 4"));
}

TEST_CASE("a screw leaves a diameter of bone beside its thread to the fracture and to the bone's end",
          "[models][review]") {
  // Common practice, no source. Threads of 3 mm: 4.5 mm from the axis.
  const std::string to_fracture = "nearest screw to the fracture", to_end = "nearest screw to the bone's end";
  CHECK(verdict_of(tube({1, 2, 4}, 24.0), to_fracture) == Verdict::kept);  // 16.5 - 12
  const auto near = finding_of(tube({1, 2, 4}, 24.1), to_fracture);
  CHECK(near.verdict == Verdict::broken);
  CHECK(says(advice_text(near), "0.05 mm away"));

  // Square to an oblique cut the same place is nearer.
  Construct oblique = tube({1, 2, 4}, 20.0);
  CHECK(says(figure_text(finding_of(oblique, to_fracture)), "6.5 mm"));
  only(oblique.fractures).obliquity = 45.0 * degree;
  only(oblique.fractures).direction = 90.0 * degree;  // passes the plate's line where a transverse cut does
  CHECK(says(figure_text(finding_of(oblique, to_fracture)), "4.6 mm"));  // 6.5 cos 45 degrees

  TubeSizes sizes;
  sizes.plate_length = 106.0;  // its outermost holes lie 49.5 mm from the middle
  sizes.length = 108.0;
  CHECK(verdict_of(plated_tube(sizes), to_end) == Verdict::kept);
  sizes.length = 107.9;
  CHECK(verdict_of(plated_tube(sizes), to_end) == Verdict::broken);
}

TEST_CASE("a thread takes at most 30 % of the bone's width", "[models][review]") {
  // Common practice, no source; 33 %: Hoon et al. 2021 (from the abstract).
  const std::string rule = "screw thread against the bone's width";
  Construct construct = tube({1, 2, 4});  // 14 mm wide
  auto& thread = screw_in(construct, 7).size.thread_diameter;
  thread = 4.2 * mm;
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  thread = 4.21 * mm;
  const auto thick = finding_of(construct, rule);
  CHECK(thick.verdict == Verdict::broken);
  CHECK(says(figure_text(thick), "at S7"));
  CHECK(advice_text(thick) == "Use screws of at most 4.2 mm there.");
  thread = 4.63 * mm;
  CHECK(says(advice_text(finding_of(construct, rule)), "above 33 %"));
  // The width that counts is the one square to the screw, here mediolateral.
  thread = 4.2 * mm;
  construct.bone.stations.front().width_craniocaudal = 10.0 * mm;
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  construct.bone.stations.front().width_mediolateral = 13.9 * mm;
  CHECK(verdict_of(construct, rule) == Verdict::broken);
}

TEST_CASE("locking screws are tilted by at most what their system allows, 12 degrees unless entered",
          "[models][review]") {
  // Common practice, no source.
  const std::string rule = "tilt of the locking screws";
  Construct construct = tube({1, 2, 4});
  CHECK(figure_text(finding_of(construct, rule)) == "all are square");
  Screw& screw = construct.screws[1];
  screw.tilt_along = -12.0 * degree;
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  screw.tilt_along = -12.01 * degree;
  const auto steep = finding_of(construct, rule);
  CHECK(steep.verdict == Verdict::broken);
  CHECK(says(advice_text(steep), "Turn " + screw.label + " back to 12 deg"));
  only(construct.plates).angle_limit = 15.0 * degree;
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  // Along and across together: atan(hypot(tan 9, tan 8)) is 11.96, with 8.2 across 12.09 degrees.
  only(construct.plates).angle_limit = 12.0 * degree;
  screw.tilt_along = 9.0 * degree;
  screw.tilt_across = 8.0 * degree;
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  screw.tilt_across = 8.2 * degree;
  CHECK(verdict_of(construct, rule) == Verdict::broken);
  CHECK(verdict_of(compressed(), rule) == Verdict::not_applicable);
}

TEST_CASE("a plate bends by at most 5 degrees at a locking hole", "[models][review]") {
  // Gallagher, Silva & Ricci 2014, J. Orthop. Trauma 28:427 (from the abstract). On a bone that is a circle's arc
  // a plate turns by a pitch over its own radius from half-way to half-way.
  const std::string rule = "bend at a locking hole";
  const double pitch = 11.0, to_plate = 7.0 + 1.5 + 1.25;  // from the bone's axis to the plate's middle
  const auto on_arc = [&](double turn) {
    Construct construct = tube({1, 2, 3});
    arc_bone(construct.bone, pitch / (turn * degree.value()) - to_plate);
    return construct;
  };
  CHECK(verdict_of(on_arc(4.9), rule) == Verdict::kept);
  CHECK(verdict_of(on_arc(5.1), rule) == Verdict::broken);
  Construct straight = on_arc(5.1);
  only(straight.plates).contour = Contour::straight;
  CHECK(figure_text(finding_of(straight, rule)) == "none");
}

TEST_CASE("nothing holds the sliding fragment before its compression screw is tightened", "[models][review]") {
  // Common practice, no source; tight neutral screws: Csiszer et al. 2012, Vet. Surg. 41:300 (from the abstract).
  const std::string rule = "order of pressing";
  Construct construct = compressed();
  construct.steps = one_by_one({"S5", "S1", "S6", "S10", "S3", "S8"}, construct);
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  construct.steps = one_by_one({"S5", "S10", "S6", "S1", "S3", "S8"}, construct);
  const auto neutral = finding_of(construct, rule);
  CHECK(neutral.verdict == Verdict::broken);
  CHECK(says(advice_text(neutral), "Insert S10 after S6 is tightened"));
  // In, but not tight yet.
  construct.steps = {insert({"S5", "S10", "S6"}, {"S5"}), tighten({"S6"}), tighten({"S10"})};
  CHECK(verdict_of(construct, rule) == Verdict::kept);

  screw_in(construct, 10).kind = ScrewKind::locking;
  CHECK(verdict_of(construct, rule) == Verdict::broken);
  construct.steps = {insert({"S5", "S6"}, {"S5"}), tighten({"S6"}), insert({"S10"})};
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  // The other fragment is to be locked first: it carries the plate.
  screw_in(construct, 5).kind = ScrewKind::locking;
  construct.steps = one_by_one({"S5", "S6", "S10"}, construct);
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  CHECK(verdict_of(tube({1, 2, 4}), rule) == Verdict::not_applicable);
  // Without steps screws go in as they are listed: S5 locks, S6 presses, S10 locks.
  construct.steps.clear();
  CHECK(verdict_of(construct, rule) == Verdict::kept);
  std::swap(screw_in(construct, 6), screw_in(construct, 10));
  CHECK(says(figure_text(finding_of(construct, rule)), "as the screws are listed"));
}

TEST_CASE("fragments are not both locked before a clamp or a lag screw pulls them together", "[models][review]") {
  // Common practice, no source.
  const std::string rule = "order of pressing";
  Construct construct = tube({1, 2, 4}, 0.5);
  construct.temporary = {{"forceps", HoldKind::fracture_clamp, 0, {}, {}, 100.0 * newton}};
  construct.steps = one_by_one({"S1", "S2"}, construct);
  construct.steps.push_back(place({"forceps"}));
  const auto kept = construct;
  CHECK(verdict_of(kept, rule) == Verdict::kept);
  construct.steps[1].insert = {"S10"};
  const auto locked = finding_of(construct, rule);
  CHECK(locked.verdict == Verdict::broken);
  CHECK(says(figure_text(locked), "S1 and S10 are in before forceps is closed"));
  // Locked within the same step: clamps are closed before screws go in.
  construct.steps[1].place = {"forceps"};
  construct.steps.pop_back();
  CHECK(verdict_of(construct, rule) == Verdict::kept);
}

TEST_CASE("ball heads press the plate onto a fragment before a screw locks in it", "[models][review]") {
  // Common practice, no source.
  const std::string rule = "order of ball and locking heads";
  Construct construct = tube({1, 2, 4});
  CHECK(verdict_of(construct, rule) == Verdict::not_applicable);
  screw_in(construct, 1).kind = ScrewKind::cortical;
  construct.steps = one_by_one({"S3", "S1", "S4", "S7", "S8", "S10"}, construct);
  const auto late = finding_of(construct, rule);
  CHECK(late.verdict == Verdict::broken);
  CHECK(says(figure_text(late), "S3 is in before S1 is tightened"));
  construct.steps = one_by_one({"S7", "S1", "S3", "S4", "S8", "S10"}, construct);  // S7 is in the other fragment
  CHECK(verdict_of(construct, rule) == Verdict::kept);
}
