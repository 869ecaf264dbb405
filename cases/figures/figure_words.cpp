#include "cases/figures/figure_words.h"

#include "models/catalogue/outcome_figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::cases {

std::vector<StudyFinding> known_findings() {
  std::vector<StudyFinding> findings;
  for (const auto& name : models::figure_names())
    findings.push_back({name, models::unit_text(models::find_figure(name)->unit)});
  return findings;
}

FigureWords words_of(const std::string& figure) {
  FigureWords words;
  words.axis = figure;
  std::replace(words.axis.begin(), words.axis.end(), '_', ' ');
  const models::FigureUnit unit = models::find_figure(figure)->unit;
  if (unit == models::FigureUnit::strain) {
    const auto shown = models::shown_in(unit);
    words.unit = shown.unit;
    words.scale = shown.scale;
  } else {
    words.unit = models::unit_text(unit);  // as limits on it are entered
  }
  if (!words.unit.empty()) words.axis += ", " + words.unit;
  return words;
}

std::string with_unit(const std::string& figure, double value) {
  if (std::isnan(value)) return "-";
  const FigureWords words = words_of(figure);
  return fmt::format("{:.3g}{}{}", value * words.scale, words.unit.empty() ? "" : " ", words.unit);
}

}  // namespace gapstrain::cases
