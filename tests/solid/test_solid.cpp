#include "tests/solid/perforated_bar.h"
#include "tests/solid/plated_tube.h"
#include "tests/solid/tube_variants.h"

#include <catch2/catch.hpp>

namespace gapstrain {

namespace {

void check_all(const std::vector<tests::Comparison>& rows) {
  for (const auto& row : rows) {
    INFO(row.group << ": " << row.figure << ": ours " << row.ours << ", solid " << row.reference << " " << row.unit
                   << ", difference " << 100.0 * row.difference() << " %, allowed -" << 100.0 * row.below
                   << " to +" << 100.0 * row.above << " %");
    CHECK(row.holds());
  }
}

}  // namespace

TEST_CASE("a plated tube moves, bends and is stressed like its three-dimensional solid", "[solid]") {
  check_all(tests::compare_plated_tube());
}

TEST_CASE("plated tubes of other sizes, screws and materials move like their three-dimensional solids",
          "[solid]") {
  check_all(tests::compare_tube_variants());
}

TEST_CASE("a plate alone bends and stretches like its three-dimensional solid", "[solid]") {
  check_all(tests::compare_perforated_bar());
}

}  // namespace gapstrain
