#include "mesh/gmsh_session.h"

#include "mesh/gmsh_call.h"

#include <catch2/catch.hpp>
#include <string>

namespace gapstrain::mesh {

TEST_CASE("a second session in the process is refused while one is open", "[mesh][session]") {
  const GmshSession session;
  REQUIRE_THROWS_AS(GmshSession(), MeshError);
}

TEST_CASE("a session can be opened again after it was closed", "[mesh][session]") {
  for (int i = 0; i < 3; ++i) REQUIRE_NOTHROW(GmshSession());
}

TEST_CASE("whatever a call throws arrives as a MeshError with its reason", "[mesh][session]") {
  using Catch::Matchers::Contains;
  const auto thrower = [](auto fault) { return [fault] { throw fault; }; };
  CHECK_THROWS_WITH(gmsh_call("draw", thrower(std::string("no line 7"))),
                    Contains("draw") && Contains("no line 7"));
  CHECK_THROWS_WITH(gmsh_call("draw", thrower(std::runtime_error("no line 8"))), Contains("no line 8"));
  CHECK_THROWS_WITH(gmsh_call("draw", thrower("no line 9")), Contains("no line 9"));
  CHECK_THROWS_WITH(gmsh_call("draw", thrower(10)), Contains("10"));
  CHECK_THROWS_AS(gmsh_call("draw", thrower(std::string())), MeshError);
  CHECK_THROWS_WITH(gmsh_call("draw", thrower(MeshError("ours"))), "ours");
  CHECK(gmsh_call("count", [] { return 3; }) == 3);
}

}  // namespace gapstrain::mesh
