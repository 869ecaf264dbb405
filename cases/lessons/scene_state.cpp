#include "cases/lessons/scene_state.h"

#include "cases/text/words.h"
#include "models/assembly/prepared_bodies.h"
#include "models/layouts/ready_screws.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <utility>

namespace gapstrain::cases {

namespace {

const Value* value_in(const Table& table, std::string_view key) {
  const auto entry =
      std::find_if(table.entries.begin(), table.entries.end(), [&](const Entry& one) { return one.key == key; });
  return entry == table.entries.end() ? nullptr : &entry->value;
}

// Of all that stands in a state's `case`: the reader of the case knows no more than its keys.
void add_places(const std::string& path, const Value& value, Reading& reading) {
  reading.places.add(path, value.place);
  if (std::holds_alternative<DateOrTime>(value.content))
    reading.problems.push_back({value.place, path, "found a date or time; no key of a case takes one", false});
  if (const auto* items = std::get_if<std::vector<Value>>(&value.content))
    for (std::size_t k = 0; k < items->size(); ++k)
      add_places(fmt::format("{}[{}]", path, k), (*items)[k], reading);
  if (const auto* inner = std::get_if<Table>(&value.content))
    for (const auto& entry : inner->entries)
      add_places(fmt::format("{}.{}", path, entry.key), entry.value, reading);
}

// "plate.slot_length" falls away. Whether it was there.
bool drop(Json& tables, const std::string& path) {
  const auto dot = path.find('.');
  if (dot == std::string::npos) return tables.erase(path) > 0;
  const std::string first = path.substr(0, dot);
  return tables.contains(first) && tables[first].is_object() && drop(tables[first], path.substr(dot + 1));
}

}  // namespace

const Table* table_in(const Table& table, std::string_view key) {
  const Value* value = value_in(table, key);
  return value == nullptr ? nullptr : std::get_if<Table>(&value->content);
}

std::vector<const Table*> tables_in(const Table& table, std::string_view key) {
  std::vector<const Table*> tables;
  const Value* value = value_in(table, key);
  const auto* items = value == nullptr ? nullptr : std::get_if<std::vector<Value>>(&value->content);
  if (items == nullptr) return tables;
  for (const auto& item : *items)
    if (const auto* one = std::get_if<Table>(&item.content)) tables.push_back(one);
  return tables;
}

Json SceneStates::variant_tables(std::size_t number) const {
  Json tables = page_->tables;
  patch(tables, page_->variants[number].changes);
  return tables;
}

std::optional<Json> SceneStates::changed(const Section& section, const Table& tables, Json from) const {
  const std::size_t faults = reading_->problems.size();
  const auto without = section.texts("without");
  for (std::size_t k = 0; k < without.size(); ++k)
    if (!drop(from, without[k]))
      section.complain("without", k,
                       fmt::format("found \"{}\", which is no key of the state that it would fall away from",
                                   visible(without[k])));
  if (const Value* value = value_in(tables, "case")) {
    add_places(section.path_of("case"), *value, *reading_);
    if (const auto* inner = std::get_if<Table>(&value->content)) {
      static constexpr std::array<std::pair<const char*, const char*>, 3> elsewhere{
          {{"candidate", "screws that the mesh is made ready for are the case's: write them into its file"},
           {"base", "a state differs from the lesson's case: write what differs, under its keys"},
           {"without", "it stands beside [case], not in it"}}};
      for (const auto& [key, mend] : elsewhere)
        if (const Value* wrong = value_in(*inner, key))
          reading_->problems.push_back(
              {wrong->place, fmt::format("{}.{}", section.path_of("case"), key), mend, false});
      if (reading_->problems.size() == faults) patch(from, to_json(*inner));
    }
  }
  if (reading_->problems.size() > faults) return std::nullopt;
  return from;
}

std::optional<CaseFile> SceneStates::checked(const Section& section, Json tables) const {
  if (!page_->candidates.is_null()) tables["candidate"] = page_->candidates;
  try {
    return read_case_tree(*file_, "", table_of(tables));
  } catch (const CaseError& error) {
    for (const auto& problem : error.problems) {
      const std::string key = join_path(section.path_of("case"), problem.key);
      reading_->problems.push_back({reading_->places.find(key).place, key, problem.message, false});
    }
    return std::nullopt;
  }
}

void SceneStates::add_variant(const Section& section, const Table& tables) {
  const auto name = section.text("name");
  const Json entered = variant_tables(0);
  const auto state = changed(section, tables, entered);
  const auto file = state ? checked(section, *state) : std::nullopt;
  if (!file || !name) return;
  for (const auto& other : page_->variants)
    if (other.label == *name)
      return section.complain("name", fmt::format("found \"{}\", which another variant is called; give it a name "
                                                  "of its own",
                                                  visible(*name)));
  page_->variants.push_back({*name, difference(entered, *state), file->construct, screws_for_page(*file)});
}

std::optional<SceneState> SceneStates::read(const Section& section, const Table& tables) const {
  SceneState state;
  state.path = section.path();
  if (const auto name = section.text("variant")) {
    std::vector<std::string> names;
    for (const auto& variant : page_->variants) names.push_back(variant.label);
    const auto found = std::find(names.begin() + 1, names.end(), *name);
    if (found == names.end()) {
      names.erase(names.begin());
      section.complain("variant", fmt::format("found \"{}\"{}; {}", visible(*name), did_you_mean(*name, names),
                                              names.empty() ? "the lesson has no [[variant]] yet: add it"
                                                            : "its variants: " + join_or(names)));
      return std::nullopt;
    }
    state.page.variant = static_cast<std::size_t>(found - names.begin());
  }
  const Json entered = variant_tables(state.page.variant);
  const auto tables_now = changed(section, tables, entered);
  const auto file = tables_now ? checked(section, *tables_now) : std::nullopt;
  if (!file) return std::nullopt;
  const PageVariant& variant = page_->variants[state.page.variant];
  const auto screws = models::screws_to_make_ready(file->construct, variant.candidates);
  if (screws.size() == variant.candidates.size() &&
      !models::have_same_bodies(variant.construct, variant.candidates, file->construct, screws)) {
    section.complain("",
                     "the page holds no bodies for another bone, plate, fracture, wire or place of a force; what "
                     "needs them is a [[variant]] with what differs, and the scene names it: variant = \"...\"");
    return std::nullopt;
  }
  state.page.changes = difference(entered, *tables_now);
  for (const auto& load : file->construct.loads) state.loads.push_back(load.name);
  state.page.loads = state.loads.size();
  return state;
}

}  // namespace gapstrain::cases
