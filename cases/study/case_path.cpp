#include "cases/study/case_path.h"

#include "cases/text/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace gapstrain::cases {

namespace {

PathStep parse_step(const std::string& text, const std::string& path) {
  const auto fail = [&] {
    throw ValueError(
        fmt::format("found \"{}\"; a path is names with points between, and after the name of a list of "
                    "tables its index from 0, such as \"load[0].axial\"",
                    path));
  };
  const auto bracket = text.find('[');
  PathStep step{text.substr(0, bracket), std::nullopt};
  if (step.name.empty() || step.name.find_first_of(" \t]\"'") != std::string::npos) fail();
  if (bracket == std::string::npos) return step;
  std::size_t index = 0;
  const char* const end = text.data() + text.size();
  const auto [rest, fault] = std::from_chars(text.data() + bracket + 1, end, index);
  if (fault != std::errc{} || rest + 1 != end || *rest != ']') fail();
  step.index = index;
  return step;
}

std::vector<PathStep> parse_steps(const std::string& path) {
  std::vector<PathStep> steps;
  for (std::size_t begin = 0; begin <= path.size();) {
    const auto point = std::min(path.find('.', begin), path.size());
    steps.push_back(parse_step(path.substr(begin, point - begin), path));
    begin = point + 1;
  }
  return steps;
}

std::string name_of(const KeyTable& keys, const std::string& schema) {
  return schema.empty() ? "the top of a case file" : keys.header_of(schema);
}

// "bone.station" to "bone.station[0]", for a path that leads there.
std::string example_path(const KeyTable& keys, std::string_view schema) {
  if (schema.empty()) return {};
  const auto point = schema.rfind('.');
  const std::string_view outer = point == std::string_view::npos ? "" : schema.substr(0, point);
  const std::string_view name = point == std::string_view::npos ? schema : schema.substr(point + 1);
  const bool list = keys.find(outer, name)->kind == Kind::tables;
  return join_path(example_path(keys, outer), name) + (list ? "[0]" : "");
}

[[noreturn]] void fail_unknown(const KeyTable& keys, const CasePath& path, const std::string& schema,
                               const std::string& outer, const std::string& word) {
  std::string hint;
  for (const auto& key : keys.keys())
    if (hint.empty() && key.name == word && key.table != schema)
      hint = fmt::format("it belongs into {}: \"{}\"", name_of(keys, std::string(key.table)),
                         join_path(example_path(keys, key.table), word));
  if (const auto nearest = nearest_word(word, keys.names_of(schema)))
    hint = fmt::format("did you mean \"{}\"?", join_path(outer, *nearest));
  if (hint.empty()) hint = fmt::format("known there: {}", fmt::join(keys.names_of(schema), ", "));
  throw ValueError(
      fmt::format("found \"{}\", but {} has no key \"{}\"; {}", path.text, name_of(keys, schema), word, hint));
}

// The tables under `step`; none for an absent one.
std::vector<const Table*> tables_at(const Table* table, const PathStep& step) {
  std::vector<const Table*> tables;
  if (table == nullptr) return tables;
  for (const auto& entry : table->entries) {
    if (entry.key != step.name) continue;
    if (const auto* one = std::get_if<Table>(&entry.value.content)) tables.push_back(one);
    if (const auto* items = std::get_if<std::vector<Value>>(&entry.value.content))
      for (const auto& item : *items)
        if (const auto* one = std::get_if<Table>(&item.content)) tables.push_back(one);
  }
  return tables;
}

// A list of tables needs an index that the case has.
void check_index(const CasePath& path, const PathStep& step, const std::string& written, const std::string& header,
                 std::size_t count) {
  if (count == 0)
    throw ValueError(
        fmt::format("found \"{}\", but the case file has no {}; write it there first", path.text, header));
  const std::string last = count == 1 ? "" : fmt::format(" to \"{}[{}]\"", written, count - 1);
  if (!step.index || *step.index >= count)
    throw ValueError(fmt::format("found \"{}\", but the case file has {} {}, counted from 0: write \"{}[0]\"{}",
                                 path.text, count, header, written, last));
}

void check_last(const KeyTable& keys, const CasePath& path, const std::string& schema,
                const std::string& written) {
  if (is_table(*path.key))
    throw ValueError(fmt::format("found \"{}\", which is a table; name one of its keys: {}", path.text,
                                 fmt::join(keys.names_of(join_path(schema, path.key->name)), ", ")));
  if (path.steps.back().index)
    throw ValueError(fmt::format("found \"{}\", but only lists of tables are counted; \"{}\" is set as a whole",
                                 path.text, written));
}

Value* find_value(Table& table, const std::string& key) {
  const auto entry =
      std::find_if(table.entries.begin(), table.entries.end(), [&](const Entry& e) { return e.key == key; });
  return entry == table.entries.end() ? nullptr : &entry->value;
}

Value& find_or_add(Table& table, const std::string& key, const Value& absent) {
  if (Value* value = find_value(table, key)) return *value;
  table.entries.push_back({key, table.place, absent});
  return table.entries.back().value;
}

// A value from elsewhere takes the place of what it stands for.
void move_to(Value& value, Place place) {
  value.place = place;
  if (auto* items = std::get_if<std::vector<Value>>(&value.content))
    for (auto& item : *items) move_to(item, place);
}

}  // namespace

CasePath find_case_path(const std::string& text, const KeyTable& keys, const Table& tree) {
  CasePath path{text, parse_steps(text), nullptr};
  const Table* table = &tree;  // null below a table that the case does not have
  std::string schema, outer;
  for (std::size_t i = 0; i < path.steps.size(); ++i) {
    const PathStep& step = path.steps[i];
    path.key = keys.find(schema, step.name);
    if (path.key == nullptr) fail_unknown(keys, path, schema, outer, step.name);
    const std::string written = join_path(outer, step.name);
    if (i + 1 == path.steps.size()) {
      check_last(keys, path, schema, written);
      path.text = written;
      break;
    }
    if (!is_table(*path.key))
      throw ValueError(fmt::format("found \"{}\", but \"{}\" is no table; it is set as a whole", text, written));
    schema = join_path(schema, step.name);
    const auto tables = tables_at(table, step);
    const bool list = path.key->kind == Kind::tables;
    if (list) check_index(path, step, written, keys.header_of(schema), tables.size());
    if (!list && step.index)
      throw ValueError(fmt::format("found \"{}\", but there is only one {}: write \"{}\" without an index", text,
                                   keys.header_of(schema), written));
    const std::size_t index = step.index.value_or(0);
    table = index < tables.size() ? tables[index] : nullptr;
    outer = list ? fmt::format("{}[{}]", written, index) : written;
  }
  return path;
}

const Value* value_at(const Table& tree, const CasePath& path) {
  const Table* table = &tree;
  for (std::size_t i = 0; i + 1 < path.steps.size() && table != nullptr; ++i) {
    const auto tables = tables_at(table, path.steps[i]);
    const std::size_t index = path.steps[i].index.value_or(0);
    table = index < tables.size() ? tables[index] : nullptr;
  }
  if (table == nullptr) return nullptr;
  for (const auto& entry : table->entries)
    if (entry.key == path.steps.back().name) return &entry.value;
  return nullptr;
}

void set_value(Table& tree, const CasePath& path, const Value& value) {
  Table* table = &tree;
  for (std::size_t i = 0; i + 1 < path.steps.size(); ++i) {
    const PathStep& step = path.steps[i];
    Value& inner = find_or_add(*table, step.name, {table->place, Table{table->place, {}}});
    auto* items = std::get_if<std::vector<Value>>(&inner.content);
    table = &std::get<Table>(items == nullptr ? inner.content : items->at(step.index.value()).content);
  }
  Value& target = find_or_add(*table, path.steps.back().name, {table->place, DateOrTime{}});
  const Place place = target.place;
  target.content = value.content;
  move_to(target, place);
}

}  // namespace gapstrain::cases
