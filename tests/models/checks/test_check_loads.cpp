#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

// The sound construct's load 0 acts at the ends between balls, load 1 is four-point bending.
template <class Spoil>
void check_loads_error(const std::string& where, const std::string& words, Spoil spoil) {
  Construct construct = sound_construct();
  spoil(construct.loads[0], *construct.loads[1].four_point);
  check_finds_only_error(construct, where, words);
}

}  // namespace

TEST_CASE("there must be loads, and none of them zero", "[models][parts]") {
  Construct construct = sound_construct();
  construct.loads.clear();
  check_finds_only_error(construct, "load", "no load");
  check_loads_error("load[0]", "\"stance\" is zero", [](LoadCase& load, auto&) {
    load.axial_compression = 0.0 * newton;
    load.bending_y = 0.0 * newton_mm;
  });
  check_loads_error("load[1].four_point.force", "no force",
                    [](auto&, FourPointBending& test) { test.total = 0.0 * newton; });
}

TEST_CASE("every part of a load is an ordinary number", "[models][parts]") {
  check_loads_error("load[0].ball_distance", "-1 mm",
                    [](LoadCase& load, auto&) { load.ball_distance = -1.0 * mm; });
  check_loads_error("load[0].ball_offset_y", "nan",
                    [](LoadCase& load, auto&) { load.ball_offset_y = not_a_number * mm; });
  check_loads_error("load[0].ball_offset_z", "nan",
                    [](LoadCase& load, auto&) { load.ball_offset_z = not_a_number * mm; });
  check_loads_error("load[0].axial", "nan",
                    [](LoadCase& load, auto&) { load.axial_compression = not_a_number * newton; });
  check_loads_error("load[0].transverse_y", "nan",
                    [](LoadCase& load, auto&) { load.transverse_y = not_a_number * newton; });
  check_loads_error("load[0].transverse_z", "nan",
                    [](LoadCase& load, auto&) { load.transverse_z = not_a_number * newton; });
  check_loads_error("load[0].bending_y", "nan",
                    [](LoadCase& load, auto&) { load.bending_y = not_a_number * newton_mm; });
  check_loads_error("load[0].bending_z", "nan",
                    [](LoadCase& load, auto&) { load.bending_z = not_a_number * newton_mm; });
  check_loads_error("load[0].torsion", "nan",
                    [](LoadCase& load, auto&) { load.torsion = not_a_number * newton_mm; });
  check_loads_error("load[1].four_point.force", "nan",
                    [](auto&, FourPointBending& test) { test.total = not_a_number * newton; });
  check_loads_error("load[1].four_point.inner_distal", "nan",
                    [](auto&, FourPointBending& test) { test.inner_distal = not_a_number * mm; });
}

TEST_CASE("a transverse force needs a free end", "[models][parts]") {
  check_loads_error("load[0].transverse_y", "ball joint",
                    [](LoadCase& load, auto&) { load.transverse_y = 4.0 * newton; });
  check_loads_error("load[0].transverse_z", "-5 N",
                    [](LoadCase& load, auto&) { load.transverse_z = -5.0 * newton; });
  Construct construct = sound_construct();
  construct.loads[0].transverse_y = 4.0 * newton;
  construct.loads[0].support = Support::cantilever;
  CHECK(check(construct).empty());
}

TEST_CASE("four rollers stand in order on the fragments", "[models][parts]") {
  check_loads_error("load[1].four_point.outer_proximal", "-1 mm",
                    [](auto&, FourPointBending& test) { test.outer_proximal = -1.0 * mm; });
  check_loads_error("load[1].four_point.outer_distal", "164 mm",
                    [](auto&, FourPointBending& test) { test.outer_distal = 164.0 * mm; });
  check_loads_error("load[1].four_point.inner_proximal", "outer, inner, inner, outer",
                    [](auto&, FourPointBending& test) { test.inner_proximal = 9.0 * mm; });
  check_loads_error("load[1].four_point.outer_distal", "not beyond",
                    [](auto&, FourPointBending& test) { test.outer_distal = test.inner_distal; });
  check_loads_error("load[1].four_point.inner_proximal", "over the fracture gap",
                    [](auto&, FourPointBending& test) { test.inner_proximal = 80.0 * mm; });
}

TEST_CASE("four-point bending is a load case of its own", "[models][parts]") {
  Construct construct = sound_construct();
  construct.loads[1].torsion = 30.0 * newton_mm;
  check_finds_only_error(construct, "load[1].four_point", "two load cases");
}
