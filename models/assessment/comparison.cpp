#include "models/assessment/comparison.h"

#include "models/catalogue/analysed_outcome.h"
#include "models/catalogue/assessed_figures.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

namespace gapstrain::models {

namespace {

// The mesh's own estimate where it is larger.
double error_of(ErrorOf kind, const std::vector<AssessedConstruct>& assessed) {
  double error = model_error_of(kind);
  for (const auto& one : assessed) {
    const Trust& trust = one.analysis.findings.trust;
    if (kind == ErrorOf::stress) error = std::max(error, trust.mesh_error_peak);
    if (kind == ErrorOf::stiffness) error = std::max(error, trust.mesh_error_stiffness);
  }
  return error;
}

std::optional<bool> high_is_better(Better better) {
  return better == Better::neither ? std::nullopt : std::optional(better == Better::high);
}

double sort_key(const ComparedFigure& figure) {
  const auto ratio = figure.ratio();
  return ratio ? *ratio : 0.0;
}

}  // namespace

std::optional<double> ComparedFigure::ratio() const {
  double low = std::numeric_limits<double>::infinity(), high = 0.0;
  int count = 0;
  for (std::size_t k = 0; k < values.size(); ++k) {
    if (!values[k] || !is_trusted(k)) continue;
    const double size = std::min(std::abs(*values[k]), most);
    low = std::min(low, size);
    high = std::max(high, size);
    ++count;
  }
  if (count < 2) return std::nullopt;
  if (high == low) return 1.0;
  return low > 0.0 ? high / low : std::numeric_limits<double>::infinity();
}

bool ComparedFigure::is_told_apart() const {
  const auto wide = ratio();
  return wide && *wide > (1.0 + model_error) / (1.0 - model_error);
}

std::optional<std::size_t> ComparedFigure::best() const {
  if (!high_is_better || !is_told_apart()) return std::nullopt;
  std::optional<std::size_t> best;
  for (std::size_t k = 0; k < values.size(); ++k) {
    if (!is_trusted(k)) continue;
    if (!values[k]) return std::nullopt;
    if (!best || (*high_is_better ? *values[k] > *values[*best] : *values[k] < *values[*best])) best = k;
  }
  return best;
}

std::vector<std::string> patient_differences(const Construct& first, const Construct& second) {
  const auto same_healing = [&] {
    if (!first.healing || !second.healing) return first.healing.has_value() == second.healing.has_value();
    const auto course = [](const Healing& healing) {
      return std::tie(healing.weeks_from, healing.weeks_to, healing.at_first, healing.at_union,
                      healing.activity_factor);
    };
    return course(*first.healing) == course(*second.healing);
  };
  // What reduction leaves of the gap is the surgeon's doing.
  const auto cut = [](const Fracture& fracture) {
    return std::tie(fracture.position, fracture.obliquity, fracture.direction);
  };
  std::vector<std::string> differences;
  if (first.body_mass != second.body_mass) differences.emplace_back("body mass");
  if (!(first.bone == second.bone)) differences.emplace_back("bone");
  if (cut(only(first.fractures)) != cut(only(second.fractures))) differences.emplace_back("fracture");
  if (first.loads != second.loads) differences.emplace_back("set of loads");
  if (!same_healing()) differences.emplace_back("course of healing");
  return differences;
}

Comparison compare(const std::vector<Construct>& constructs, const std::vector<AssessedConstruct>& assessed) {
  Comparison comparison;
  std::vector<bool> trusted;
  for (const auto& one : assessed) trusted.push_back(one.assessment.state.not_trusted.empty());
  std::vector<Outcome> outcomes;
  for (std::size_t k = 0; k < assessed.size(); ++k) {
    const auto& [analysis, assessment] = assessed[k];
    outcomes.push_back(outcome_of(analysis.findings, constructs[k], assessment.margins, assessment.review));
  }
  for (const auto& each : compared_figures()) {
    const ComparedBy& by = each.compared;
    const auto [unit, scale] = shown_in(each.unit);
    ComparedFigure figure{by.label, unit, high_is_better(by.better), {}, error_of(by.error_of, assessed)};
    figure.trusted = trusted;
    figure.entry = &each;
    if (by.error_of == ErrorOf::life) figure.most = most_lives;
    for (std::size_t k = 0; k < assessed.size(); ++k) {
      const auto& [analysis, assessment] = assessed[k];
      const auto& bounds = assessment.state.interface;
      auto value = each.read({outcomes[k], analysis.findings, assessment.margins, assessment.race,
                              bounds ? bounds->least_margin() : std::nullopt});
      if (value) *value *= scale;
      if (value && !std::isfinite(*value)) value.reset();
      figure.values.push_back(value);
    }
    const bool is_any = std::any_of(figure.values.begin(), figure.values.end(), [](const auto& v) { return v; });
    if (is_any) comparison.figures.push_back(std::move(figure));
  }
  std::stable_sort(comparison.figures.begin(), comparison.figures.end(), [](const auto& a, const auto& b) {
    return std::tuple(a.is_told_apart(), sort_key(a)) > std::tuple(b.is_told_apart(), sort_key(b));
  });
  for (std::size_t a = 0; a < assessed.size(); ++a)
    for (std::size_t b = a + 1; b < assessed.size(); ++b) {
      ConstructPair pair{a, b, {}};
      const auto &first = assessed[a].assessment.history, &second = assessed[b].assessment.history;
      if (first && second) pair.races = compare_races(*first, constructs[a], *second, constructs[b]);
      comparison.pairs.push_back(std::move(pair));
    }
  comparison.least_margins = compare_least_margins(assessed);
  return comparison;
}

}  // namespace gapstrain::models
