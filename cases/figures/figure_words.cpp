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
  const bool is_strain = figure.find("strain") != std::string::npos;
  words.unit = is_strain ? "%" : models::unit_text(models::find_figure(figure)->unit);
  words.scale = is_strain ? 100.0 : 1.0;
  if (!words.unit.empty()) words.axis += ", " + words.unit;
  return words;
}

std::string with_unit(const std::string& figure, double value) {
  if (std::isnan(value)) return "-";
  const FigureWords words = words_of(figure);
  return fmt::format("{:.3g}{}{}", value * words.scale, words.unit.empty() ? "" : " ", words.unit);
}

}  // namespace gapstrain::cases
