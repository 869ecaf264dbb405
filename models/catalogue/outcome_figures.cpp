#include "models/catalogue/outcome_figures.h"

#include "models/rules/rules.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace gapstrain::models {

namespace {

using Figure = std::optional<double>;

template <class Quantity>
Figure value_of(const std::optional<Quantity>& quantity) {
  return quantity ? Figure(quantity->value()) : std::nullopt;
}

Figure first_or_last(const std::vector<FragmentScrews>& fragments, bool first) {
  if (fragments.empty()) return std::nullopt;  // nobody counted
  return first ? fragments.front().screws : fragments.back().screws;
}

std::vector<ConstructFigure> with_rules(std::vector<ConstructFigure> figures) {
  const auto rules = rule_names();
  for (std::size_t k = 0; k < rules.size(); ++k)
    figures.push_back(
        {{rule_figure(rules[k]), FigureUnit::count, fmt::format("1: breaks the rule \"{}\"", rules[k])},
         [k](const Outcome& o) {
           if (k >= o.broken_rules.size()) return Figure{};  // nobody looked
           return Figure(o.broken_rules[k] ? 1.0 : 0.0);
         }});
  return figures;
}

}  // namespace

std::string rule_figure(std::string_view rule) {
  std::string name = "breaks_";
  for (const char letter : rule)
    if (letter != '\'') name += letter == ' ' ? '_' : letter;
  return name;
}

const std::vector<ConstructFigure>& construct_figures() {
  using O = const Outcome&;
  static const std::vector<ConstructFigure> figures = with_rules({
      {{"working_length",
        FigureUnit::length,
        "along the plate between the innermost screws of both fragments",
        {FigureGroup::geometry, "working length"}},
       [](O o) { return Figure(o.figures.working_length.value()); }},
      {{"screws_proximal", FigureUnit::count, "plate screws in the proximal fragment"},
       [](O o) { return first_or_last(o.figures.fragments, true); }},
      {{"screws_distal", FigureUnit::count, "plate screws in the distal fragment"},
       [](O o) { return first_or_last(o.figures.fragments, false); }},
      {{"screws", FigureUnit::count, "plate screws in all"}, [](O o) { return Figure(plate_screws(o.figures)); }},
      {{"plate_screw_density", FigureUnit::ratio, "screws over holes"},
       [](O o) { return Figure(o.figures.plate_screw_density); }},
      {{"plate_span_ratio", FigureUnit::ratio,
        "plate length over fracture length along the bone, gap and obliquity"},
       [](O o) { return o.figures.plate_span_ratio; }},
      {{"axial_stiffness",
        FigureUnit::axial_stiffness,
        "between balls at the bone's ends: the loads' largest axial compression over its motion, with what then "
        "touches",
        {FigureGroup::stiffness, "stiffness, axial", Better::neither, ErrorOf::stiffness}},
       [](O o) { return Figure(o.stiffness.axial.value()); }},
      {{"bending_stiffness_flat",
        FigureUnit::angular_stiffness,
        "under that load, against small moments that bend the plate on the flat, the softer sense",
        {FigureGroup::stiffness, "stiffness, bending flat", Better::neither, ErrorOf::stiffness}},
       [](O o) { return Figure(o.stiffness.bending_y.value()); }},
      {{"bending_stiffness_edge",
        FigureUnit::angular_stiffness,
        "likewise, bending the plate on its edge",
        {FigureGroup::stiffness, "stiffness, bending on edge", Better::neither, ErrorOf::stiffness}},
       [](O o) { return Figure(o.stiffness.bending_z.value()); }},
      {{"torsional_stiffness",
        FigureUnit::angular_stiffness,
        "likewise, in torsion",
        {FigureGroup::stiffness, "stiffness, torsion", Better::neither, ErrorOf::stiffness}},
       [](O o) { return Figure(o.stiffness.torsion.value()); }},
      {{"margin", FigureUnit::ratio,
        "strength over demand, the least of the five below: below 1 a part fails (as the margins of an analysis; "
        "bone "
        "and screws in one wall are left out)"},
       [](O o) { return o.margins.least(); }},
      {{"margin_plate_yield",
        FigureUnit::ratio,
        "yield strength of the plate over its stress, steps included",
        {FigureGroup::margins, "margin, plate yield", Better::high, ErrorOf::stress}},
       [](O o) { return o.margins.plate_yield; }},
      {{"margin_plate_fatigue",
        FigureUnit::ratio,
        "safety factor on the loads against fatigue of the plate over the cycles asked for, a load alone or all "
        "of "
        "a day",
        {FigureGroup::margins, "margin, plate fatigue", Better::high, ErrorOf::stress}},
       [](O o) { return o.margins.plate_fatigue; }},
      {{"margin_screw_yield",
        FigureUnit::ratio,
        "yield strength over stress of the worst screw, steps included",
        {FigureGroup::margins, "margin, screw yield", Better::high, ErrorOf::stress}},
       [](O o) { return o.margins.screw_yield; }},
      {{"margin_screw_fatigue",
        FigureUnit::ratio,
        "likewise margin_plate_fatigue, of the worst screw's head",
        {FigureGroup::margins, "margin, screw fatigue", Better::high, ErrorOf::stress}},
       [](O o) { return o.margins.screw_fatigue; }},
      {{"margin_pull_out",
        FigureUnit::ratio,
        "what the bone holds of the worst screw's pull and shear, of screws in both walls",
        {FigureGroup::margins, "margin, pull-out with shear", Better::high, ErrorOf::stress}},
       [](O o) { return o.margins.screw_hold; }},
      {{"margins_failing", FigureUnit::count, "how many of these five margins are below 1"},
       [](O o) { return Figure(o.margins.failing()); }},
      {{"margin_soft_screws", FigureUnit::ratio,
        "margin with screws that sit softly in bone, the other bound that an analysis tries; empty: such a "
        "construct fails a check of its own"},
       [](O o) { return o.soft_screws.margin; }},
      {{"gap_strain_soft_screws", FigureUnit::strain, "largest gap_strain of all loads likewise"},
       [](O o) { return o.soft_screws.gap_strain; }},
      {{"rules_broken",
        FigureUnit::count,
        "rules of the trade that are broken, each of which follows as 1 or 0",
        {FigureGroup::rules, "rules of the trade broken", Better::low}},
       [](O o) { return Figure(std::count(o.broken_rules.begin(), o.broken_rules.end(), true)); }},
  });
  return figures;
}

const std::vector<LoadFigure>& load_figures() {
  using L = const LoadOutcome&;
  static const std::vector<LoadFigure> figures = {
      {{"peak_stress",
        FigureUnit::stress,
        "largest von Mises stress of the plate, at the holes' rims and in the span over the fracture",
        {FigureGroup::stress, "plate stress, largest", Better::low, ErrorOf::stress}},
       true,
       [](L l) { return Figure(l.peak_stress.value()); }},
      {{"plate_to_yield", FigureUnit::ratio, "yield strength of the plate over its peak stress"},
       false,
       [](L l) { return l.plate_to_yield; }},
      {{"gap_strain",
        FigureUnit::strain,
        "largest magnitude of axial motion over gap, round the edge",
        {FigureGroup::gap, "gap strain, largest", Better::neither, ErrorOf::stiffness}},
       true,
       [](L l) { return l.gap_strain(); }},
      {{"gap_strain_mean", FigureUnit::strain, "mean of the axial strain round the edge, closing negative"},
       false,
       [](L l) { return l.axial_strain ? Figure(l.axial_strain->mean) : std::nullopt; }},
      {{"shear_strain", FigureUnit::strain, "largest shear motion over gap, round the edge"},
       true,
       [](L l) { return l.shear_strain; }},
      {{"gap_motion",
        FigureUnit::length,
        "largest motion across the gap",
        {FigureGroup::gap, "gap motion, largest", Better::neither, ErrorOf::stiffness}},
       true,
       [](L l) { return Figure(l.largest_motion.value()); }},
      {{"gap_motion_near", FigureUnit::length, "axial motion at the near cortex, closing negative"},
       false,
       [](L l) { return Figure(l.near_motion.value()); }},
      {{"gap_motion_far", FigureUnit::length, "axial motion at the far cortex, closing negative"},
       false,
       [](L l) { return Figure(l.far_motion.value()); }},
      {{"gap_closed", FigureUnit::ratio, "share of the fracture's edge that touches"},
       true,
       [](L l) { return Figure(l.closed); }},
      {{"force_across", FigureUnit::force, "across the fracture where it touches"},
       false,
       [](L l) { return Figure(l.across.value()); }},
      {{"screw_stress", FigureUnit::stress, "largest von Mises stress of any shaft's core"},
       true,
       [](L l) { return Figure(l.screw_stress.value()); }},
      {{"screw_to_yield", FigureUnit::ratio, "yield strength of the worst screw over its stress"},
       false,
       [](L l) { return l.screw_to_yield; }},
      {{"screw_pull", FigureUnit::force, "largest tension under any head"},
       true,
       [](L l) { return Figure(l.screw_pull.value()); }},
      {{"plate_pressure", FigureUnit::force, "of the plate's underside on the bone, in all"},
       true,
       [](L l) { return Figure(l.plate_pressure.value()); }},
      {{"plate_clearance", FigureUnit::length, "least, underside to bone"},
       false,
       [](L l) { return value_of(l.plate_clearance); }},
      {{"axial_load_ratio", FigureUnit::ratio,
        "axial load over that at which the construct gives way in the shape into which the load bends it; empty "
        "where axial forces do next to nothing"},
       true,
       [](L l) { return l.second_order.load_ratio; }},
      {{"second_order_amplification", FigureUnit::ratio,
        "by which second-order effects of the axial load enlarge slopes of plate and bone; they are in all "
        "figures "
        "where it is given"},
       true,
       [](L l) { return l.second_order.amplification; }},
  };
  return figures;
}

Figure figure(const Outcome& outcome, std::string_view name) {
  for (const auto& each : construct_figures())
    if (each.name == name) return each.read(outcome);
  for (const auto& each : load_figures()) {
    if (each.name != name) continue;
    Figure worst;
    for (const auto& load : outcome.loads)
      if (const Figure value = each.read(load))
        worst = !worst ? value : each.high_is_worse ? std::max(*worst, *value) : std::min(*worst, *value);
    return worst;
  }
  throw std::out_of_range(fmt::format("there is no figure \"{}\"", name));
}

std::optional<NamedFigure> find_figure(std::string_view name) {
  for (const auto& each : construct_figures())
    if (each.name == name) return NamedFigure{each.name, each.unit, each.meaning};
  for (const auto& each : load_figures())
    if (each.name == name)
      return NamedFigure{
          each.name, each.unit,
          fmt::format("{} ({} of all loads)", each.meaning, each.high_is_worse ? "highest" : "lowest")};
  return std::nullopt;
}

std::vector<std::string> figure_names() {
  std::vector<std::string> names;
  for (const auto& each : construct_figures()) names.push_back(each.name);
  for (const auto& each : load_figures()) names.push_back(each.name);
  return names;
}

}  // namespace gapstrain::models
