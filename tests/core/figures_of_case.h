// What a case and bodies that are there already give: the figures of its screws, of one screw less, and of a whole
// analysis. Compiled into two programs, one of which has nothing but the core.
#pragma once

#include <filesystem>
#include <map>
#include <string>

namespace gapstrain::tests {

struct FiguresOfCase {
  // By name; nothing but links and forces is needed for `outcome`, `analysis` factors the bodies.
  std::map<std::string, double> outcome, analysis;
};
FiguresOfCase figures_of_case(const std::filesystem::path& case_file, const std::filesystem::path& bodies);

}  // namespace gapstrain::tests
