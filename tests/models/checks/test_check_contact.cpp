#include "tests/models/checks/sound_construct.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace gapstrain::models;
using namespace gapstrain::tests;

TEST_CASE("friction coefficients are from 0 to 1", "[models][parts]") {
  Construct construct = sound_construct();
  construct.contact.plate_on_bone = 1.1;
  check_finds_only_error(construct, "contact.plate_on_bone", "plate on bone is 1.1; allowed is 0 to 1");
  construct.contact = {};
  construct.contact.bone_on_bone = -0.2;
  check_finds_only_error(construct, "contact.bone_on_bone", "-0.2");
  construct.contact.bone_on_bone = std::numeric_limits<double>::quiet_NaN();
  check_finds_only_error(construct, "contact.bone_on_bone", "nan");
  construct.contact = {FrictionLaw::coulomb, 0.0, 1.0};
  CHECK(check(construct).empty());
}
