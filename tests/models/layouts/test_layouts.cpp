// Admissible layouts against brute force: every choice of a screw or none a hole, held against the rules and
// against `check` of the whole construct.
#include "models/findings/model_error.h"
#include "models/layouts/layouts.h"
#include "models/measures/figures.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <optional>
#include <random>
#include <set>
#include <string>
#include <utility>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but constructs

namespace {

using Choice = std::set<std::pair<int, ScrewKind>>;  // hole and kind of each screw

// A tube with `holes_a_side` round holes a side and a locking screw in the outermost two of each.
Construct tube(int holes_a_side, double pitch = 11.0, double gap = 3.0) {
  tests::TubeSizes sizes;
  sizes.holes_a_side = holes_a_side;
  sizes.pitch = pitch;
  sizes.gap = gap;
  sizes.plate_length = 2.0 * (sizes.first_hole + pitch * (holes_a_side - 1) + 5.0);
  sizes.length = sizes.plate_length + 50.0;
  sizes.screws = {holes_a_side - 2, holes_a_side - 1};
  Construct construct = tests::plated_tube(sizes);
  construct.layouts.emplace().least_per_fragment = 1;
  construct.layouts->kinds = {ScrewKind::locking};
  return construct;
}

void make_slot(Construct& construct, int hole) {
  PlateHole& slot = only(construct.plates).holes.at(static_cast<std::size_t>(hole - 1));
  slot.shape = HoleShape::slot;
  slot.slot_length = 1.7 * slot.diameter;
}

// One more screw for the construct, like its first.
Screw& add_screw(Construct& construct, int hole, ScrewKind kind) {
  Screw screw = construct.screws.front();
  screw.hole = hole;
  screw.label = "extra";
  screw.kind = kind;
  if (kind != ScrewKind::locking) screw.preload = 200.0 * newton;
  construct.screws.push_back(screw);
  return construct.screws.back();
}

Choice choice_of(const std::vector<Screw>& screws) {
  Choice choice;
  for (const auto& screw : screws) choice.insert({screw.hole, screw.kind});
  return choice;
}

std::vector<Screw> screws_of(const Layouts& layouts, std::size_t row) {
  std::vector<Screw> screws;
  for (const int index : layouts.chosen(row))
    screws.push_back(layouts.candidates().at(static_cast<std::size_t>(index)));
  return screws;
}

bool has_errors(const Construct& construct) {
  const auto problems = check(construct);
  return std::any_of(problems.begin(), problems.end(),
                     [](const Problem& problem) { return problem.severity == Severity::error; });
}

bool is_among(const std::vector<int>& holes, int hole) {
  return std::find(holes.begin(), holes.end(), hole) != holes.end();
}

// Whether the rules allow so many screws a side, and these holes.
bool keeps_rules(const Construct& construct, const std::vector<Screw>& screws) {
  const LayoutRules& rules = *construct.layouts;
  const double fracture = fracture_along(construct);
  int proximal = 0, distal = 0;
  std::set<int> filled;
  for (const auto& screw : screws) {
    if (screw.kind == ScrewKind::lag) continue;
    if (is_among(rules.barred, screw.hole)) return false;
    filled.insert(screw.hole);
    const auto& hole = only(construct.plates).holes.at(static_cast<std::size_t>(screw.hole - 1));
    ++(hole.position.value() < fracture ? proximal : distal);
  }
  return std::min(proximal, distal) >= rules.least_per_fragment &&
         std::max(proximal, distal) <= rules.most_per_fragment.value_or(100) &&
         proximal + distal <= rules.most_in_all.value_or(100) &&
         std::all_of(rules.filled.begin(), rules.filled.end(), [&](int hole) { return filled.contains(hole); });
}

bool fits(ScrewKind kind, const PlateHole& hole) {
  if (kind == ScrewKind::locking) return hole.shape == HoleShape::round;
  return kind != ScrewKind::compression || hole.shape == HoleShape::slot;
}

// The hole's own screw if its kind is allowed, else the first kind allowed that fits, straight, of the size of the
// construct's first one; nothing when none fits.
std::optional<Screw> expected_screw(const Construct& construct, int hole) {
  const auto& kinds = construct.layouts->kinds;
  for (const auto& own : construct.screws)
    if (own.hole == hole && std::find(kinds.begin(), kinds.end(), own.kind) != kinds.end()) return own;
  for (const ScrewKind kind : kinds)
    for (const auto& like : construct.screws) {
      if (like.kind != kind || !fits(kind, only(construct.plates).holes.at(static_cast<std::size_t>(hole - 1))))
        continue;
      Screw screw = like;
      screw.hole = hole;
      screw.label.clear();
      screw.tilt_along = screw.tilt_across = 0.0 * radian;
      return screw;
    }
  return std::nullopt;
}

// Every choice that the rules and `check` let pass.
std::set<Choice> by_brute_force(const Construct& construct) {
  Construct alone = construct;
  alone.layouts.reset();
  const auto holes = static_cast<int>(only(construct.plates).holes.size());
  std::vector<Screw> screws;
  for (const auto& screw : construct.screws)
    if (screw.kind == ScrewKind::lag) screws.push_back(screw);
  std::set<Choice> all;
  const auto visit = [&](const auto& self, int hole) -> void {
    if (hole > holes) {
      if (!keeps_rules(construct, screws)) return;
      alone.screws = screws;
      if (!has_errors(alone)) all.insert(choice_of(screws));
      return;
    }
    self(self, hole + 1);
    if (const auto screw = expected_screw(construct, hole)) {
      screws.push_back(*screw);
      self(self, hole + 1);
      screws.pop_back();
    }
  };
  visit(visit, 1);
  return all;
}

std::set<Choice> all_of(const Layouts& layouts) {
  std::set<Choice> all;
  for (std::size_t row = 0; row < layouts.size(); ++row) all.insert(choice_of(screws_of(layouts, row)));
  CHECK(all.size() == layouts.size());  // none twice
  return all;
}

// The layouts are those of brute force, and the construct's own is found just when it is one of them.
std::size_t check_against_brute_force(const Construct& construct) {
  for (const auto& problem : check(construct)) UNSCOPED_INFO(problem.where << ": " << problem.message);
  REQUIRE_FALSE(has_errors(construct));
  const Layouts layouts(construct);
  const auto expected = by_brute_force(construct);
  CHECK(all_of(layouts) == expected);
  const Choice own = choice_of(construct.screws);
  CHECK(layouts.own().has_value() == expected.contains(own));
  if (layouts.own()) CHECK(choice_of(screws_of(layouts, *layouts.own())) == own);
  return layouts.size();
}

std::size_t binomial(std::size_t n, std::size_t k) { return k == 0 ? 1 : binomial(n - 1, k - 1) * n / k; }

}  // namespace

TEST_CASE("free holes give as many layouts as there are ways to draw them", "[models][studies][layouts]") {
  Construct construct = tube(7);
  LayoutRules& rules = *construct.layouts;
  for (const int least : {1, 4}) {
    rules.least_per_fragment = least;
    for (const int most : {least, 5}) {
      rules.most_per_fragment = most;
      std::size_t a_side = 0;
      for (int k = least; k <= most; ++k) a_side += binomial(7, static_cast<std::size_t>(k));
      CHECK(Layouts(construct).size() == a_side * a_side);
    }
  }
  rules.least_per_fragment = 1;
  rules.most_per_fragment.reset();
  CHECK(Layouts(construct).size() == 127 * 127);
  // Of 14 holes at most three, at least one a side.
  rules.most_in_all = 3;
  CHECK(Layouts(construct).size() == 7 * 7 + 2 * 7 * binomial(7, 2));
}

TEST_CASE("layouts are those of brute force for any rules", "[models][studies][layouts]") {
  std::mt19937 random(3);
  const auto whole = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
  for (int k = 0; k < 8; ++k) {
    Construct construct = tube(3);
    LayoutRules& rules = *construct.layouts;
    rules.least_per_fragment = whole(1, 2);
    if (whole(0, 1) == 1) rules.most_per_fragment = whole(rules.least_per_fragment, 3);
    if (whole(0, 1) == 1) rules.most_in_all = whole(2 * rules.least_per_fragment, 6);
    if (whole(0, 1) == 1) rules.barred = {whole(1, 3)};
    if (whole(0, 1) == 1) rules.filled = {whole(4, 6)};
    CAPTURE(k, rules.least_per_fragment, rules.most_per_fragment.value_or(-1), rules.most_in_all.value_or(-1),
            rules.barred, rules.filled);
    CHECK(check_against_brute_force(construct) > 0);
  }
}

TEST_CASE("a hole over the gap is left out with a sentence", "[models][studies][layouts]") {
  const Construct construct = tube(3, 11.0, 12.0);
  const Layouts layouts(construct);
  REQUIRE(layouts.left_out().size() == 2);
  CHECK_THAT(layouts.left_out()[0], Catch::StartsWith("hole 3: "));
  CHECK_THAT(layouts.left_out()[1], Catch::StartsWith("hole 4: "));
  CHECK(check_against_brute_force(construct) == 3 * 3);
}

TEST_CASE("a hole takes its own screw, or the first kind allowed that fits it", "[models][studies][layouts]") {
  using enum ScrewKind;
  Construct construct = tube(3);
  for (const int hole : {3, 4}) make_slot(construct, hole);
  construct.screws[1].kind = cortical;  // in the round hole 2
  add_screw(construct, 4, compression).slide = 0.2 * mm;
  using Kinds = std::vector<ScrewKind>;
  const auto check_candidates = [&](const Kinds& allowed, const Kinds& expected) {
    construct.layouts->kinds = allowed;
    const Layouts layouts(construct);
    Kinds kinds;
    for (const auto& screw : layouts.candidates()) kinds.push_back(screw.kind);
    CHECK(kinds == expected);
  };

  check_candidates({locking, cortical, compression}, {locking, cortical, cortical, compression, locking, locking});
  CHECK(check_against_brute_force(construct) == 7 * 7);
  CHECK(Layouts(construct).own());

  check_candidates({cortical, locking}, {locking, cortical, cortical, cortical, locking, locking});
  CHECK(check_against_brute_force(construct) == 7 * 7);
  CHECK_FALSE(Layouts(construct).own());

  check_candidates({compression, locking}, {locking, locking, compression, compression, locking, locking});
  CHECK(check_against_brute_force(construct) == 7 * 7);

  check_candidates({locking}, {locking, locking, locking, locking});
  CHECK(check_against_brute_force(construct) == 3 * 3);
  const std::vector<std::string> left_out = {"hole 3: no screw of the kinds allowed fits it",
                                             "hole 4: no screw of the kinds allowed fits it"};
  CHECK(Layouts(construct).left_out() == left_out);
}

TEST_CASE("screws that meet in the bone are never chosen together", "[models][studies][layouts]") {
  Construct construct = tube(3, 6.0);
  construct.screws[1].tilt_along = 14.0 * degree;  // hole 2, towards hole 3
  CHECK(check_against_brute_force(construct) == (7 - 2) * 7);
}

TEST_CASE("an own layout that the rules do not allow is not found", "[models][studies][layouts]") {
  Construct construct = tube(3);
  CHECK(Layouts(construct).own());
  construct.layouts->barred = {1};
  CHECK_FALSE(Layouts(construct).own());
  construct.layouts->barred.clear();
  construct.layouts->filled = {3};
  CHECK_FALSE(Layouts(construct).own());
}

TEST_CASE("a layout's screws go in by hole, but with ball heads the own ones first",
          "[models][studies][layouts]") {
  Construct construct = tube(4);
  std::swap(construct.screws.front(), construct.screws.back());
  const auto holes_of = [](const Layouts& layouts, std::size_t row) {
    std::vector<int> holes;
    for (const auto& screw : screws_of(layouts, row)) holes.push_back(screw.hole);
    return holes;
  };
  {
    const Layouts layouts(construct);
    for (std::size_t row = 0; row < layouts.size(); ++row) {
      const auto holes = holes_of(layouts, row);
      CHECK(std::is_sorted(holes.begin(), holes.end()));
    }
    for (std::size_t row = 0; row < layouts.size(); ++row)
      for (const auto& screw : screws_of(layouts, row))
        for (const auto& own : construct.screws)
          if (own.hole == screw.hole) CHECK(own == screw);
  }
  add_screw(construct, 3, ScrewKind::cortical);
  construct.layouts->kinds = {ScrewKind::locking, ScrewKind::cortical};
  const Layouts layouts(construct);
  REQUIRE(layouts.own());
  CHECK(screws_of(layouts, *layouts.own()) == construct.screws);
  // Own screws as the construct has them, others by hole after them.
  const std::vector<int> own_order = {8, 2, 7, 1, 3};
  for (std::size_t row = 0; row < layouts.size(); ++row) {
    std::vector<int> own, others;
    for (const auto& screw : screws_of(layouts, row)) {
      const bool is_own =
          std::find(construct.screws.begin(), construct.screws.end(), screw) != construct.screws.end();
      if (is_own) CHECK(others.empty());
      (is_own ? own : others).push_back(screw.hole);
    }
    CHECK(std::is_sorted(others.begin(), others.end()));
    std::vector<int> expected;
    for (const int hole : own_order)
      if (is_among(own, hole)) expected.push_back(hole);
    CHECK(own == expected);
  }
}

TEST_CASE("a lag screw stays in every layout and counts for no fragment", "[models][studies][layouts]") {
  Construct construct = tube(4);
  only(construct.fractures).gap = 0.0 * mm;
  only(construct.fractures).obliquity = 50.0 * degree;
  only(construct.fractures).direction = 70.0 * degree;
  Screw lag = construct.screws.front();
  lag.label = "lag";
  lag.kind = ScrewKind::lag;
  lag.hole = 0;
  lag.entry = FreeEntry{only(construct.fractures).position, 70.0 * degree};
  lag.preload = 200.0 * newton;
  construct.screws.push_back(lag);
  CHECK(check_against_brute_force(construct) == 15 * 15);
  const Layouts layouts(construct);
  for (std::size_t row = 0; row < layouts.size(); ++row) {
    const auto screws = screws_of(layouts, row);
    CHECK(std::count(screws.begin(), screws.end(), lag) == 1);
  }
}

TEST_CASE("where no layout is admissible a sentence says so", "[models][studies][layouts]") {
  Construct construct = tube(4, 11.0, 12.0);
  construct.layouts->least_per_fragment = 4;
  CHECK_THROWS_AS(Layouts(construct), ModelError);
  CHECK_THROWS_WITH(Layouts(construct), Catch::Contains("no choice of screws is admissible") &&
                                            Catch::Contains("4 a fragment at least") &&
                                            Catch::Contains("left out are hole 4: "));
  construct = tube(4);
  construct.layouts->filled = {4};
  make_slot(construct, 4);
  CHECK_THROWS_AS(Layouts(construct), ModelError);
}

}  // namespace gapstrain
