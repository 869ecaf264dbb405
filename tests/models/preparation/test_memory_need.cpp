// The estimate of unknowns and memory, against bodies that were made.
#include "models/assembly/prepared_bodies.h"
#include "models/preparation/memory_need.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

using namespace gapstrain;
using namespace gapstrain::models;

namespace {

double unknowns_made(const Construct& construct) {
  double unknowns = 0.0;
  const auto prepared = prepare_bodies(construct, construct.screws);
  for (const auto& built : prepared->bodies) unknowns += static_cast<double>(built.body->shell().unknowns());
  return unknowns;
}

}  // namespace

TEST_CASE("the number of unknowns is foretold within a third", "[models][build]") {
  for (const double refinement : {0.5, 1.0})
    for (const double length : {160.0, 320.0}) {
      tests::TubeSizes sizes;
      sizes.length = length;
      Construct construct = tests::plated_tube(sizes);
      construct.mesh.refinement = refinement;
      CAPTURE(refinement, length);
      CHECK(memory_need(construct, construct.screws.size()).unknowns ==
            Approx(unknowns_made(construct)).epsilon(0.33));
    }
}

TEST_CASE("a construct that needs more than there is is refused with both figures", "[models][build]") {
  Construct construct = tests::plated_tube();
  CHECK_NOTHROW(require_memory(construct, construct.screws.size()));
  construct.bone.length = 1e6 * mm;
  CHECK(memory_need(construct, construct.screws.size()).bytes > free_memory());
  CHECK_THROWS_AS(require_memory(construct, construct.screws.size()), TooLargeError);
}
