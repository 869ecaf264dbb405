// Ten seconds of counting, so it is kept out of the quick tests.
#include "models/findings/model_error.h"
#include "models/layouts/layouts.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

#include <string>

namespace gapstrain {

TEST_CASE("more layouts than can be worked out are refused", "[models][studies][slow]") {
  tests::TubeSizes sizes;
  sizes.holes_a_side = 13;  // 2^26 choices
  sizes.pitch = 5.0;
  sizes.plate_length = 142.0;
  sizes.length = 180.0;
  sizes.screws = {1, 12};
  models::Construct construct = tests::plated_tube(sizes);
  construct.layouts.emplace().least_per_fragment = 1;
  construct.layouts->kinds = {models::ScrewKind::locking};
  const auto names_the_limit = [](const models::ModelError& error) {
    return std::string(error.what()).find("more than 20000000 layouts") != std::string::npos;
  };
  CHECK_THROWS_MATCHES(models::Layouts(construct), models::ModelError,
                       Catch::Predicate<models::ModelError>(names_the_limit, "names the limit"));
}

}  // namespace gapstrain
