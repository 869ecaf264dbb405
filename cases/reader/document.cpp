// The only file that includes toml++, which is slow to compile.
#include "cases/reader/document.h"

#include <toml++/toml.h>

namespace gapstrain::cases {

namespace {

Place place_of(const toml::source_region& region) {
  return {static_cast<int>(region.begin.line), static_cast<int>(region.begin.column)};
}

Table to_table(const toml::table& table);

Value to_value(const toml::node& node) {
  Value value{place_of(node.source()), DateOrTime{}};
  if (const auto* flag = node.as_boolean()) value.content = flag->get();
  if (const auto* whole = node.as_integer()) value.content = whole->get();
  if (const auto* number = node.as_floating_point()) value.content = number->get();
  if (const auto* text = node.as_string()) value.content = text->get();
  if (const auto* table = node.as_table()) value.content = to_table(*table);
  if (const auto* array = node.as_array()) {
    std::vector<Value> items;
    for (const auto& item : *array) items.push_back(to_value(item));
    value.content = std::move(items);
  }
  return value;
}

Table to_table(const toml::table& table) {
  Table result{place_of(table.source()), {}};
  for (const auto& [key, node] : table)
    result.entries.push_back({std::string(key.str()), place_of(key.source()), to_value(node)});
  return result;
}

}  // namespace

Table parse_toml(std::string_view text) {
  try {
    return to_table(toml::parse(text));
  } catch (const toml::parse_error& error) {
    throw SyntaxError(place_of(error.source()), std::string(error.description()));
  }
}

}  // namespace gapstrain::cases
