// What a study varies: one or several keys of a case, and the values they take together.
#pragma once

#include "cases/study/case_path.h"
#include "models/statistics/distribution.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace gapstrain::cases {

struct Setting {
  Value value;                   // as the case file would write it
  std::optional<double> number;  // in the variable's unit; none for texts and lists
  std::string text;              // for a table: the number, or the text or list without quotes and brackets
};

struct Variable {
  std::string name;             // heading in tables and charts
  std::vector<CasePath> paths;  // at least one, all of one kind
  std::string unit;             // as the case file writes the key, "mm"; empty for all but quantities
  // Listed values and the steps of a range one by one; a distribution in the variable's unit.
  std::variant<std::vector<Setting>, models::Distribution> takes;

  const Key& key() const { return *paths.front().key; }
  bool is_numeric() const;
};

// @throw ValueError for a value that the key does not allow
Setting listed(const Value& value, const Key& key, const std::string& unit);

// Of a numeric key; whole numbers are rounded.
Setting numeric(double number, const Key& key, const std::string& unit);

// The setting of the share `probability`, in (0, 1): of listed values each has an equal share, in their order.
Setting at_probability(const Variable& variable, double probability);

}  // namespace gapstrain::cases
