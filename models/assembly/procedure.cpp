#include "models/assembly/procedure.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

namespace gapstrain::models {

namespace {

std::string join(const std::vector<std::string>& labels) { return fmt::format("{}", fmt::join(labels, ", ")); }

bool is_hold(const Construct& construct, const std::string& label) {
  return std::any_of(construct.temporary.begin(), construct.temporary.end(),
                     [&](const TemporaryHold& hold) { return hold.label == label; });
}

}  // namespace

Procedure procedure_of(const Construct& construct, const std::vector<int>& chosen) {
  Procedure procedure;
  procedure.prebend = construct.plate.prebend;
  procedure.friction = construct.contact.friction;
  std::vector<std::string> names;
  for (std::size_t k = 0; k < chosen.size(); ++k) {
    const Screw& screw = construct.screws[k];
    // Where no steps call them by it, screws need no name of their own.
    const bool is_name = !screw.label.empty() && !procedure.screws.contains(screw.label);
    names.push_back(is_name ? screw.label : fmt::format("screw {}", k + 1));
    procedure.screws[names.back()] = chosen[k];
  }
  std::set<std::string> inserted;
  for (Step step : construct.steps) {
    for (auto* labels : {&step.insert, &step.tighten, &step.remove})
      std::erase_if(*labels, [&](const std::string& label) {
        return !procedure.screws.contains(label) && !is_hold(construct, label);
      });
    inserted.insert(step.insert.begin(), step.insert.end());
    procedure.steps.push_back(std::move(step));
  }
  for (std::size_t k = 0; k < chosen.size(); ++k) {
    if (inserted.contains(names[k])) continue;
    Step step;
    step.insert = {names[k]};
    if (is_tightened(construct.screws[k])) step.tighten = {names[k]};
    procedure.steps.push_back(std::move(step));
  }
  return procedure;
}

std::string describe(const Step& step, const std::vector<Screw>& screws) {
  std::vector<std::string> parts;
  if (step.tissue) parts.push_back("gap fills with " + step.tissue->name);
  if (!step.place.empty()) parts.push_back("place " + join(step.place));
  const bool both = step.insert == step.tighten;
  if (!step.insert.empty()) {
    const bool lock = std::all_of(step.insert.begin(), step.insert.end(), [&](const std::string& label) {
      return std::any_of(screws.begin(), screws.end(),
                         [&](const Screw& s) { return s.label == label && !is_tightened(s); });
    });
    parts.push_back((both ? "insert and tighten " : lock ? "lock " : "insert ") + join(step.insert));
  }
  if (!step.tighten.empty() && !both) parts.push_back("tighten " + join(step.tighten));
  if (!step.remove.empty()) parts.push_back("take out " + join(step.remove));
  return fmt::format("{}", fmt::join(parts, "; "));
}

}  // namespace gapstrain::models
