#include "models/patient/load_doubt.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gapstrain::models;

namespace {

// A construct that fails from a factor on.
auto fails_from(double limit, int& asked) {
  return [limit, &asked](double factor) {
    ++asked;
    return factor >= limit ? Standing::fails : Standing::holds;
  };
}

}  // namespace

TEST_CASE("the size at which a standing turns is found within the band, from the safe side", "[models][patient]") {
  for (const double limit : {1.01, 1.1, 1.25, 1.39}) {
    int asked = 0;
    const TurningPoint found = find_turning_point(Standing::holds, 0.75, 1.4, 3, fails_from(limit, asked));
    INFO(limit);
    CHECK(asked == 5);
    CHECK(found.at_low == Standing::holds);
    CHECK(found.at_high == Standing::fails);
    REQUIRE(found.turned);
    CHECK(*found.turned >= limit);
    CHECK(*found.not_yet < limit);
    CHECK(*found.turned / *found.not_yet == Approx(std::pow(1.4, 1.0 / 8.0)));
  }
  for (const double limit : {0.76, 0.9, 0.99}) {
    int asked = 0;
    const TurningPoint found = find_turning_point(Standing::fails, 0.75, 1.4, 3, fails_from(limit, asked));
    INFO(limit);
    REQUIRE(found.turned);
    CHECK(*found.turned < limit);
    CHECK(*found.not_yet >= limit);
  }
}

TEST_CASE("a standing that is the same at both ends of the band turns nowhere, and is asked for twice",
          "[models][patient]") {
  int asked = 0;
  CHECK_FALSE(find_turning_point(Standing::holds, 0.5, 1.6, 3, fails_from(1.7, asked)).turned);
  CHECK(asked == 2);
  CHECK_FALSE(find_turning_point(Standing::fails, 0.5, 1.6, 3, fails_from(0.4, asked)).turned);
}

TEST_CASE("a calculation that is not to be trusted turns no verdict", "[models][patient]") {
  const auto lost = [](double) { return Standing::not_trusted; };
  const TurningPoint found = find_turning_point(Standing::holds, 0.5, 1.6, 3, lost);
  CHECK_FALSE(found.turned);
  LoadDoubts doubts;
  doubts.parts.push_back({LoadPart::torsion, LoadEvidence::none, found});
  CHECK_FALSE(doubts.are_all_known());
}

TEST_CASE("each part of the load is tried by itself, and every side that is left open", "[models][patient]") {
  const Patient patient{Species::dog, LongBone::tibia, 20.0 * kilogram};
  Construct construct;
  construct.plates.front().aspect = Aspect::medial;
  LoadCase load;
  load.axial_compression = 100.0 * newton;
  load.ball_offset_y = 3.0 * mm;
  load.ball_offset_z = 4.0 * mm;
  load.torsion = 1000.0 * newton_mm;
  construct.loads = {load, load};
  const LimbLoads limb = limb_loads(patient.species, patient.bone);
  // Fails where torsion is a tenth larger, or where the force runs on the bone's own plane.
  const auto standing = [](const Construct& tried) {
    const LoadCase& last = tried.loads.back();
    return last.torsion.value() > 1100.0 || std::abs(last.ball_offset_z.value()) < 1e-9 ? Standing::fails
                                                                                        : Standing::holds;
  };
  const LoadDoubts doubts = doubt_loads(patient, construct, Standing::holds, standing);
  CHECK(doubts.are_all_known());
  REQUIRE(doubts.parts.size() == 3);
  for (std::size_t k = 1; k < 3; ++k) CHECK(doubts.parts[k - 1].evidence >= doubts.parts[k].evidence);
  REQUIRE(doubts.turning_parts().size() == 1);
  const PartDoubt torsion = doubts.turning_parts().front();
  CHECK(torsion.part == LoadPart::torsion);
  CHECK(*torsion.turning.turned > 1.1);
  CHECK(*torsion.turning.not_yet <= 1.1);
  CHECK(torsion.turning.high == Approx(limb.torsion.high / limb.torsion.middle));
  REQUIRE(doubts.other_sides.size() == 2);
  REQUIRE(doubts.turning_sides().size() == 1);
  CHECK(doubts.turning_sides().front().side.name == "cranial");
}

TEST_CASE("a small patient's loads are tried as large as its muscles may pull", "[models][patient]") {
  // Leverage by weight to the power of 0.25, Biewener 2005, J Exp Biol 208:1665 (abstract).
  CHECK(more_muscle_force(4.0 * kilogram) == Approx(std::pow(27.0 / 4.0, 0.25)));
  CHECK(more_muscle_force(25.0 * kilogram) == 1.0);
  CHECK(more_muscle_force(50.0 * kilogram) == 1.0);
  Construct construct;
  LoadCase load;
  load.axial_compression = 100.0 * newton;
  load.ball_offset_z = 4.0 * mm;
  load.torsion = 1000.0 * newton_mm;
  construct.loads = {load};
  // The radius's torsion may be twice as large by itself, its axial force not: both together tell.
  const auto standing = [](const Construct& tried) {
    const LoadCase& of = tried.loads.back();
    const bool is_more = of.torsion.value() > 1600.0 && of.axial_compression.value() > 160.0 &&
                         (of.axial_compression * of.ball_offset_z).value() > 640.0;
    return is_more ? Standing::fails : Standing::holds;
  };
  const auto doubts_at = [&](double mass) {
    return doubt_loads({Species::dog, LongBone::radius, mass * kilogram}, construct, Standing::holds, standing);
  };
  CHECK(doubts_at(4.0).turns_by_size());
  CHECK(doubts_at(4.0).is_open());
  CHECK(doubts_at(4.0).turning_parts().empty());
  CHECK_FALSE(doubts_at(25.0).small_patient);
  CHECK_FALSE(doubts_at(25.0).is_open());
}
