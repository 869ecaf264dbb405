#include "cases/reader/read_parts.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

struct HoldKeys {
  std::string_view word;
  models::HoldKind kind;
  std::vector<std::string_view> needed;
};

// Every key of a hold that is not needed by its kind means nothing there.
models::TemporaryHold read_hold(const Section& section) {
  static const std::vector<HoldKeys> kinds{{"wire", models::HoldKind::wire, {"hole", "diameter"}},
                                           {"plate-clamp", models::HoldKind::plate_clamp, {"along", "force"}},
                                           {"fracture-clamp", models::HoldKind::fracture_clamp, {"force"}}};
  models::TemporaryHold hold;
  hold.label = section.text("label").value_or("");
  const auto word = section.text("kind");
  const auto keys = std::find_if(kinds.begin(), kinds.end(), [&](const HoldKeys& k) { return k.word == word; });
  if (keys == kinds.end()) return hold;
  hold.kind = keys->kind;
  section.require(keys->needed, fmt::format("a hold of kind \"{}\" needs it", keys->word));
  for (const std::string_view key : {"hole", "diameter", "along", "force"})
    if (section.has(key) && std::find(keys->needed.begin(), keys->needed.end(), key) == keys->needed.end())
      section.complain(key, fmt::format("a hold of kind \"{}\" has no such key; remove it", keys->word));
  hold.hole = section.count("hole").value_or(0);
  hold.diameter = section.get<models::Length>("diameter");
  hold.along = section.get<models::Length>("along");
  hold.force = section.get<models::Force>("force");
  return hold;
}

bool locks(const std::string& label, const std::vector<models::Screw>& screws) {
  const auto screw =
      std::find_if(screws.begin(), screws.end(), [&](const models::Screw& s) { return s.label == label; });
  return screw == screws.end() || !models::is_tightened(*screw);
}

// Adds a label that `screw` stands for, and where the file writes it.
void add(std::vector<std::string>& labels, const std::string& label, std::string_view key, std::size_t number,
         const Section& section, CasePlaces& places) {
  places.alias(fmt::format("{}[{}]", section.path_of(key), labels.size()),
               fmt::format("{}[{}]", section.path_of("screw"), number));
  labels.push_back(label);
}

models::Step read_step(const Section& section, const std::vector<models::Screw>& screws, CasePlaces& places) {
  models::Step step;
  step.place = section.texts("place");
  step.insert = section.texts("insert");
  step.tighten = section.texts("tighten");
  step.remove = section.texts("remove");
  if (const auto tissue = section.text("tissue")) step.tissue = models::find_tissue(*tissue);
  const auto both = section.texts("screw");
  for (std::size_t i = 0; i < both.size(); ++i) {
    add(step.insert, both[i], "insert", i, section, places);
    if (!locks(both[i], screws)) add(step.tighten, both[i], "tighten", i, section, places);
  }
  return step;
}

}  // namespace

std::vector<models::TemporaryHold> read_temporary(const Section& file) {
  std::vector<models::TemporaryHold> holds;
  for (const auto& section : file.sections("temporary")) holds.push_back(read_hold(section));
  return holds;
}

std::vector<models::Step> read_steps(const Section& file, const std::vector<models::Screw>& screws,
                                     Reading& reading) {
  std::vector<models::Step> steps;
  for (const auto& section : file.sections("step")) steps.push_back(read_step(section, screws, reading.places));
  return steps;
}

}  // namespace gapstrain::cases
