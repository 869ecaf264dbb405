#include "models/geometry/fracture_cut.h"
#include "tests/models/geometry/sample_bones.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gapstrain::models;
using namespace gapstrain::tests;

TEST_CASE("a place lies in one of a fracture more fragments, by the middles of the gaps", "[models][parts]") {
  CHECK(fragment_at({}, 40.0 * mm) == 0);
  std::vector<Fracture> fractures(2);
  fractures[0].position = 50.0 * mm;
  fractures[1].position = 90.0 * mm;
  CHECK(fragment_at(fractures, 10.0 * mm) == 0);
  CHECK(fragment_at(fractures, 50.0 * mm) == 0);
  CHECK(fragment_at(fractures, 50.1 * mm) == 1);
  CHECK(fragment_at(fractures, 90.1 * mm) == 2);
}

TEST_CASE("an oblique cut reaches the bone's width times its slope further along the bone than its gap",
          "[models][parts]") {
  const Bone bone = round_bone(137.0, 14.0, 2.0);
  Fracture fracture;
  fracture.position = 60.0 * mm;
  fracture.gap = 1.5 * mm;
  CHECK(CutThroughBone(fracture, BoneShape(bone, Aspect::cranial)).length() == Approx(1.5));
  fracture.obliquity = 45.0 * degree;
  const CutThroughBone cut(fracture, BoneShape(bone, Aspect::cranial));
  CHECK(cut.length() == Approx(1.5 + 14.0));
  // Square to the cut, from the edge that is the gap's half away along the bone.
  CHECK(cut.edge_distance({70.0, 0.0, 0.0}) == Approx((10.0 - 0.75) / std::sqrt(2.0)));
  CHECK(cut.is_distal({60.1, 0.0, 0.0}));
  CHECK_FALSE(cut.is_distal({59.9, 0.0, 0.0}));
}
