#include "cases/study/sweep_table.h"

#include "cases/figures/figure_words.h"
#include "cases/figures/outcome_table.h"
#include "cases/files/read_table.h"
#include "cases/study/study_folder.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

namespace gapstrain::cases {

namespace {

Eigen::VectorXd as_vector(const std::vector<double>& values) {
  return Eigen::Map<const Eigen::VectorXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

}  // namespace

std::string variable_column(const Variable& variable) {
  return variable.unit.empty() ? variable.name : fmt::format("{}_{}", variable.name, variable.unit);
}

Eigen::VectorXd SweepTable::finding(const std::string& name) const {
  return as_vector(read_numbers(folder_ / StudyFolder::final_name, {figure_column(name)}).front());
}

Eigen::VectorXd SweepTable::variable(std::size_t index) const {
  const Variable& variable = study_.variables[index];
  const std::string column = variable_column(variable);
  if (variable.is_numeric()) return as_vector(read_numbers(folder_ / StudyFolder::final_name, {column}).front());
  const auto texts = read_texts(folder_ / StudyFolder::final_name, column);
  const auto known = levels(index);
  std::vector<double> places;
  for (const auto& text : texts) {
    const auto found =
        std::find_if(known.begin(), known.end(), [&](const Level& level) { return level.text == text; });
    places.push_back(found == known.end() ? std::numeric_limits<double>::quiet_NaN() : found->value);
  }
  return as_vector(places);
}

Eigen::MatrixXd SweepTable::variables() const {
  Eigen::MatrixXd all(static_cast<Eigen::Index>(study_.rows()),
                      static_cast<Eigen::Index>(study_.variables.size()));
  for (std::size_t k = 0; k < study_.variables.size(); ++k) all.col(static_cast<Eigen::Index>(k)) = variable(k);
  return all;
}

std::size_t SweepTable::variable_index(const std::string& name) const {
  const auto found = std::find_if(study_.variables.begin(), study_.variables.end(),
                                  [&](const Variable& variable) { return variable.name == name; });
  return static_cast<std::size_t>(found - study_.variables.begin());
}

Eigen::VectorXd SweepTable::named(const std::string& name) const {
  const std::size_t index = variable_index(name);
  return index < study_.variables.size() ? variable(index) : finding(name);
}

std::vector<SweepTable::Level> SweepTable::levels(std::size_t index) const {
  const Variable& variable = study_.variables[index];
  const auto* listed = std::get_if<std::vector<Setting>>(&variable.takes);
  std::vector<Level> levels;
  if (listed == nullptr) return levels;
  for (const auto& setting : *listed)
    levels.push_back({setting.number.value_or(static_cast<double>(levels.size() + 1)), setting.text});
  return levels;
}

std::vector<std::string> SweepTable::states() const {
  return read_texts(folder_ / StudyFolder::final_name, "state");
}

std::vector<std::string> asked_findings(const StudyFile& study) {
  std::vector<std::string> findings;
  const auto add = [&](const std::string& name) {
    if (std::find(findings.begin(), findings.end(), name) == findings.end()) findings.push_back(name);
  };
  for (const auto& limit : study.limits) add(limit.finding);
  for (const auto& chart : study.charts)
    for (const auto& name : chart.y) add(name);
  if (findings.empty()) findings = {"peak_stress", "gap_strain"};
  return findings;
}

AxisWords axis_of(const StudyFile& study, const std::string& name) {
  for (const auto& variable : study.variables)
    if (variable.name == name)
      return {variable.unit.empty() ? name : fmt::format("{}, {}", name, variable.unit), 1.0};
  const FigureWords words = words_of(name);
  return {words.axis, words.scale};
}

}  // namespace gapstrain::cases
