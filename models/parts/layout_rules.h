// Which choices of screws come into question on a construct's plate, and what makes one better than another.
#pragma once

#include "models/parts/screw.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// A figure of an outcome (models/findings/outcome_figures.h) and where it is to lie, in the figure's own unit.
struct FigureLimit {
  std::string figure;
  std::optional<double> least, most;
};

// A figure, and which way is better.
struct FigureWish {
  std::string figure;
  bool most = false;
};

struct LayoutRules {
  int least_per_fragment = 2;
  std::optional<int> most_per_fragment, most_in_all;
  // That may go into the plate's holes, each with the size and metal of the construct's first screw of the kind.
  std::vector<ScrewKind> kinds;
  std::vector<int> barred;          // holes left empty, 1-based
  std::vector<int> filled;          // holes that always have a screw
  std::vector<FigureLimit> limits;  // layouts that keep all of them come first
  std::vector<FigureWish> rank_by;  // the first one first
  std::array<FigureWish, 2> front;  // weighed against each other
};

}  // namespace gapstrain::models
