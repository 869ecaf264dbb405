#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {
constexpr double infinite = std::numeric_limits<double>::infinity();
}  // namespace

TEST_CASE("nothing is wrong with a sound construct, whatever the plate's aspect", "[models][parts]") {
  Construct construct = sound_construct();
  for (const Aspect aspect : {Aspect::cranial, Aspect::caudal, Aspect::medial, Aspect::lateral}) {
    only(construct.plates).aspect = aspect;
    for (const auto& problem : check(construct)) FAIL_CHECK(problem.where << ": " << problem.message);
  }
}

TEST_CASE("all problems are found at once, errors first", "[models][parts]") {
  Construct construct = sound_construct();
  construct.body_mass = 900.0 * kilogram;  // two warnings
  construct.screws[0].hole = 9;            // an error that leaves two screws on that side
  only(construct.fractures).tissue->poissons_ratio = 0.5;
  construct.mesh.rim_elements = 7;
  const auto problems = check(construct);
  REQUIRE(problems.size() == 5);
  for (std::size_t i = 0; i < problems.size(); ++i)
    CHECK(problems[i].severity == (i < 3 ? Severity::error : Severity::warning));
}

TEST_CASE("an empty construct is full of problems but never throws", "[models][parts]") {
  CHECK(check(Construct{}).size() > 8);
}

TEST_CASE("a construct of several plates or fractures is refused, and one of none", "[models][parts]") {
  const auto finds = [](const std::string& where, const std::string& count, const auto& change) {
    Construct construct = sound_construct();
    change(construct);
    const auto problems = check(construct);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].severity == Severity::error);
    CHECK(problems[0].where == where);
    CHECK_THAT(problems[0].message, Catch::Matchers::Contains(count));
  };
  finds("plate", "2 plates", [](Construct& c) { c.plates.push_back(c.plates[0]); });
  finds("plate", "0 plates", [](Construct& c) { c.plates.clear(); });
  finds("fracture", "2 fractures", [](Construct& c) { c.fractures.push_back(c.fractures[0]); });
  finds("fracture", "0 fractures", [](Construct& c) { c.fractures.clear(); });
}

TEST_CASE("mesh density is kept within what has been proven", "[models][parts]") {
  Construct construct = sound_construct();
  for (const double refinement : {0.2, 4.1, -1.0, not_a_number, infinite}) {
    construct.mesh = {refinement, 32};
    check_finds_only_error(construct, "mesh.refinement", "0.25 to 4");
  }
  for (const int elements : {7, 129, -3}) {
    construct.mesh = {1.0, elements};
    check_finds_only_error(construct, "mesh.rim_elements", std::to_string(elements));
    // What is proposed is the default, on which the proofs are run.
    check_finds_only_error(construct, "mesh.rim_elements",
                           ", and " + std::to_string(MeshDensity{}.rim_elements) + " is a good start");
  }
  construct.mesh = {0.25, 8};
  CHECK(check(construct).empty());
  construct.mesh = {4.0, 128};
  CHECK(check(construct).empty());
}

TEST_CASE("the bone's size is held against the body mass", "[models][parts]") {
  // The law gives 60 M^0.35 mm and 4.6 M^0.36 mm: 17 kg suggest 162 mm and 12.8 mm.
  Construct construct = sound_construct();
  construct.body_mass = 1.5 * kilogram;  // 69 mm and 5.3 mm
  const auto problems = check(construct);
  REQUIRE(problems.size() == 2);
  CHECK(problems[0].severity == Severity::warning);
  CHECK(problems[0].where == "bone.length");
  CHECK_THAT(problems[0].message, Catch::Matchers::Contains("163 mm") && Catch::Matchers::Contains("1.5 kg"));
  CHECK(problems[1].where == "bone");
  construct.body_mass = 6.0 * kilogram;  // within a factor of two
  CHECK(check(construct).empty());
  construct.body_mass.reset();
  CHECK(check(construct).empty());
  construct.body_mass = -2.0 * kilogram;
  check_finds_only_error(construct, "body_mass", "-2 kg");
  construct.body_mass = not_a_number * kilogram;
  check_finds_only_error(construct, "body_mass", "above 0");
}

TEST_CASE("material constants must be positive definite", "[models][parts]") {
  const Construct sound = sound_construct();
  Construct spoilt = sound;
  const auto check_cortex = [&](const std::string& key, auto spoil) {
    spoilt = sound;
    spoil(spoilt.bone.cortex);
    check_finds_only_error(spoilt, "bone.cortical_bone." + key, "must be");
  };
  check_cortex("longitudinal_modulus", [](auto& bone) { bone.longitudinal_modulus = 0.0 * mpa; });
  check_cortex("transverse_modulus", [](auto& bone) { bone.transverse_modulus = -1.0 * mpa; });
  check_cortex("shear_modulus_lt", [](auto& bone) { bone.shear_modulus_lt = not_a_number * mpa; });
  check_cortex("shear_modulus_lr", [](auto& bone) { bone.shear_modulus_lr = infinite * mpa; });
  check_cortex("shear_modulus_tr", [](auto& bone) { bone.shear_modulus_tr = 0.0 * mpa; });
  check_cortex("poissons_ratio_lt", [](auto& bone) {
    bone.transverse_modulus = 4.0 * bone.longitudinal_modulus;  // the bound is then 1/2
    bone.poissons_ratio_lt = 0.51;
  });
  check_cortex("poissons_ratio_lt", [](auto& bone) { bone.poissons_ratio_lt = -0.1; });
  check_cortex("yield_strain", [](auto& bone) { bone.yield_strain = 0.7; });

  const auto check_other = [&](const std::string& where, auto spoil) {
    spoilt = sound;
    spoil(spoilt);
    check_finds_only_error(spoilt, where, "must be");
  };
  check_other("plate.metal.youngs_modulus", [](auto& c) { only(c.plates).material.youngs_modulus = -5.0 * mpa; });
  check_other("plate.metal.poissons_ratio", [](auto& c) { only(c.plates).material.poissons_ratio = 0.5; });
  check_other("plate.metal.yield_strength", [](auto& c) { only(c.plates).material.yield_strength = 0.0 * mpa; });
  check_other("screw[3].material.youngs_modulus",
              [](auto& c) { c.screws[3].material.youngs_modulus = 0.0 * mpa; });
  check_other("screw[0].material.poissons_ratio",
              [](auto& c) { c.screws[0].material.poissons_ratio = not_a_number; });
  check_other("fracture.filling.youngs_modulus",
              [](auto& c) { only(c.fractures).tissue->youngs_modulus = 0.0 * mpa; });
  check_other("fracture.filling.poissons_ratio", [](auto& c) { only(c.fractures).tissue->poissons_ratio = 0.6; });
}
