#include "models/assessment/comparison.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <tuple>

namespace gapstrain::models {

namespace {

// Lives go as stress to the power of some 12: two stresses off by 5 % each, one standard deviation, put a factor
// of 4 between two lives in one of ten cases (as models/race/race has them). Beyond ten thousand one is like
// another.
constexpr double model_error_of_life = 0.6, most_lives = 1e4;

using Reader = std::function<std::optional<double>(const AssessedConstruct&)>;

// The worst of all loads.
template <class Measure>
Reader worst_load(const Measure& measure) {
  return [measure](const AssessedConstruct& one) {
    std::optional<double> worst;
    for (const auto& load : one.analysis.findings.loads)
      if (const std::optional<double> value = measure(load); value && (!worst || *value > *worst)) worst = value;
    return worst;
  };
}

std::optional<double> largest(const std::optional<Range>& range) {
  if (!range) return std::nullopt;
  return 100.0 * std::max(std::abs(range->min), std::abs(range->max));
}

Reader margin_of_kind(MarginKind kind, MarginKind or_kind) {
  return [kind, or_kind](const AssessedConstruct& one) -> std::optional<double> {
    for (const auto& margin : one.assessment.margins)  // worst first
      if (margin.kind == kind || margin.kind == or_kind) return margin.factor;
    return std::nullopt;
  };
}
Reader margin_of_kind(MarginKind kind) { return margin_of_kind(kind, kind); }

Reader median_life_factor(HealingCourse course) {
  return [course](const AssessedConstruct& one) -> std::optional<double> {
    if (!one.assessment.race) return std::nullopt;
    return course_of(*one.assessment.race, course).life_factor.middle;
  };
}

std::optional<double> screw_life(const AssessedConstruct& one) {
  if (!one.assessment.race) return std::nullopt;
  const auto& screws = course_of(*one.assessment.race, HealingCourse::governed).screws;
  return screws ? std::optional(screws->life_factor.middle) : std::nullopt;
}

// What the model may be off by.
enum class ErrorOf { nothing, stiffness, stress, life };

struct FigureRow {
  std::string name, unit;
  std::optional<bool> high_is_better;
  ErrorOf error_of;
  Reader read;
};

std::vector<FigureRow> figure_rows() {
  const auto findings = [](const auto& read) -> Reader {
    return [read](const AssessedConstruct& one) { return read(one.analysis.findings); };
  };
  const auto optional = [](double value) { return std::optional(value); };
  const ErrorOf nothing = ErrorOf::nothing, stress = ErrorOf::stress, stiffness = ErrorOf::stiffness,
                life = ErrorOf::life;
  const double nm_per_degree = degree.value() / 1000.0;  // from N mm/rad
  return {
      {"margin, plate yield", "", true, stress, margin_of_kind(MarginKind::plate_yield)},
      {"margin, plate fatigue", "", true, stress,
       margin_of_kind(MarginKind::plate_fatigue, MarginKind::plate_fatigue_of_all_loads)},
      {"margin, screw yield", "", true, stress, margin_of_kind(MarginKind::screw_yield)},
      {"margin, screw fatigue", "", true, stress,
       margin_of_kind(MarginKind::screw_fatigue, MarginKind::screw_fatigue_of_all_loads)},
      {"margin, pull-out with shear", "", true, stress, margin_of_kind(MarginKind::screw_hold)},
      {"margin, bone strain", "", true, stress, margin_of_kind(MarginKind::bone_yield)},
      {"plate life / time to union, strain-governed", "times", true, life,
       median_life_factor(HealingCourse::governed)},
      {"plate life / time to union, steady", "times", true, life, median_life_factor(HealingCourse::steady)},
      {"plate life / time to union, none", "times", true, life, median_life_factor(HealingCourse::none)},
      {"screw life / time to union, strain-governed", "times", true, life, screw_life},
      {"plate stress, largest", "MPa", false, stress,
       worst_load([=](const LoadFindings& load) { return optional(load.plate.peak.von_mises.value()); })},
      {"screw fibre stress, largest", "MPa", false, stress, worst_load([=](const LoadFindings& load) {
         double worst = 0.0;
         for (const auto& screw : load.screws) worst = std::max(worst, screw.peak_bending_stress.value());
         return optional(worst);
       })},
      {"gap strain, largest", "%", std::nullopt, stiffness,
       worst_load([](const LoadFindings& load) { return largest(load.gap.axial_strain); })},
      {"gap motion, largest", "mm", std::nullopt, stiffness,
       worst_load([=](const LoadFindings& load) { return optional(load.gap.largest_motion.value()); })},
      {"force across the fracture after the steps", "N", true, stress,
       findings([=](const Findings& f) { return optional(f.compression.steps.back().face.force.value()); })},
      {"stiffness, axial", "N/mm", std::nullopt, stiffness,
       findings([=](const Findings& f) { return optional(f.stiffness.axial.value()); })},
      {"stiffness, bending flat", "N m/degree", std::nullopt, stiffness,
       findings([=](const Findings& f) { return optional(f.stiffness.bending_y.value() * nm_per_degree); })},
      {"stiffness, bending on edge", "N m/degree", std::nullopt, stiffness,
       findings([=](const Findings& f) { return optional(f.stiffness.bending_z.value() * nm_per_degree); })},
      {"stiffness, torsion", "N m/degree", std::nullopt, stiffness,
       findings([=](const Findings& f) { return optional(f.stiffness.torsion.value() * nm_per_degree); })},
      {"working length", "mm", std::nullopt, nothing,
       findings([=](const Findings& f) { return optional(f.figures.working_length.value()); })},
      {"screws, those across the fracture included", "", std::nullopt, nothing, findings([=](const Findings& f) {
         return optional(
             static_cast<double>(f.figures.screws_proximal + f.figures.screws_distal + f.figures.screws_across));
       })},
      {"rules of the trade broken", "", false, nothing,
       [=](const AssessedConstruct& one) {
         return optional(static_cast<double>(broken_rules(one.assessment.review).size()));
       }},
  };
}

// The mesh's own estimate where it is larger.
double model_error_of(ErrorOf kind, const std::vector<AssessedConstruct>& assessed) {
  const auto at_least = [&](double least, double Trust::*estimate) {
    for (const auto& one : assessed) least = std::max(least, one.analysis.findings.trust.*estimate);
    return least;
  };
  switch (kind) {
    case ErrorOf::stress:
      return at_least(model_error_of_stress, &Trust::mesh_error_peak);
    case ErrorOf::stiffness:
      return at_least(model_error_of_stiffness, &Trust::mesh_error_stiffness);
    case ErrorOf::life:
      return model_error_of_life;
    case ErrorOf::nothing:
      break;
  }
  return 0.0;
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
  const auto numbers = [](const LoadCase& load) {
    return std::tie(load.name, load.support, load.ball_distance, load.ball_offset_y, load.ball_offset_z,
                    load.axial_compression, load.transverse_y, load.transverse_z, load.bending_y, load.bending_z,
                    load.torsion, load.four_point, load.cycles_per_day, load.spread);
  };
  const auto same_loads = [&] {
    return std::equal(first.loads.begin(), first.loads.end(), second.loads.begin(), second.loads.end(),
                      [&](const LoadCase& a, const LoadCase& b) { return numbers(a) == numbers(b); });
  };
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
  if (cut(first.fracture) != cut(second.fracture)) differences.emplace_back("fracture");
  if (!same_loads()) differences.emplace_back("set of loads");
  if (!same_healing()) differences.emplace_back("course of healing");
  return differences;
}

Comparison compare(const std::vector<Construct>& constructs, const std::vector<AssessedConstruct>& assessed) {
  Comparison comparison;
  std::vector<bool> trusted;
  for (const auto& one : assessed) trusted.push_back(one.assessment.state.not_trusted.empty());
  for (const auto& row : figure_rows()) {
    ComparedFigure figure{row.name, row.unit, row.high_is_better, {}, model_error_of(row.error_of, assessed)};
    figure.trusted = trusted;
    if (row.error_of == ErrorOf::life) figure.most = most_lives;
    for (const auto& one : assessed) {
      auto value = row.read(one);
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
