#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

#include <array>
#include <string>
#include <utility>

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
  construct.loads[0].supports = cantilever();
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

TEST_CASE("ends that are held take no load that comes to nothing", "[models][parts]") {
  const auto hold = [](LoadCase& load, EndHold proximal, EndHold distal) {
    load.supports = {{proximal}, {distal}};
    load.axial_compression = 0.0 * newton;
    load.bending_y = 0.0 * newton_mm;
  };
  check_loads_error("load[0].axial", "both held", [&](LoadCase& load, auto&) {
    hold(load, EndHold::held, EndHold::held);
    load.axial_compression = 50.0 * newton;
  });
  check_loads_error("load[0].bending_z", "\"held\", the distal one \"guided\"", [&](LoadCase& load, auto&) {
    hold(load, EndHold::held, EndHold::guided);
    load.bending_z = 50.0 * newton_mm;
  });
  check_loads_error("load[0].torsion", "neither can turn", [&](LoadCase& load, auto&) {
    hold(load, EndHold::guided, EndHold::elastic);
    load.supports.distal.flexibility = flexibility_of({{100.0 * (newton / mm)}, {}});
    load.torsion = 50.0 * newton_mm;
  });
  check_loads_error("load[0].transverse_y", "its guide holds it", [&](LoadCase& load, auto&) {
    hold(load, EndHold::held, EndHold::guided);
    load.transverse_y = 5.0 * newton;
  });
  for (const auto& [proximal, distal] :
       {std::pair{EndHold::held, EndHold::ball}, {EndHold::ball, EndHold::guided}}) {
    Construct construct = sound_construct();
    hold(construct.loads[0], proximal, distal);
    construct.loads[0].axial_compression = 40.0 * newton;
    construct.loads[0].bending_y = 40.0 * newton_mm;
    construct.loads[0].torsion = 40.0 * newton_mm;
    CHECK(check(construct).empty());
  }
}

TEST_CASE("a spring at an end is one that can be", "[models][parts]") {
  const auto spoil = [](const std::string& words, auto change) {
    check_loads_error("load[0].proximal_spring", words, [&](LoadCase& load, auto&) {
      load.supports.proximal = {EndHold::elastic, flexibility_of({{200.0 * (newton / mm)}, {}})};
      change(load.supports.proximal.flexibility.rows);
    });
  };
  using Rows = std::array<double, 36>;
  spoil("not symmetric", [](Rows& rows) { rows[1] = 0.001; });
  spoil("no ordinary number", [](Rows& rows) { rows[7] = not_a_number; });
  spoil("would give work away", [](Rows& rows) { rows[7] = -0.001; });
  spoil("would give work away", [](Rows& rows) { rows[5] = rows[30] = 0.001; });
  spoil("proximal = \"held\"", [](Rows& rows) { rows[0] = 0.0; });
  Construct construct = sound_construct();
  auto& rows = construct.loads[0].supports.proximal.flexibility.rows;
  construct.loads[0].supports.proximal.hold = EndHold::elastic;
  rows[0] = 0.01;
  rows[35] = 4e-6;
  rows[5] = rows[30] = 1.9e-4;  // its square below 0.01 x 4e-6
  CHECK(check(construct).empty());
}

TEST_CASE("a load line is two points, from proximal to distal, and given once", "[models][parts]") {
  const LoadLine sound{{-3.0 * mm, 0.0 * mm, 4.0 * mm}, {170.0 * mm, 2.0 * mm, 4.0 * mm}};
  const auto spoil = [&](const std::string& where, const std::string& words, auto change) {
    check_loads_error(where, words, [&](LoadCase& load, auto&) {
      load.ball_distance = 0.0 * mm;
      load.line = sound;
      change(load);
    });
  };
  spoil("load[0].line_from", "nan", [](LoadCase& load) { load.line->from.y = not_a_number * mm; });
  spoil("load[0].line_to", "must run towards the distal end", [](LoadCase& load) { load.line->to.x = -3.0 * mm; });
  spoil("load[0].line_from", "as well", [](LoadCase& load) { load.ball_offset_z = 1.0 * mm; });
  Construct construct = sound_construct();
  construct.loads[0].ball_distance = 0.0 * mm;
  construct.loads[0].line = sound;
  CHECK(check(construct).empty());
  construct.loads[1].line = sound;
  check_finds_only_error(construct, "load[1].four_point", "whose rollers hold the bone");
}

TEST_CASE("forces act on bone that is there", "[models][parts]") {
  const auto spoil = [](const std::string& where, const std::string& words, auto change) {
    check_loads_error("load[0].force[0]" + where, words, [&](LoadCase& load, auto&) {
      load.forces = {{30.0 * mm, 70.0 * degree, {5.0 * newton, -9.0 * newton, 2.0 * newton}}};
      change(load.forces.front());
    });
  };
  spoil(".position", "163 mm long", [](SurfaceForce& force) { force.position = 164.0 * mm; });
  spoil(".position", "half a wall off its ends", [](SurfaceForce& force) { force.position = 0.2 * mm; });
  spoil(".position", "nan", [](SurfaceForce& force) { force.position = not_a_number * mm; });
  spoil(".around", "nan", [](SurfaceForce& force) { force.around = not_a_number * radian; });
  spoil(".force", "nan", [](SurfaceForce& force) { force.force.y = not_a_number * newton; });
  spoil(".force", "zero in all its parts", [](SurfaceForce& force) { force.force = {}; });
  spoil(".position", "within the fracture", [](SurfaceForce& force) { force.position = 81.0 * mm; });
  // The oblique cut is elsewhere on either side of the bone.
  spoil(".position", "within the fracture", [](SurfaceForce& force) {
    force.position = 82.6 * mm;
    force.around = 40.0 * degree;
  });
  Construct construct = sound_construct();
  construct.loads[0].forces = {{30.0 * mm, 70.0 * degree, {5.0 * newton, -9.0 * newton, 2.0 * newton}}};
  construct.loads[0].axial_compression = 0.0 * newton;
  construct.loads[0].bending_y = 0.0 * newton_mm;
  construct.loads[1].forces = {{85.0 * mm, 220.0 * degree, {0.0 * newton, 1.0 * newton, 0.0 * newton}}};
  CHECK(check(construct).empty());  // alone, and together with rollers
}

TEST_CASE("rollers stand where the mesh has room for a ring", "[models][parts]") {
  Construct construct = sound_construct();
  construct.loads.push_back(construct.loads[1]);
  construct.loads[2].name = "edge";
  construct.loads[2].four_point->across_plate = true;
  CHECK(check(construct).empty());  // at the same places
  construct.loads[2].four_point->inner_distal += 0.05 * mm;
  check_finds_only_error(construct, "load[2].four_point.inner_distal",
                         "stands 0.05 mm beside the inner distal roller of the load \"four-point\" at 104 mm");
  check_loads_error("load[1].four_point.inner_proximal", "stands on the screw \"S2\"",
                    [](auto&, FourPointBending& test) { test.inner_proximal = 50.0 * mm; });
  check_loads_error("load[1].four_point.outer_proximal", "very end",
                    [](auto&, FourPointBending& test) { test.outer_proximal = 0.02 * mm; });
  check_loads_error("load[1].four_point.inner_proximal", "no whole ring of bone",
                    [](auto&, FourPointBending& test) { test.inner_proximal = 78.5 * mm; });
}

TEST_CASE("the band of a part holds the size entered, and the load has that part", "[models][parts]") {
  check_loads_error("load[0].axial_band", "from 1.1 to 1.4 times", [](LoadCase& load, auto&) {
    load.axial_band = {1.1, 1.4};
  });
  check_loads_error("load[0].axial_band", "from 0.6 to 0.9 times", [](LoadCase& load, auto&) {
    load.axial_band = {0.6, 0.9};
  });
  check_loads_error("load[0].bending_band", "from 0 to 2 times", [](LoadCase& load, auto&) {
    load.bending_band = {0.0, 2.0};
  });
  check_loads_error("load[0].bending_band", "to nan times", [](LoadCase& load, auto&) {
    load.bending_band = {0.5, not_a_number};
  });
  check_loads_error("load[0].torsion_band", "no torsion of its own", [](LoadCase& load, auto&) {
    load.torsion = 0.0 * newton_mm;
    load.torsion_band = {0.5, 2.0};
  });
}
