#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

// A construct that heals from an empty gap, with nothing wrong in it.
Construct healing_construct() {
  Construct construct = sound_construct();
  only(construct.fractures).tissue.reset();
  construct.healing =
      Healing{7.0, 13.0, *find_tissue("granulation-tissue"), *find_tissue("mature-woven-bone"), 2.0};
  return construct;
}

template <class Spoil>
void check_healing_error(const std::string& where, const std::string& words, Spoil spoil) {
  Construct construct = healing_construct();
  spoil(*construct.healing);
  check_finds_only_error(construct, where, words);
}

}  // namespace

TEST_CASE("healing that can be is not complained about", "[models][parts]") {
  CHECK(check(healing_construct()).empty());
  Construct at_limits = healing_construct();
  at_limits.healing->weeks_from = at_limits.healing->weeks_to = 1.0;
  at_limits.healing->activity_factor = 1.0;
  CHECK(check(at_limits).empty());
  at_limits.healing->weeks_to = 260.0;
  at_limits.healing->activity_factor = 100.0;
  CHECK(check(at_limits).empty());
}

TEST_CASE("union comes within five years, not before its earliest week", "[models][parts]") {
  check_healing_error("healing.weeks_from", "0.9 weeks; allowed are 1 to 260",
                      [](Healing& h) { h.weeks_from = 0.9; });
  check_healing_error("healing.weeks_to", "6 weeks at the latest", [](Healing& h) { h.weeks_to = 6.0; });
  check_healing_error("healing.weeks_to", "261 weeks at the latest", [](Healing& h) { h.weeks_to = 261.0; });
  check_healing_error("healing.weeks_to", "nan", [](Healing& h) { h.weeks_to = not_a_number; });
}

TEST_CASE("the tissue of union is stiffer than that of the first day", "[models][parts]") {
  check_healing_error("healing.tissue_at_union", "does not stiffen", [](Healing& h) { h.at_union = h.at_first; });
  check_healing_error("healing.tissue_at_union", "granulation-tissue (0.2 MPa)",
                      [](Healing& h) { std::swap(h.at_first, h.at_union); });
  Construct construct = healing_construct();
  construct.healing->at_first.poissons_ratio = 0.5;
  const auto problems = check(construct);
  REQUIRE_FALSE(problems.empty());
  CHECK(problems.front().where.starts_with("healing.tissue_at_first"));
}

TEST_CASE("a patient's activity is a factor from one up", "[models][parts]") {
  check_healing_error("healing.activity_factor", "0.99; allowed are 1",
                      [](Healing& h) { h.activity_factor = 0.99; });
  check_healing_error("healing.activity_factor", "101", [](Healing& h) { h.activity_factor = 101.0; });
  check_healing_error("healing.activity_factor", "nan", [](Healing& h) { h.activity_factor = not_a_number; });
}

TEST_CASE("healing takes the place of a tissue in the gap, which is said", "[models][parts]") {
  Construct construct = healing_construct();
  only(construct.fractures).tissue = find_tissue("soft-callus");
  check_finds_only_warning(construct, "healing", "puts the healing tissue in its place");
}

TEST_CASE("screws are stocked in steps of some length", "[models][parts]") {
  const auto error = [](const std::string& where, const std::string& words, const Stock& stock) {
    Construct construct = sound_construct();
    construct.stock = stock;
    check_finds_only_error(construct, where, words);
  };
  error("stock.screw_step", "it must be above 0 mm", {0.0 * mm, 2.0 * mm});
  error("stock.screw_step", "nan", {not_a_number * mm, 2.0 * mm});
  error("stock.screw_allowance", "-0.5 mm", {2.0 * mm, -0.5 * mm});
  Construct construct = sound_construct();
  construct.stock = {0.5 * mm, 0.0 * mm};
  CHECK(check(construct).empty());
}

TEST_CASE("how often a load comes, and by how much it varies, can be", "[models][parts]") {
  const auto error = [](const std::string& where, const std::string& words, const auto& spoil) {
    Construct construct = sound_construct();
    spoil(construct.loads[0]);
    check_finds_only_error(construct, where, words);
  };
  error("load[0].cycles_per_day", "comes 0 times a day", [](LoadCase& load) { load.cycles_per_day = 0.0; });
  error("load[0].cycles_per_day", "nan", [](LoadCase& load) { load.cycles_per_day = not_a_number; });
  error("load[0].cycles_per_day", "2e+06", [](LoadCase& load) { load.cycles_per_day = 2e6; });
  error("load[0].spread", "-0.1", [](LoadCase& load) { load.spread = -0.1; });
  error("load[0].spread", "1.01", [](LoadCase& load) { load.spread = 1.01; });
}

TEST_CASE("a plate's angle limit and finish factor can be", "[models][parts]") {
  check_construct_error("plate.angle_limit", "46 deg",
                        [](Construct& c) { only(c.plates).angle_limit = 46.0 * degree; });
  check_construct_error("plate.angle_limit", "-1 deg",
                        [](Construct& c) { only(c.plates).angle_limit = -1.0 * degree; });
  check_construct_error("plate.finish_factor", "is 0;", [](Construct& c) { only(c.plates).finish_factor = 0.0; });
  check_construct_error("plate.finish_factor", "1.01", [](Construct& c) { only(c.plates).finish_factor = 1.01; });
}

TEST_CASE("a metal's fatigue strength stays well below its ultimate strength", "[models][parts]") {
  const auto strengths = [](double ultimate, double low, double high) {
    return [=](Construct& c) {
      only(c.plates).material.ultimate_strength = ultimate * mpa;
      only(c.plates).material.fatigue_strength =
          FatigueStrength{low * mpa, 0.5 * (low + high) * mpa, high * mpa, "test"};
    };
  };
  check_construct_error("plate.metal.fatigue_strength", "below 0.9 times the ultimate strength (500 MPa)",
                        strengths(500.0, 300.0, 451.0));
  check_construct_error("plate.metal.ultimate_strength", "-500 MPa", strengths(-500.0, 300.0, 400.0));
  check_construct_error("plate.metal.fatigue_strength", "0 MPa", strengths(500.0, 0.0, 0.0));
  Construct construct = sound_construct();
  strengths(500.0, 300.0, 449.0)(construct);
  CHECK(check(construct).empty());
}
