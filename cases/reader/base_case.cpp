#include "cases/reader/base_case.h"

#include "cases/reader/read_case.h"
#include "cases/text/words.h"
#include "cases/toml/parse_value.h"
#include "cases/toml/text_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t most_bases = 8;  // one on another

Entry* find(Table& table, std::string_view key) {
  const auto entry =
      std::find_if(table.entries.begin(), table.entries.end(), [&](const Entry& e) { return e.key == key; });
  return entry == table.entries.end() ? nullptr : &*entry;
}

void move_all_to(Table& table, Place place) {
  table.place = place;
  const auto move_value = [&](const auto& self, Value& value) -> void {
    value.place = place;
    if (auto* items = std::get_if<std::vector<Value>>(&value.content))
      for (auto& item : *items) self(self, item);
    if (auto* inner = std::get_if<Table>(&value.content)) move_all_to(*inner, place);
  };
  for (auto& entry : table.entries) {
    entry.place = place;
    move_value(move_value, entry.value);
  }
}

void merge(Table& base, const Table& changes) {
  for (const auto& change : changes.entries) {
    Entry* entry = find(base, change.key);
    if (entry == nullptr) {
      base.entries.push_back(change);
      continue;
    }
    auto* table = std::get_if<Table>(&entry->value.content);
    const auto* more = std::get_if<Table>(&change.value.content);
    if (table != nullptr && more != nullptr) {
      table->place = more->place;
      merge(*table, *more);
    } else {
      *entry = change;
    }
  }
}

// "plate.slot_length" of the base falls away.
void drop(Table& base, const std::string& path, Place place, const std::string& file) {
  const auto dot = path.find('.');
  const std::string first = path.substr(0, dot);
  Entry* entry = find(base, first);
  Table* inner = entry != nullptr ? std::get_if<Table>(&entry->value.content) : nullptr;
  if (entry != nullptr && dot == std::string::npos) {
    std::erase_if(base.entries, [&](const Entry& e) { return e.key == first; });
    return;
  }
  if (inner == nullptr) {
    std::vector<std::string> known;
    for (const auto& other : base.entries) known.push_back(other.key);
    throw CaseError(file,
                    {{place, "without",
                      fmt::format("the base case has no \"{}\"; it has: {}", first, fmt::join(known, ", "))}});
  }
  drop(*inner, path.substr(dot + 1), place, file);
}

const std::string& text_of(const Entry& entry, const std::string& file, const char* wanted) {
  if (const auto* text = std::get_if<std::string>(&entry.value.content)) return *text;
  throw CaseError(file, {{entry.value.place, entry.key, fmt::format("found {}; {}", quote(entry.value), wanted)}});
}

std::vector<std::string> list_of(const Entry& entry, const std::string& file) {
  constexpr auto wanted = "a list of keys of the base case is wanted, such as [\"step\", \"plate.slot_length\"]";
  const auto* items = std::get_if<std::vector<Value>>(&entry.value.content);
  if (items == nullptr) return {text_of(entry, file, wanted)};
  std::vector<std::string> texts;
  for (const auto& item : *items) texts.push_back(text_of({entry.key, entry.place, item}, file, wanted));
  return texts;
}

// The base that `file` names; its text, or what is wrong with naming it, at that place.
std::string read_base(const fs::path& path, const std::vector<fs::path>& above, const std::string& file,
                      Place place) {
  const auto fail = [&](const std::string& message) { throw CaseError(file, {{place, "base", message}}); };
  const auto is_same = [&](const fs::path& other) {
    std::error_code ignored;
    return fs::equivalent(other, path, ignored);
  };
  if (const auto same = std::find_if(above.begin(), above.end(), is_same); same != above.end())
    fail(fmt::format("found \"{}\", {}; a case must not be its own base, by itself or through others",
                     path.string(),
                     same + 1 == above.end() ? "which is this file" : "which has this file as a base itself"));
  if (above.size() > most_bases)
    fail(
        fmt::format("this would be the base number {} on one another; allowed are {}. Put some of them together "
                    "in one file",
                    above.size(), most_bases));
  std::error_code ignored;
  if (fs::is_directory(path, ignored))
    fail(fmt::format("found \"{}\", which is a folder; the name of a case file is wanted", path.string()));
  if (!fs::exists(path, ignored))
    fail(fmt::format("found \"{}\", but there is no such file; it is looked for from this file's folder",
                     visible(path.string())));
  return read_text(path, "base case");
}

// `above`: the files that led here, this one last.
WholeCase put_together(const std::string& file, const std::string& text, std::vector<fs::path> above) {
  WholeCase whole{text, parse_file(file, text)};
  const Entry* base = find(whole.tree, "base");
  const Entry* without = find(whole.tree, "without");
  if (base == nullptr) {
    if (without != nullptr)
      throw CaseError(file, {{without->place, "without",
                              "keys can only fall away from a base case; name one with base = \"...\""}});
    return whole;
  }
  const Place place = base->value.place;
  const fs::path path = (fs::path(file).parent_path() / text_of(*base, file, "the name of a case file is wanted"))
                            .lexically_normal();
  above.emplace_back(file);
  const std::string base_text = read_base(path, above, file, place);
  WholeCase result = put_together(path.string(), base_text, std::move(above));
  read_case_tree(path.string(), base_text, result.tree);  // its own faults, in its own file
  move_all_to(result.tree, place);
  if (without != nullptr)
    for (const auto& key : list_of(*without, file)) drop(result.tree, key, without->value.place, file);
  std::erase_if(whole.tree.entries,
                [](const Entry& entry) { return entry.key == "base" || entry.key == "without"; });
  merge(result.tree, whole.tree);
  result.text = fmt::format("# Put together from {} and its base case {}.\n{}", fs::path(file).filename().string(),
                            path.filename().string(), format_toml(result.tree));
  return result;
}

}  // namespace

WholeCase whole_case(const std::string& file, const std::string& text) { return put_together(file, text, {}); }

}  // namespace gapstrain::cases
