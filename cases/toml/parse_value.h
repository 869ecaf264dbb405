// One value of a file against what its key allows.
#pragma once

#include "cases/toml/document.h"
#include "cases/toml/key.h"

#include <optional>
#include <stdexcept>
#include <string>
#include <variant>
#include <vector>

namespace gapstrain::cases {

// Quantities in the units of models/parts/units.h; Kind::measure as a value, Kind::values as several. Nothing yet:
// the default.
using ParsedValue = std::variant<std::monostate, double, int, std::string, std::vector<int>, std::vector<double>,
                                 std::vector<std::string>, Value, std::vector<Value>>;

struct ValueError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// @pre the key's kind is not a table's.
// @throw ValueError with what was found, what is allowed and how to mend it.
ParsedValue parse_value(const Value& value, const Key& key);

// A plain number, a whole number or a quantity.
bool is_numeric(const Key& key);

// The number of a value of a numeric key, in the unit if it is a quantity.
// @throw ValueError for a value that the key does not allow
double number_of(const Value& value, const Key& key, const std::string& unit);

// The literal default of a key; monostate for the other needs.
ParsedValue parse_fallback(const Key& key);

// What is wrong with so many repeated tables of a key; nothing when they are allowed. @pre has_range(key)
std::optional<std::string> fault_of_number_of_tables(std::size_t number, const Key& key);

// As messages quote a value: 12, "3 mm", a list, a table. What cannot be seen is spelt out, see `visible`.
std::string quote(const Value& value);

}  // namespace gapstrain::cases
