// Writes the table of tests/PROOF.md: every figure that is held against an independent calculation, as measured now.
#include "tests/solid/perforated_bar.h"
#include "tests/solid/plated_tube.h"

#include <fmt/format.h>

#include <iostream>

int main() {
  using namespace gapstrain::tests;
  std::string group;
  for (const auto& rows : {compare_perforated_bar(), compare_plated_tube()}) {
    for (const auto& row : rows) {
      if (row.group != group) {
        group = row.group;
        std::cout << fmt::format("\n### {}\n\n| figure | ours | solid | unit | difference | allowed | holds |\n"
                                 "| --- | --- | --- | --- | --- | --- | --- |\n", group);
      }
      std::cout << fmt::format("| {} | {:.5g} | {:.5g} | {} | {:+.2f} % | -{:g} to +{:g} % | {} |\n", row.figure, row.ours,
                               row.reference, row.unit, 100.0 * row.difference(), 100.0 * row.below, 100.0 * row.above,
                               row.holds() ? "yes" : "NO");
    }
  }
}
