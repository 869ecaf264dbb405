// The figures of an outcome by name: what tables have as columns, and limits, rankings and charts ask for. With
// those of assessed_figures.h they are the catalogue that constructs are compared by.
#pragma once

#include "models/catalogue/figure_entry.h"
#include "models/measures/outcome.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

// Of the construct.
struct ConstructFigure : FigureEntry {
  std::function<std::optional<double>(const Outcome&)> read;
};
const std::vector<ConstructFigure>& construct_figures();

// Of a rule of the trade, whether it is broken: "breaks_plate_span_ratio".
std::string rule_figure(std::string_view rule);

// Of one load; the worst of all loads is the highest, or the lowest.
struct LoadFigure : FigureEntry {
  bool high_is_worse = false;
  std::optional<double> (*read)(const LoadOutcome& outcome) = nullptr;
};
const std::vector<LoadFigure>& load_figures();

// A construct's figure, or a load's in its worst load. Nothing when there is none. @throw std::out_of_range for an
// unknown name
std::optional<double> figure(const Outcome& outcome, std::string_view name);

// The figure's unit and meaning; nothing for an unknown name.
struct NamedFigure {
  std::string name;
  FigureUnit unit;
  std::string meaning;
};
std::optional<NamedFigure> find_figure(std::string_view name);
std::vector<std::string> figure_names();

}  // namespace gapstrain::models
