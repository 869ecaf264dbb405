#include "viz/construct/step_choice.h"

#include <catch2/catch.hpp>

using namespace gapstrain;

TEST_CASE("of too many steps the first, the last and the greatest changes are kept in order", "[viz][steps]") {
  const std::vector<double> forces{0.0, 0.0, 410.0, 402.0, 402.5, 250.0, 249.0};
  CHECK(viz::chosen_steps(forces, 7) == std::vector<std::size_t>{0, 1, 2, 3, 4, 5, 6});
  CHECK(viz::chosen_steps(forces, 5) == std::vector<std::size_t>{0, 2, 3, 5, 6});
  CHECK(viz::chosen_steps(forces, 2) == std::vector<std::size_t>{0, 6});
  CHECK(viz::chosen_steps({7.0}, 2) == std::vector<std::size_t>{0});
  CHECK(viz::chosen_steps({}, 2).empty());
}
