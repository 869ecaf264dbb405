#include "cases/reader/section.h"

#include "cases/reader/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

namespace gapstrain::cases {

namespace {

std::vector<std::string> names_of(std::string_view schema) {
  std::vector<std::string> names;
  for (const Key* key : keys_of(schema)) names.emplace_back(key->name);
  return names;
}

// For a word without a near key in its table: the table that knows the word, else all keys of the word's table.
std::string mend_unknown_key(std::string_view schema, const std::string& word) {
  for (const auto& key : case_keys())
    if (key.name == word)
      return key.table.empty() ? fmt::format("\"{}\" stands at the top of the file, before the first table", word)
                               : fmt::format("\"{}\" belongs into {}", word, header_of(key.table));
  return fmt::format("known here: {}", fmt::join(names_of(schema), ", "));
}

bool is_list_of_tables(const Value& value) {
  const auto* items = std::get_if<std::vector<Value>>(&value.content);
  return items != nullptr && !items->empty() && std::all_of(items->begin(), items->end(), [](const Value& item) {
           return std::holds_alternative<Table>(item.content);
         });
}

std::string missing(const Key& key) {
  if (key.kind == Kind::table || key.kind == Kind::tables)
    return fmt::format("missing; add {}: {}", header_of(join_path(key.table, key.name)), key.meaning);
  if (const auto dimension = dimension_of(key.kind))
    return fmt::format("missing; add {}, such as {} = \"{}\": {}", with_article(*dimension), key.name,
                       example_of(*dimension), key.meaning);
  return fmt::format("missing; add {}: {}", key.name, key.meaning);
}

// What is wrong with the value of a key that is a table or a list of tables.
std::optional<std::string> table_fault(const Value& value, const Key& key) {
  const bool is_list = is_list_of_tables(value);
  const std::string header = header_of(join_path(key.table, key.name));
  if (key.kind == Kind::tables && !is_list)
    return fmt::format("found {}; a list of tables is wanted here: write {}", quote(value), header);
  if (key.kind == Kind::table && is_list)
    return fmt::format("found a list of tables, but there is only one: write {}", header);
  if (key.kind == Kind::table && !std::holds_alternative<Table>(value.content))
    return fmt::format("found {}; a table is wanted here: write {}", quote(value), header);
  return std::nullopt;
}

// The literal default of every key, parsed once.
const ParsedValue* fallback_of(std::string_view schema, std::string_view name) {
  static const auto fallbacks = [] {
    std::map<std::string, ParsedValue, std::less<>> all;
    for (const auto& key : case_keys()) all[join_path(key.table, key.name)] = parse_fallback(key);
    return all;
  }();
  return &fallbacks.at(join_path(schema, name));
}

}  // namespace

Section::Section(const Table& file, Reading& reading) : Section(&file, "", "", reading) {}

Section::Section(const Table* table, std::string path, std::string schema, Reading& reading)
    : table_(table), path_(std::move(path)), schema_(std::move(schema)), reading_(&reading) {
  if (!present()) return;
  reading_->places.add(path_, table_->place);
  for (const auto& entry : table_->entries) check_entry(entry);
  for (const Key* key : keys_of(schema_))
    if (key->need == Need::required && !has(key->name)) complain(key->name, missing(*key));
}

void Section::check_entry(const Entry& entry) {
  const std::string path = path_of(entry.key);
  const auto report = [&](Place place, const std::string& message) {
    reading_->problems.push_back({place, path, message});
  };
  const Key* key = find_key(schema_, entry.key);
  if (key == nullptr) {
    const auto nearest = nearest_word(entry.key, names_of(schema_));
    if (nearest && written(*nearest) == nullptr) misspelt_.insert(*nearest);
    return report(entry.place, "unknown key; " + (nearest ? fmt::format("did you mean \"{}\"?", *nearest)
                                                          : mend_unknown_key(schema_, entry.key)));
  }

  const Value& value = entry.value;
  reading_->places.add(path, value.place);
  if (const auto* items = std::get_if<std::vector<Value>>(&value.content))
    for (std::size_t i = 0; i < items->size(); ++i)
      reading_->places.add(fmt::format("{}[{}]", path, i), (*items)[i].place);
  if (key->kind == Kind::table || key->kind == Kind::tables) {
    if (const auto fault = table_fault(value, *key)) report(value.place, *fault);
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
  assert(find_key(schema_, key) != nullptr && "the reader asks for a key that case_keys() does not know");
  const auto value = values_.find(key);
  if (value != values_.end()) return &value->second;
  return has(key) ? nullptr : fallback_of(schema_, key);
}

std::optional<double> Section::number(std::string_view key, std::optional<Dimension> dimension) const {
  assert(dimension_of(find_key(schema_, key)->kind) == dimension);
  static_cast<void>(dimension);
  const auto* value = parsed(key);
  const auto* number = value == nullptr ? nullptr : std::get_if<double>(value);
  return number == nullptr ? std::nullopt : std::optional(*number);
}

std::optional<std::string> Section::text(std::string_view key) const {
  const auto* value = parsed(key);
  const auto* text = value == nullptr ? nullptr : std::get_if<std::string>(value);
  return text == nullptr ? std::nullopt : std::optional(*text);
}

std::optional<int> Section::count(std::string_view key) const {
  const auto* value = parsed(key);
  const auto* count = value == nullptr ? nullptr : std::get_if<int>(value);
  return count == nullptr ? std::nullopt : std::optional(*count);
}

std::vector<int> Section::counts(std::string_view key) const {
  const auto* value = parsed(key);
  const auto* counts = value == nullptr ? nullptr : std::get_if<std::vector<int>>(value);
  return counts == nullptr ? std::vector<int>{} : *counts;
}

std::vector<std::string> Section::texts(std::string_view key) const {
  const auto* value = parsed(key);
  const auto* texts = value == nullptr ? nullptr : std::get_if<std::vector<std::string>>(value);
  return texts == nullptr ? std::vector<std::string>{} : *texts;
}

Section Section::section(std::string_view key) const {
  const Value* value = written(key);
  const auto* table = value == nullptr ? nullptr : std::get_if<Table>(&value->content);
  return {table, path_of(key), join_path(schema_, key), *reading_};
}

std::vector<Section> Section::sections(std::string_view key) const {
  std::vector<Section> all;
  const Value* value = written(key);
  if (value == nullptr || !is_list_of_tables(*value)) return all;
  for (const auto& item : std::get<std::vector<Value>>(value->content))
    all.push_back({&std::get<Table>(item.content), fmt::format("{}[{}]", path_of(key), all.size()),
                   join_path(schema_, key), *reading_});
  return all;
}

void Section::complain(std::string_view key, const std::string& message) const {
  const Value* value = written(key);
  const Place place = value != nullptr ? value->place : present() ? table_->place : Place{};
  reading_->problems.push_back({place, path_of(key), message});
}

void Section::require(const std::vector<std::string_view>& keys, std::string_view why) const {
  for (const auto key : keys)
    if (!has(key)) complain(key, fmt::format("missing; {}", why));
}

}  // namespace gapstrain::cases
