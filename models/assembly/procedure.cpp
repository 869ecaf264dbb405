#include "models/assembly/procedure.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace gapstrain::models {

namespace {

std::string join(const std::vector<std::string>& labels) { return fmt::format("{}", fmt::join(labels, ", ")); }

// What steps call by a label.
std::map<std::string, Part> parts_by_label(const Construct& construct, const std::vector<int>& chosen) {
  std::map<std::string, Part> parts;
  for (std::size_t k = 0; k < chosen.size(); ++k)
    parts.insert({construct.screws[k].label, {Part::Kind::screw, chosen[k]}});
  for (std::size_t k = 0; k < construct.temporary.size(); ++k)
    parts.insert({construct.temporary[k].label, {Part::Kind::hold, static_cast<int>(k)}});
  return parts;
}

// Of the construct's screws, the one at a position in Assembly::screws.
std::size_t place_of(int index, const Procedure& procedure) {
  return static_cast<std::size_t>(std::find(procedure.screws.begin(), procedure.screws.end(), index) -
                                  procedure.screws.begin());
}

// A screw without a label is called by its number.
std::string name_of_part(const Part& part, const Procedure& procedure, const Construct& construct) {
  if (part.kind == Part::Kind::hold) return construct.temporary[static_cast<std::size_t>(part.index)].label;
  const std::size_t k = place_of(part.index, procedure);
  const std::string& label = construct.screws.at(k).label;
  return label.empty() ? fmt::format("screw {}", k + 1) : label;
}

}  // namespace

Procedure procedure_of(const Construct& construct, const std::vector<int>& chosen) {
  Procedure procedure;
  procedure.screws = chosen;
  procedure.prebend = only(construct.plates).prebend;
  procedure.friction = construct.contact.friction;
  const auto parts = parts_by_label(construct, chosen);
  const auto positions = [&](const std::vector<std::string>& labels, Part::Kind kind) {
    std::vector<int> found;
    for (const auto& label : labels)
      if (const auto part = parts.find(label); part != parts.end() && part->second.kind == kind)
        found.push_back(part->second.index);
    return found;
  };
  std::set<int> inserted;
  for (const Step& from : construct.steps) {
    ProcedureStep step;
    step.place = positions(from.place, Part::Kind::hold);
    step.insert = positions(from.insert, Part::Kind::screw);
    step.tighten = positions(from.tighten, Part::Kind::screw);
    for (const auto& label : from.remove)
      if (const auto part = parts.find(label); part != parts.end()) step.remove.push_back(part->second);
    step.tissue = from.tissue;
    inserted.insert(step.insert.begin(), step.insert.end());
    procedure.steps.push_back(std::move(step));
  }
  for (std::size_t k = 0; k < chosen.size(); ++k) {
    if (inserted.contains(chosen[k])) continue;
    ProcedureStep step;
    step.insert = {chosen[k]};
    if (is_tightened(construct.screws[k])) step.tighten = {chosen[k]};
    procedure.steps.push_back(std::move(step));
  }
  return procedure;
}

std::string describe(const ProcedureStep& step, const Procedure& procedure, const Construct& construct) {
  const auto names = [&](const std::vector<int>& indices, Part::Kind kind) {
    std::vector<std::string> all;
    for (const int index : indices) all.push_back(name_of_part({kind, index}, procedure, construct));
    return join(all);
  };
  const auto locks = [&](int index) { return !is_tightened(construct.screws.at(place_of(index, procedure))); };
  std::vector<std::string> words;
  if (step.tissue) words.push_back("gap fills with " + step.tissue->name);
  if (!step.place.empty()) words.push_back("place " + names(step.place, Part::Kind::hold));
  const bool both = step.insert == step.tighten;
  if (!step.insert.empty()) {
    const bool lock = std::all_of(step.insert.begin(), step.insert.end(), locks);
    words.push_back((both   ? "insert and tighten "
                     : lock ? "lock "
                            : "insert ") +
                    names(step.insert, Part::Kind::screw));
  }
  if (!step.tighten.empty() && !both) words.push_back("tighten " + names(step.tighten, Part::Kind::screw));
  if (!step.remove.empty()) {
    std::vector<std::string> all;
    for (const auto& part : step.remove) all.push_back(name_of_part(part, procedure, construct));
    words.push_back("take out " + join(all));
  }
  return fmt::format("{}", fmt::join(words, "; "));
}

}  // namespace gapstrain::models
