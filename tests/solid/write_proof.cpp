// Writes tests/PROOF.md: every figure that is held against three-dimensional solids or beam theory, as measured
// now.
#include "tests/solid/perforated_bar.h"
#include "tests/solid/plated_tube.h"
#include "tests/solid/tube_variants.h"

#include <fmt/format.h>
#include <fmt/os.h>

#include <cstdio>
#include <exception>
#include <filesystem>

namespace {

constexpr const char* introduction = R"(# Proof

Written by `cmake --build .build/release --target proof`; not by hand.

Whole constructs and plates against independent calculations, at the default mesh. "Solid": linear elastic solids of curved
ten-node tetrahedra, four meshes of 0.14 to 1.5 million unknowns with extrapolation, computed for this project independently
of its code and confirmed with a general-purpose finite element library (compliance equal to 2e-9). Their own mesh error:
stiffness and motion 0.04 % (torsion 0.2 %), surface stress 0.3 %, hole peak 1 %, screw forces 0.4 % of the largest of their
kind. The variants' solids are a second, independent set on two meshes (0.1 %, torsion 0.3 %), which gives the plated tube
within 0.02 %; they are held to 3 %, to 4 % where screws stand nearer to the gap than two walls.
Screw forces are compared at the plate's underside and measured against the largest of their kind in the load.
The plain bar is held to beam theory by the formula of ASTM F382, annex A1.

The shell's peak at an empty hole is meant to be high: in three dimensions a thick plate's surface stress at a hole is 7 %
lower in bending and 13 % lower in twist than shell theory gives. Both figures are reported, the shell's first.

Published element problems, hole concentrations and tube sections have their figures and tolerances in tests/solver beside
their sources.
)";

}  // namespace

// The file is written beside its place and then moved there.
int main(int argc, char** argv) try {
  using namespace gapstrain::tests;
  const std::filesystem::path target = argc > 1 ? argv[1] : "PROOF.md";
  const std::filesystem::path beside = target.string() + ".new";
  {
    auto file = fmt::output_file(beside.string());
    file.print("{}", introduction);
    std::string group;
    for (const auto& rows : {compare_perforated_bar(), compare_plated_tube(), compare_tube_variants()}) {
      for (const auto& row : rows) {
        if (row.group != group) {
          group = row.group;
          file.print(
              "\n## {}\n\n| figure | ours | reference | unit | difference | allowed | holds |\n"
              "| --- | --- | --- | --- | --- | --- | --- |\n",
              group);
        }
        file.print("| {} | {:.5g} | {:.5g} | {} | {:+.2f} % | -{:g} to +{:g} % | {} |\n", row.figure, row.ours,
                   row.reference, row.unit, 100.0 * row.difference(), 100.0 * row.below, 100.0 * row.above,
                   row.holds() ? "yes" : "NO");
      }
    }
  }
  std::filesystem::rename(beside, target);
} catch (const std::exception& fault) {
  fmt::print(stderr, "write_proof: {}\n", fault.what());
  return 1;
}
