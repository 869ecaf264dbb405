#include "models/preparation/prepare_bodies.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

namespace gapstrain {

TEST_CASE("the coarsest mesh that a case may ask for is made", "[models][preparation]") {
  models::Construct construct = tests::plated_tube();
  construct.mesh.refinement = 0.25;
  for (const auto& problem : models::check(construct)) CHECK(problem.severity == models::Severity::warning);
  const auto prepared = models::prepare_bodies(construct, construct.screws);
  CHECK(prepared->bodies.size() == 3);
  CHECK(prepared->bodies[0].name == "plate");
  CHECK(prepared->bodies[1].name == "proximal fragment");
  CHECK(prepared->bodies[2].name == "distal fragment");
}

}  // namespace gapstrain
