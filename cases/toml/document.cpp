// The only file that includes toml++, which is slow to compile.
#include "cases/toml/document.h"

#include <toml++/toml.h>

#include <sstream>
#include <type_traits>

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

toml::table from_table(const Table& table);
toml::array from_items(const std::vector<Value>& items);

// Hands the value on as the library's own kind of node.
template <class Insert>
void with_node(const Value& value, const Insert& insert) {
  std::visit(
      [&](const auto& content) {
        using Content = std::decay_t<decltype(content)>;
        if constexpr (std::is_same_v<Content, Table>)
          insert(from_table(content));
        else if constexpr (std::is_same_v<Content, std::vector<Value>>)
          insert(from_items(content));
        else if constexpr (!std::is_same_v<Content, DateOrTime>)
          insert(content);
      },
      value.content);
}

toml::array from_items(const std::vector<Value>& items) {
  toml::array array;
  for (const auto& item : items) with_node(item, [&](auto node) { array.push_back(std::move(node)); });
  return array;
}

toml::table from_table(const Table& table) {
  toml::table result;
  for (const auto& entry : table.entries)
    with_node(entry.value, [&](auto node) { result.insert_or_assign(entry.key, std::move(node)); });
  return result;
}

}  // namespace

std::string format_toml(const Table& tree) {
  std::ostringstream text;
  text << from_table(tree) << '\n';
  return text.str();
}

Table parse_toml(std::string_view text) {
  try {
    return to_table(toml::parse(text));
  } catch (const toml::parse_error& error) {
    throw SyntaxError(place_of(error.source()), std::string(error.description()));
  }
}

}  // namespace gapstrain::cases
