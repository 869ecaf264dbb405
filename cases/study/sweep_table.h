// A sweep's table of rows as columns of numbers.
#pragma once

#include "cases/study/study_file.h"

#include <Eigen/Core>

#include <filesystem>
#include <string>
#include <vector>

namespace gapstrain::cases {

// "standoff_mm" of a variable called standoff.
std::string variable_column(const Variable& variable);

class SweepTable {
 public:
  SweepTable(const std::filesystem::path& folder, const StudyFile& study) : folder_(folder), study_(study) {}

  // NaN where a row has none.
  Eigen::VectorXd finding(const std::string& name) const;

  // Its numbers; of texts and lists the place among the variable's values, from 1.
  Eigen::VectorXd variable(std::size_t index) const;

  // All of them, a column each.
  Eigen::MatrixXd variables() const;

  // A varied name or a finding.
  Eigen::VectorXd named(const std::string& name) const;

  // The variable of that name. @pre there is one
  std::size_t variable_index(const std::string& name) const;

  // Values of a variable that takes no others, as numbers of `variable` and as words. Empty for a distribution.
  struct Level {
    double value = 0.0;
    std::string text;
  };
  std::vector<Level> levels(std::size_t index) const;

  std::vector<std::string> states() const;

 private:
  std::filesystem::path folder_;
  const StudyFile& study_;
};

// The findings that a study asks about: of its limits and charts; peak stress and gap strain when it names none.
std::vector<std::string> asked_findings(const StudyFile& study);

// "standoff, mm" as an axis, and the axis of a varied name or a finding with the factor its values take.
struct AxisWords {
  std::string name;
  double scale = 1.0;
};
AxisWords axis_of(const StudyFile& study, const std::string& name);

}  // namespace gapstrain::cases
