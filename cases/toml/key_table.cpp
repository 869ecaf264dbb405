#include "cases/toml/key_table.h"

#include <fmt/format.h>

namespace gapstrain::cases {

KeyTable::KeyTable(std::vector<Key> keys) : keys_(std::move(keys)) {
  for (std::size_t i = 0; i < keys_.size(); ++i) {
    fallbacks_.push_back(parse_fallback(keys_[i]));
    indices_[{keys_[i].table, keys_[i].name}] = i;
  }
}

const Key* KeyTable::find(std::string_view table, std::string_view name) const {
  const auto index = indices_.find({table, name});
  return index == indices_.end() ? nullptr : &keys_[index->second];
}

std::vector<const Key*> KeyTable::keys_of(std::string_view table) const {
  std::vector<const Key*> found;
  for (const auto& key : keys_)
    if (key.table == table) found.push_back(&key);
  return found;
}

std::vector<std::string> KeyTable::names_of(std::string_view table) const {
  std::vector<std::string> names;
  for (const Key* key : keys_of(table)) names.emplace_back(key->name);
  return names;
}

std::string KeyTable::header_of(std::string_view table) const {
  for (const auto& key : keys_)
    if (key.kind == Kind::tables && join_path(key.table, key.name) == table) return fmt::format("[[{}]]", table);
  return fmt::format("[{}]", table);
}

const ParsedValue& KeyTable::fallback_of(std::string_view table, std::string_view name) const {
  return fallbacks_.at(indices_.at({table, name}));
}

}  // namespace gapstrain::cases
