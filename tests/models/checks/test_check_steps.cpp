#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

// Two cortical screws next to the gap and a wire in hole 4, in an order without fault.
Construct operated() {
  Construct construct = sound_construct();
  construct.screws[2].kind = construct.screws[3].kind = ScrewKind::cortical;  // S3 and S6
  TemporaryHold wire;
  wire.label = "W";
  wire.hole = 4;
  wire.diameter = 1.6 * mm;
  construct.temporary = {wire};
  construct.steps = {{{"W"}, {"S3"}, {"S3"}, {}, {}},
                     {{}, {"S6"}, {"S6"}, {"W"}, {}},
                     {{}, {"S1", "S2"}, {}, {}, {}},
                     {{}, {"S7", "S8"}, {}, {}, find_tissue("hard-callus")}};
  only(construct.fractures).gap = 0.7 * mm;
  return construct;
}

template <class Spoil>
void check_steps_error(const std::string& where, const std::string& words, Spoil spoil) {
  Construct construct = operated();
  spoil(construct);
  check_finds_only_error(construct, where, words);
}

template <class Spoil>
void check_warning(const std::string& where, const std::string& words, Spoil spoil) {
  Construct construct = operated();
  spoil(construct);
  check_finds_only_warning(construct, where, words);
}

}  // namespace

TEST_CASE("an operation in a possible order has no fault", "[models][parts]") {
  for (const auto& problem : check(operated())) FAIL_CHECK(problem.where << ": " << problem.message);
  Construct construct = operated();
  construct.steps.push_back({{}, {}, {}, {"S3"}, {}});  // taken out weeks later
  construct.steps.push_back({{}, {"S3"}, {"S3"}, {}, {}});
  CHECK(check(construct).empty());
}

TEST_CASE("steps call parts by labels that must be known", "[models][parts]") {
  check_steps_error("step[0].place[0]", "is called \"K\"; known are S1, S2, S3, S6, S7, S8, W", [](Construct& c) {
    c.steps[0].place = {"K", "W"};
  });
  check_steps_error("step[3].insert[2]", "\"S9\"", [](Construct& c) { c.steps[3].insert.push_back("S9"); });
  check_steps_error("step[1].tighten[1]", "\"S5\"", [](Construct& c) { c.steps[1].tighten.push_back("S5"); });
  check_steps_error("step[1].remove[0]", "\"w\"", [](Construct& c) { c.steps[1].remove = {"w", "W"}; });
}

TEST_CASE("two parts that sit in no hole do not share a label either", "[models][parts]") {
  const auto told_twice = [](const Construct& construct, const std::string& label) {
    const auto problems = check(construct);
    return std::any_of(problems.begin(), problems.end(), [&](const Problem& problem) {
      return problem.severity == Severity::error &&
             problem.message.starts_with("The label \"" + label + "\" is given twice");
    });
  };
  Construct screwed = sound_construct();
  for (const double around : {40.0, 70.0}) {  // side by side, so that their places read alike
    Screw lag = screwed.screws[0];
    lag.label = "L1";
    lag.kind = ScrewKind::lag;
    lag.hole = 0;
    lag.entry = FreeEntry{73.0 * mm, around * degree};
    screwed.screws.push_back(lag);
  }
  CHECK(told_twice(screwed, "L1"));
  screwed.screws.back().label = "L2";
  CHECK_FALSE(told_twice(screwed, "L1"));

  Construct clamped = operated();
  TemporaryHold clamp;
  clamp.label = "K1";
  clamp.kind = HoldKind::fracture_clamp;
  clamp.force = 50.0 * newton;
  clamped.temporary.insert(clamped.temporary.end(), 2, clamp);
  CHECK(told_twice(clamped, "K1"));
  clamped.temporary.back().label = "K2";
  CHECK_FALSE(told_twice(clamped, "K1"));
}

TEST_CASE("labels that steps call parts by are there and different", "[models][parts]") {
  check_steps_error("screw[5].label", "\"S7\" is given twice, to the part in hole 7 and to the one in hole 8",
                    [](Construct& c) { c.screws[5].label = "S7"; });
  check_steps_error("temporary[0].label", "\"S1\" is given twice",
                    [](Construct& c) { c.temporary[0].label = "S1"; });
  check_steps_error("screw[4].label", "has none", [](Construct& c) { c.screws[4].label.clear(); });
  check_steps_error("temporary[0].label", "has none", [](Construct& c) { c.temporary[0].label.clear(); });
}

TEST_CASE("without steps a label may be absent, but not be there twice", "[models][parts]") {
  check_construct_error("screw[5].label", "\"S7\" is given twice", [](Construct& c) { c.screws[5].label = "S7"; });
  Construct construct = sound_construct();
  for (auto& screw : construct.screws) screw.label.clear();
  CHECK(check(construct).empty());
}

TEST_CASE("what is in cannot go in again, and what is not in cannot come out", "[models][parts]") {
  check_steps_error("step[2].insert[1]", "\"S6\" is in already", [](Construct& c) {
    c.steps[2].insert = {"S1", "S6", "S2"};
  });
  check_steps_error("step[0].place[1]", "\"W\" is in already", [](Construct& c) {
    c.steps[0].place = {"W", "W"};
  });
  check_steps_error("step[0].remove[0]", "\"S6\" is not in", [](Construct& c) { c.steps[0].remove = {"S6"}; });
  check_steps_error("step[3].remove[0]", "\"W\" is not in", [](Construct& c) { c.steps[3].remove = {"W"}; });
}

TEST_CASE("screws are inserted, wires and clamps are placed", "[models][parts]") {
  check_steps_error("step[1].place[0]", "\"S3\" is a screw", [](Construct& c) { c.steps[1].place = {"S3"}; });
  check_steps_error("step[1].insert[1]", "\"W\" is a wire or clamp",
                    [](Construct& c) { c.steps[1].insert.push_back("W"); });
}

TEST_CASE("only ball heads that are in and not yet tight are tightened", "[models][parts]") {
  check_steps_error("step[3].tighten[0]", "locks as it goes in",
                    [](Construct& c) { c.steps[3].tighten = {"S7"}; });
  check_steps_error("step[0].tighten[1]", "\"S6\" is not in",
                    [](Construct& c) { c.steps[0].tighten.push_back("S6"); });
  check_steps_error("step[2].tighten[0]", "\"S3\" is tight already",
                    [](Construct& c) { c.steps[2].tighten = {"S3"}; });
  check_steps_error("step[0].tighten[1]", "\"W\" is a wire or clamp",
                    [](Construct& c) { c.steps[0].tighten.push_back("W"); });
}

TEST_CASE("every screw is inserted and every step does something", "[models][parts]") {
  check_steps_error("screw[1]", "\"S2\" is never inserted", [](Construct& c) { c.steps[2].insert = {"S1"}; });
  check_steps_error("step[4]", "does nothing", [](Construct& c) { c.steps.emplace_back(); });
}

TEST_CASE("a loose ball head and a hold left in or left out are pointed out", "[models][parts]") {
  check_warning("screw[3]", "\"S6\" is inserted but never tightened",
                [](Construct& c) { c.steps[1].tighten.clear(); });
  check_warning("temporary[0]", "still in after the last step", [](Construct& c) { c.steps[1].remove.clear(); });
  check_warning("temporary[0]", "never placed", [](Construct& c) {
    c.steps[0].place.clear();
    c.steps[1].remove.clear();
  });
  check_warning("temporary[0]", "no steps", [](Construct& c) { c.steps.clear(); });
}

TEST_CASE("a tissue needs a gap and sound constants in a step too", "[models][parts]") {
  check_steps_error("step[3].tissue.poissons_ratio", "0.6",
                    [](Construct& c) { c.steps[3].tissue->poissons_ratio = 0.6; });
  check_steps_error("step[3].tissue", "no room for a tissue", [](Construct& c) {
    only(c.fractures).gap = 0.0 * mm;
    only(c.fractures).tissue.reset();
  });
}

TEST_CASE("each fragment is still held after the last step", "[models][parts]") {
  check_steps_error("step", "After the last step no screw holds the plate to the distal fragment",
                    [](Construct& c) {
                      c.steps.push_back({{}, {}, {}, {"S6", "S8", "S7"}, {}});
                    });
  check_warning("screw", "Only one screw holds the distal fragment", [](Construct& c) {
    c.steps.push_back({{}, {}, {}, {"S6", "S8"}, {}});
  });
}
