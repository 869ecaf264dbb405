#include "models/catalogue/outcome_figures.h"
#include "models/rules/rules.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <stdexcept>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but figures

namespace {

LoadOutcome load_with_everything(double size) {
  LoadOutcome load;
  load.peak_stress = 100.0 * size * mpa;
  load.peak_hole = 4;
  load.plate_to_yield = 8.0 / size;
  load.axial_strain = Range{-0.02 * size, -0.01 * size, 0.005 * size};
  load.shear_strain = 0.03 * size;
  load.closed = 0.1 * size;
  load.near_motion = -0.03 * size * mm;
  load.far_motion = -0.04 * size * mm;
  load.largest_motion = 0.05 * size * mm;
  load.screw_stress = 60.0 * size * mpa;
  load.screw_to_yield = 12.0 / size;
  load.screw_pull = 20.0 * size * newton;
  load.across = 30.0 * size * newton;
  load.plate_pressure = 40.0 * size * newton;
  load.plate_clearance = 0.7 / size * mm;
  load.second_order = {0.21 * size, 1.27 * size};
  load.work = 5.0 * size;
  return load;
}

Outcome outcome_with_everything() {
  Outcome outcome;
  outcome.figures.working_length = 33.0 * mm;
  outcome.figures.plate_span_ratio = 27.0;
  outcome.figures.plate_screw_density = 0.6;
  outcome.figures.fragments.resize(2);
  outcome.figures.fragments.front().screws = 3;
  outcome.figures.fragments.back().screws = 2;
  outcome.stiffness.axial = 1000.0 * (newton / mm);
  outcome.stiffness.bending_y = 2000.0 * (newton_mm / radian);
  outcome.stiffness.bending_z = 3000.0 * (newton_mm / radian);
  outcome.stiffness.torsion = 4000.0 * (newton_mm / radian);
  outcome.margins.plate_yield = 0.93;
  outcome.margins.plate_fatigue = 1.31;
  outcome.margins.screw_yield = 1.37;
  outcome.margins.screw_fatigue = 1.41;
  outcome.margins.screw_hold = 1.43;
  outcome.soft_screws = {0.91, 0.043};
  outcome.broken_rules.assign(rule_names().size(), false);
  outcome.broken_rules[1] = true;
  outcome.loads = {load_with_everything(1.0), load_with_everything(2.0), load_with_everything(1.5)};
  return outcome;
}

// What is made of other figures, or is 0 or 1 alone: not told apart by its value.
bool is_of_others(const std::string& name) {
  return name == "margin" || name == "margins_failing" || name == "rules_broken" || name.starts_with("breaks_");
}

}  // namespace

TEST_CASE("every figure has a name of its own, a meaning and a value", "[models][findings][outcome]") {
  const auto names = figure_names();
  CHECK(names.size() == construct_figures().size() + load_figures().size());
  CHECK(std::set<std::string>(names.begin(), names.end()).size() == names.size());
  const Outcome outcome = outcome_with_everything();
  std::set<double> values;
  for (const auto& name : names) {
    CAPTURE(name);
    const auto value = figure(outcome, name);
    REQUIRE(value);
    if (!is_of_others(name)) values.insert(*value);
    const auto found = find_figure(name);
    REQUIRE(found);
    CHECK(found->name == name);
    CHECK_FALSE(found->meaning.empty());
    const bool has_unit =
        found->unit != FigureUnit::ratio && found->unit != FigureUnit::strain && found->unit != FigureUnit::count;
    CHECK(unit_text(found->unit).empty() != has_unit);
  }
  const auto of_others = static_cast<std::size_t>(std::count_if(names.begin(), names.end(), is_of_others));
  CHECK(values.size() == names.size() - of_others);  // no two read the same
}

TEST_CASE("figures read what their names say", "[models][findings][outcome]") {
  const Outcome outcome = outcome_with_everything();
  CHECK(figure(outcome, "working_length") == 33.0);
  CHECK(figure(outcome, "screws") == 5.0);
  CHECK(figure(outcome, "screws_proximal") == 3.0);
  CHECK(figure(outcome, "screws_distal") == 2.0);
  CHECK(figure(outcome, "plate_screw_density") == 0.6);
  CHECK(figure(outcome, "plate_span_ratio") == 27.0);
  CHECK(figure(outcome, "axial_stiffness") == 1000.0);
  CHECK(figure(outcome, "bending_stiffness_flat") == 2000.0);
  CHECK(figure(outcome, "bending_stiffness_edge") == 3000.0);
  CHECK(figure(outcome, "torsional_stiffness") == 4000.0);
}

TEST_CASE("margins and rules of an outcome are counted", "[models][findings][outcome]") {
  const Outcome outcome = outcome_with_everything();
  CHECK(figure(outcome, "margin") == 0.93);
  CHECK(figure(outcome, "margins_failing") == 1.0);
  CHECK(figure(outcome, "margin_soft_screws") == 0.91);
  CHECK(figure(outcome, "gap_strain_soft_screws") == 0.043);
  CHECK(figure(outcome, "rules_broken") == 1.0);
  CHECK(figure(outcome, rule_figure(rule_names()[1])) == 1.0);
  CHECK(figure(outcome, rule_figure(rule_names()[0])) == 0.0);
}

TEST_CASE("of several loads the worst one counts", "[models][findings][outcome]") {
  const Outcome outcome = outcome_with_everything();
  // The second load is twice the first.
  CHECK(figure(outcome, "peak_stress") == 200.0);
  CHECK(figure(outcome, "plate_to_yield") == 4.0);
  CHECK(figure(outcome, "gap_strain") == 0.04);
  CHECK(figure(outcome, "gap_strain_mean") == -0.02);
  CHECK(figure(outcome, "shear_strain") == 0.06);
  CHECK(figure(outcome, "gap_motion") == 0.1);
  CHECK(figure(outcome, "gap_motion_near") == -0.06);
  CHECK(figure(outcome, "gap_motion_far") == -0.08);
  CHECK(figure(outcome, "gap_closed") == 0.2);
  CHECK(figure(outcome, "screw_stress") == 120.0);
  CHECK(figure(outcome, "screw_to_yield") == 6.0);
  CHECK(figure(outcome, "screw_pull") == 40.0);
  CHECK(figure(outcome, "plate_pressure") == 80.0);
  CHECK(figure(outcome, "plate_clearance") == 0.35);
  CHECK(figure(outcome, "axial_load_ratio") == 0.42);
  CHECK(figure(outcome, "second_order_amplification") == 2.54);
  // Force across the fracture is what the faces have left: the least.
  CHECK(figure(outcome, "force_across") == 30.0);
}

TEST_CASE("the worst of a load figure is its highest or lowest, as it says", "[models][findings][outcome]") {
  const Outcome outcome = outcome_with_everything();
  for (const auto& each : load_figures()) {
    CAPTURE(each.name);
    std::vector<double> values;
    for (const auto& load : outcome.loads) values.push_back(*each.read(load));
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    REQUIRE(*least < *most);
    CHECK(figure(outcome, each.name) == (each.high_is_worse ? *most : *least));
    CHECK_THAT(find_figure(each.name)->meaning,
               Catch::EndsWith(each.high_is_worse ? "(highest of all loads)" : "(lowest of all loads)"));
  }
}

TEST_CASE("figures that an outcome lacks are nothing, and of loads that have one the worst counts",
          "[models][findings][outcome]") {
  Outcome bare;
  bare.loads.resize(2);
  const std::set<std::string> optional = {"screws_proximal",
                                          "screws_distal",
                                          "plate_span_ratio",
                                          "plate_to_yield",
                                          "gap_strain",
                                          "gap_strain_mean",
                                          "shear_strain",
                                          "screw_to_yield",
                                          "plate_clearance",
                                          "margin",
                                          "margin_plate_yield",
                                          "margin_plate_fatigue",
                                          "margin_screw_yield",
                                          "margin_screw_fatigue",
                                          "margin_pull_out",
                                          "margin_soft_screws",
                                          "gap_strain_soft_screws",
                                          "axial_load_ratio",
                                          "second_order_amplification"};
  for (const auto& name : figure_names()) {
    CAPTURE(name);
    CHECK(figure(bare, name).has_value() == !(optional.contains(name) || name.starts_with("breaks_")));
  }
  bare.loads[1] = load_with_everything(1.0);
  CHECK(figure(bare, "gap_strain") == 0.02);
  CHECK(figure(bare, "plate_clearance") == 0.7);
  bare.loads.clear();
  CHECK_FALSE(figure(bare, "peak_stress"));
}

TEST_CASE("a strain's magnitude counts, whichever its sign", "[models][findings][outcome]") {
  LoadOutcome load;
  CHECK_FALSE(load.gap_strain());
  load.axial_strain = Range{-0.02, 0.0, 0.05};
  CHECK(load.gap_strain() == 0.05);
  load.axial_strain = Range{-0.06, 0.0, 0.05};
  CHECK(load.gap_strain() == 0.06);
}

TEST_CASE("an unknown name is refused, or found to be none", "[models][findings][outcome]") {
  CHECK_THROWS_AS(figure(outcome_with_everything(), "peak stress"), std::out_of_range);
  CHECK_THROWS_AS(figure(outcome_with_everything(), ""), std::out_of_range);
  CHECK_FALSE(find_figure("peak stress"));
}

}  // namespace gapstrain
