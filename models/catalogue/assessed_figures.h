// Figures of a construct that was looked at all over: those of its outcome, and those that only analysis, margins
// and race tell.
#pragma once

#include "models/catalogue/outcome_figures.h"
#include "models/margins/margins.h"
#include "models/race/race.h"

#include <functional>
#include <optional>
#include <string_view>
#include <vector>

namespace gapstrain::models {

// What a construct's figures are read from. Borrowed.
struct FigureSource {
  const Outcome& outcome;
  const Findings& findings;
  const std::vector<Margin>& margins;
  const std::optional<Race>& race;
  std::optional<double> margin_at_bounds;  // least, of both bounds of screws in bone
};

struct AssessedFigure : FigureEntry {
  std::function<std::optional<double>(const FigureSource&)> read;
};

// No column of a table of outcomes has these.
const std::vector<AssessedFigure>& assessed_figures();

// Of all, those by which constructs are compared, in the order of FigureGroup; of a load's figure the worst of all
// loads.
const std::vector<AssessedFigure>& compared_figures();

// What the catalogue says of a figure by its name: the construct's, a load's or of an analysis alone.
// @throw std::out_of_range for an unknown name
const FigureEntry& catalogue_entry(std::string_view name);

}  // namespace gapstrain::models
