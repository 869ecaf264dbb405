// The core without Gmsh, CHOLMOD, BLAS, VTK, threads and POSIX: core_alone CASE BODIES prints the figures, a line
// each, to the last bit.
#include "tests/core/figures_of_case.h"

#include <exception>
#include <iostream>

#include <fmt/format.h>

int main(int count, char** arguments) {
  if (count != 3) {
    std::cerr << "usage: core_alone CASE BODIES\n";
    return 2;
  }
  try {
    const auto [outcome, analysis] = gapstrain::tests::figures_of_case(arguments[1], arguments[2]);
    for (const auto& [name, value] : outcome) std::cout << fmt::format("outcome\t{}\t{:a}\n", name, value);
    for (const auto& [name, value] : analysis) std::cout << fmt::format("analysis\t{}\t{:a}\n", name, value);
  } catch (const std::exception& fault) {
    std::cerr << fault.what() << '\n';
    return 1;
  }
  return 0;
}
