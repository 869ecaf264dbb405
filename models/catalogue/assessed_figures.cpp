#include "models/catalogue/assessed_figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace gapstrain::models {

namespace {

using S = const FigureSource&;

std::optional<double> median_life(S source, HealingCourse course) {
  if (!source.race) return std::nullopt;
  return course_of(*source.race, course).life_factor.middle;
}

std::optional<double> screw_life(S source) {
  if (!source.race) return std::nullopt;
  const auto& screws = course_of(*source.race, HealingCourse::governed).screws;
  return screws ? std::optional(screws->life_factor.middle) : std::nullopt;
}

std::optional<double> bone_margin(S source) {
  for (const auto& margin : source.margins)  // worst first
    if (margin.kind == MarginKind::bone_yield) return margin.factor;
  return std::nullopt;
}

std::optional<double> screw_fibre_stress(S source) {
  std::optional<double> worst;
  for (const auto& load : source.findings.loads) {
    worst = worst.value_or(0.0);
    for (const auto& screw : load.screws) worst = std::max(*worst, screw.peak_bending_stress.value());
  }
  return worst;
}

std::optional<double> force_after_steps(S source) {
  const auto& steps = source.findings.compression.steps;
  return steps.empty() ? std::nullopt : std::optional(steps.back().face.force.value());
}

ComparedBy life(const char* label) { return {FigureGroup::lives, label, Better::high, ErrorOf::life}; }

}  // namespace

const std::vector<AssessedFigure>& assessed_figures() {
  static const std::vector<AssessedFigure> figures = {
      {{"margin_bone",
        FigureUnit::ratio,
        "yield strain of bone over its strain, a core's diameter clear of the screws and smoothed",
        {FigureGroup::margins, "margin, bone strain", Better::high, ErrorOf::stress}},
       bone_margin},
      {{"margin_at_bounds",
        FigureUnit::ratio,
        "least margin of the first day, whether screws are bonded to bone or sit softly in it",
        {FigureGroup::margins, "least margin, screws bonded or soft", Better::high, ErrorOf::stress}},
       [](S source) { return source.margin_at_bounds; }},
      {{"plate_life", FigureUnit::lives,
        "how many times over the plate lasts until union is due, where strain governs healing; the median",
        life("plate life / time to union, strain-governed")},
       [](S source) { return median_life(source, HealingCourse::governed); }},
      {{"plate_life_steady", FigureUnit::lives, "the same where the gap stiffens all over",
        life("plate life / time to union, steady")},
       [](S source) { return median_life(source, HealingCourse::steady); }},
      {{"plate_life_unhealed", FigureUnit::lives, "the same where the gap does not stiffen",
        life("plate life / time to union, none")},
       [](S source) { return median_life(source, HealingCourse::none); }},
      {{"screw_life", FigureUnit::lives, "as plate_life, of the screw that lasts least",
        life("screw life / time to union, strain-governed")},
       screw_life},
      {{"screw_fibre_stress",
        FigureUnit::stress,
        "largest stress along the axis of any shaft's core, of all loads",
        {FigureGroup::stress, "screw fibre stress, largest", Better::low, ErrorOf::stress}},
       screw_fibre_stress},
      {{"force_after_steps",
        FigureUnit::force,
        "across the fracture after the last step, without load",
        {FigureGroup::pressing, "force across the fracture after the steps", Better::high, ErrorOf::stress}},
       force_after_steps},
      {{"screws_in_all",
        FigureUnit::count,
        "screws, those across the fracture included",
        {FigureGroup::geometry, "screws, those across the fracture included"}},
       [](S source) -> std::optional<double> {
         const ConstructFigures& of = source.outcome.figures;
         return plate_screws(of) + of.screws_across;
       }},
  };
  return figures;
}

const std::vector<AssessedFigure>& compared_figures() {
  static const std::vector<AssessedFigure> figures = [] {
    std::vector<AssessedFigure> all;
    const auto entry = [](const FigureEntry& of) { return of; };
    for (const auto& each : construct_figures())
      all.push_back({entry(each), [read = each.read](S source) { return read(source.outcome); }});
    for (const auto& each : load_figures())
      all.push_back({entry(each), [name = each.name](S source) { return figure(source.outcome, name); }});
    all.insert(all.end(), assessed_figures().begin(), assessed_figures().end());
    std::erase_if(all, [](const AssessedFigure& each) { return each.compared.label.empty(); });
    std::stable_sort(all.begin(), all.end(), [](const AssessedFigure& a, const AssessedFigure& b) {
      return a.compared.group < b.compared.group;
    });
    return all;
  }();
  return figures;
}

const FigureEntry& catalogue_entry(std::string_view name) {
  const auto find = [name](const auto& figures) -> const FigureEntry* {
    const auto found =
        std::find_if(figures.begin(), figures.end(), [name](const auto& each) { return each.name == name; });
    return found == figures.end() ? nullptr : &*found;
  };
  for (const auto* entry : {find(construct_figures()), find(load_figures()), find(assessed_figures())})
    if (entry != nullptr) return *entry;
  throw std::out_of_range(fmt::format("there is no figure \"{}\"", name));
}

}  // namespace gapstrain::models
