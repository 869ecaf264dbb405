#include "cases/toml/section.h"

#include "cases/text/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

namespace gapstrain::cases {

namespace {

// For a word without a near key in its table: the table that knows the word, else all keys of the word's table.
std::string mend_unknown_key(const KeyTable& keys, std::string_view schema, const std::string& word) {
  for (const auto& key : keys.keys())
    if (key.name == word)
      return key.table.empty() ? fmt::format("\"{}\" stands at the top of the file, before the first table", word)
                               : fmt::format("\"{}\" belongs into {}", word, keys.header_of(key.table));
  return fmt::format("known here: {}", fmt::join(keys.names_of(schema), ", "));
}

bool is_list_of_tables(const Value& value) {
  const auto* items = std::get_if<std::vector<Value>>(&value.content);
  return items != nullptr && !items->empty() && std::all_of(items->begin(), items->end(), [](const Value& item) {
           return std::holds_alternative<Table>(item.content);
         });
}

std::string missing(const KeyTable& keys, const Key& key) {
  if (is_table(key))
    return fmt::format("missing; add {}: {}", keys.header_of(join_path(key.table, key.name)), key.meaning);
  if (const auto dimension = dimension_of(key.kind))
    return fmt::format("missing; add {}, such as {} = \"{}\": {}", with_article(*dimension), key.name,
                       example_of(*dimension), key.meaning);
  return fmt::format("missing; add {}: {}", key.name, key.meaning);
}

// What is wrong with the value of a key that is a table or a list of tables.
std::optional<std::string> table_fault(const KeyTable& keys, const Value& value, const Key& key) {
  const bool is_list = is_list_of_tables(value);
  const std::string header = keys.header_of(join_path(key.table, key.name));
  if (key.kind == Kind::tables && !is_list)
    return fmt::format("found {}; a list of tables is wanted here: write {}", quote(value), header);
  if (key.kind == Kind::table && is_list)
    return fmt::format("found a list of tables, but there is only one: write {}", header);
  if (is_list && has_range(key))
    return fault_of_number_of_tables(std::get<std::vector<Value>>(value.content).size(), key);
  if (key.kind == Kind::table && !std::holds_alternative<Table>(value.content))
    return fmt::format("found {}; a table is wanted here: write {}", quote(value), header);
  return std::nullopt;
}

}  // namespace

Section::Section(const Table& file, const KeyTable& keys, Reading& reading)
    : Section(&file, "", "", keys, reading) {}

Section::Section(const Table* table, std::string path, std::string schema, const KeyTable& keys, Reading& reading)
    : table_(table), path_(std::move(path)), schema_(std::move(schema)), keys_(&keys), reading_(&reading) {
  if (!present()) return;
  reading_->places.add(path_, table_->place);
  for (const auto& entry : table_->entries) check_entry(entry);
  for (const Key* key : keys_->keys_of(schema_))
    if (key->need == Need::required && !has(key->name)) complain(key->name, missing(*keys_, *key));
}

void Section::check_entry(const Entry& entry) {
  const std::string path = path_of(entry.key);
  const auto report = [&](Place place, const std::string& message) {
    reading_->problems.push_back({place, path, message});
  };
  const Key* key = keys_->find(schema_, entry.key);
  if (key == nullptr) {
    const auto nearest = nearest_word(entry.key, keys_->names_of(schema_));
    if (nearest && written(*nearest) == nullptr) misspelt_.insert(*nearest);
    return report(entry.place, "unknown key; " + (nearest ? fmt::format("did you mean \"{}\"?", *nearest)
                                                          : mend_unknown_key(*keys_, schema_, entry.key)));
  }

  const Value& value = entry.value;
  reading_->places.add(path, value.place);
  if (const auto* items = std::get_if<std::vector<Value>>(&value.content))
    for (std::size_t i = 0; i < items->size(); ++i)
      reading_->places.add(fmt::format("{}[{}]", path, i), (*items)[i].place);
  if (is_table(*key)) {
    if (const auto fault = table_fault(*keys_, value, *key)) report(value.place, *fault);
    return;
  }
  try {
    values_[entry.key] = parse_value(value, *key);
  } catch (const ValueError& error) {
    report(value.place, error.what());
  }
}

std::string Section::path_of(std::string_view key) const { return join_path(path_, key); }

const Value* Section::written(std::string_view key) const {
  if (!present()) return nullptr;
  for (const auto& entry : table_->entries)
    if (entry.key == key) return &entry.value;
  return nullptr;
}

bool Section::has(std::string_view key) const { return written(key) != nullptr || misspelt_.contains(key); }

bool Section::has_any(const std::vector<std::string_view>& keys) const {
  return std::any_of(keys.begin(), keys.end(), [&](std::string_view key) { return has(key); });
}

const ParsedValue* Section::parsed(std::string_view key) const {
  assert(keys_->find(schema_, key) != nullptr && "the reader asks for a key that its table does not know");
  const auto value = values_.find(key);
  if (value != values_.end()) return &value->second;
  return has(key) ? nullptr : &keys_->fallback_of(schema_, key);
}

template <class Content>
std::optional<Content> Section::content(std::string_view key) const {
  const auto* value = parsed(key);
  const auto* content = value == nullptr ? nullptr : std::get_if<Content>(value);
  return content == nullptr ? std::nullopt : std::optional(*content);
}

std::optional<double> Section::number(std::string_view key, std::optional<Dimension> dimension) const {
  assert(dimension_of(keys_->find(schema_, key)->kind) == dimension);
  static_cast<void>(dimension);
  return content<double>(key);
}

std::optional<std::string> Section::text(std::string_view key) const { return content<std::string>(key); }

std::optional<int> Section::count(std::string_view key) const { return content<int>(key); }

std::vector<double> Section::components(std::string_view key) const {
  return content<std::vector<double>>(key).value_or(std::vector<double>{});
}

std::vector<int> Section::counts(std::string_view key) const {
  return content<std::vector<int>>(key).value_or(std::vector<int>{});
}

std::vector<std::string> Section::texts(std::string_view key) const {
  return content<std::vector<std::string>>(key).value_or(std::vector<std::string>{});
}

std::optional<Value> Section::measure(std::string_view key) const { return content<Value>(key); }

std::vector<Value> Section::values(std::string_view key) const {
  return content<std::vector<Value>>(key).value_or(std::vector<Value>{});
}

Section Section::section(std::string_view key) const {
  const Value* value = written(key);
  const auto* table = value == nullptr ? nullptr : std::get_if<Table>(&value->content);
  return {table, path_of(key), join_path(schema_, key), *keys_, *reading_};
}

std::vector<Section> Section::sections(std::string_view key) const {
  std::vector<Section> all;
  const Value* value = written(key);
  if (value == nullptr || table_fault(*keys_, *value, *keys_->find(schema_, key))) return all;
  for (const auto& item : std::get<std::vector<Value>>(value->content))
    all.push_back({&std::get<Table>(item.content), fmt::format("{}[{}]", path_of(key), all.size()),
                   join_path(schema_, key), *keys_, *reading_});
  return all;
}

void Section::complain(std::string_view key, const std::string& message) const {
  const Value* value = written(key);
  const Place place = value != nullptr ? value->place : present() ? table_->place : Place{};
  reading_->problems.push_back({place, path_of(key), message});
}

void Section::complain(std::string_view key, std::size_t index, const std::string& message) const {
  const std::string path = fmt::format("{}[{}]", path_of(key), index);
  reading_->problems.push_back({reading_->places.find(path).place, path, message});
}

void Section::require(const std::vector<std::string_view>& keys, std::string_view why) const {
  for (const auto key : keys)
    if (!has(key)) complain(key, fmt::format("missing; {}", why));
}

}  // namespace gapstrain::cases
