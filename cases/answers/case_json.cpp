#include "cases/answers/case_json.h"

#include <fmt/format.h>

#include <cmath>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

namespace gapstrain::cases {

namespace {

Value value_of(const Json& json) {
  Value value;
  if (json.is_boolean())
    value.content = json.get<bool>();
  else if (json.is_number_integer())
    value.content = json.get<std::int64_t>();
  else if (json.is_number())
    value.content = json.get<double>();
  else if (json.is_string())
    value.content = json.get<std::string>();
  else if (json.is_object())
    value.content = table_of(json);
  else if (json.is_array()) {
    std::vector<Value> items;
    for (const auto& item : json) items.push_back(value_of(item));
    value.content = std::move(items);
  } else {
    throw RequestError("a list of a case holds null, which TOML does not have");
  }
  return value;
}

}  // namespace

Json to_json(const Value& value) {
  return std::visit(
      [](const auto& content) -> Json {
        using Content = std::decay_t<decltype(content)>;
        if constexpr (std::is_same_v<Content, Table>) {
          return to_json(content);
        } else if constexpr (std::is_same_v<Content, std::vector<Value>>) {
          Json list = Json::array();
          for (const auto& item : content) list.push_back(to_json(item));
          return list;
        } else if constexpr (std::is_same_v<Content, DateOrTime>) {
          return nullptr;
        } else {
          return content;
        }
      },
      value.content);
}

Json to_json(const Table& table) {
  Json json = Json::object();
  for (const auto& entry : table.entries) json[entry.key] = to_json(entry.value);
  return json;
}

Table table_of(const Json& json) {
  if (!json.is_object()) throw RequestError("a table of a case is wanted, as a JSON object");
  Table table;
  for (const auto& [key, value] : json.items())
    if (!value.is_null()) table.entries.push_back({key, {}, value_of(value)});
  return table;
}

void patch(Json& target, const Json& changes) {
  if (!changes.is_object()) throw RequestError("the changes of a case are a JSON object");
  if (!target.is_object()) target = Json::object();
  for (const auto& [key, value] : changes.items()) {
    if (value.is_null())
      target.erase(key);
    else if (value.is_object())
      patch(target[key], value);
    else
      target[key] = value;
  }
}

bool are_same(const Json& one, const Json& other) { return nlohmann::json(one) == nlohmann::json(other); }

Json difference(const Json& from, const Json& to) {
  Json changes = Json::object();
  for (const auto& [key, value] : from.items())
    if (!to.contains(key)) changes[key] = nullptr;
  for (const auto& [key, value] : to.items()) {
    if (!from.contains(key)) {
      changes[key] = value;
    } else if (!are_same(from[key], value)) {
      if (value.is_object() && from[key].is_object())
        changes[key] = difference(from[key], value);
      else
        changes[key] = value;
    }
  }
  return changes;
}

}  // namespace gapstrain::cases
