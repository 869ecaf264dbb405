// The catalogue's figures as constructs are compared by them, read from findings made by hand.
#include "models/assessment/comparison.h"
#include "models/catalogue/analysed_outcome.h"
#include "models/catalogue/assessed_figures.h"
#include "models/measures/screw_forces.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but figures

namespace {

// One screw in both walls, one in a single wall.
Construct two_screws() {
  Construct construct;
  construct.name = "made up";
  only(construct.plates).material.yield_strength = 600.0 * mpa;
  for (const int number : {1, 2}) {
    Screw screw;
    screw.id = ScrewId{number};
    screw.size.core_diameter = 2.0 * mm;
    construct.screws.push_back(screw);
  }
  return construct;
}

LoadFindings load_of(double size) {
  LoadFindings load;
  load.plate.peak.von_mises = 200.0 * size * mpa;
  load.gap.axial_strain = Range{-0.06 * size, 0.0, 0.01};
  load.gap.largest_motion = 0.2 * size * mm;
  for (const int number : {1, 2}) {
    ScrewFindings screw;
    screw.screw = ScrewId{number};
    screw.axial = 30.0 * number * size * newton;
    screw.peak_bending_stress = 70.0 * number * size * mpa;
    screw.stations = {{Length(), 10.0 * number * size * newton, Force(), Moment(), Moment()}};
    load.screws.push_back(screw);
  }
  return load;
}

AssessedConstruct assessed_of(double size) {
  AssessedConstruct one;
  Findings& findings = one.analysis.findings;
  findings.figures.working_length = 44.0 * mm;
  findings.figures.fragments = {{1, 2}, {1, 2}};
  findings.figures.screws_across = 1;
  findings.stiffness.axial = 800.0 * newton / mm;
  findings.stiffness.torsion = 60000.0 * newton_mm / radian;
  findings.compression.steps.emplace_back().face.force = 500.0 * newton;
  findings.loads = {load_of(1.0), load_of(size)};
  one.assessment.margins = {{MarginKind::screw_hold, "a", 0.7, "", true, ScrewId{2}},
                            {MarginKind::screw_hold, "a", 1.9, "", false, ScrewId{1}},
                            {MarginKind::plate_fatigue_of_all_loads, "a", 2.1, ""},
                            {MarginKind::plate_fatigue, "a", 2.4, ""},
                            {MarginKind::bone_yield, "a", 5.0, ""}};
  one.assessment.review = {{rule_names()[3], Verdict::broken}, {rule_names()[1], Verdict::kept}};
  return one;
}

Outcome outcome_of(const AssessedConstruct& one) {
  return models::outcome_of(one.analysis.findings, two_screws(), one.assessment.margins, one.assessment.review);
}

const ComparedFigure* find(const Comparison& comparison, const std::string& name) {
  const auto found = std::find_if(comparison.figures.begin(), comparison.figures.end(),
                                  [&](const ComparedFigure& figure) { return figure.name == name; });
  return found == comparison.figures.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("each figure of a comparison has a label of its own, and an error unless it is counted or measured",
          "[models][findings][outcome]") {
  std::set<std::string> labels, names;
  for (const auto& each : compared_figures()) {
    CAPTURE(each.name);
    CHECK(labels.insert(each.compared.label).second);
    CHECK(names.insert(each.name).second);
    CHECK_FALSE(each.meaning.empty());
    const bool is_exact =
        each.compared.group == FigureGroup::geometry || each.compared.group == FigureGroup::rules;
    CHECK((model_error_of(each.compared.error_of) == 0.0) == is_exact);
  }
  CHECK(labels.size() == 23);
  // What only an analysis tells is no column, or rows would have to have it.
  const auto columns = figure_names();
  for (const auto& each : assessed_figures())
    CHECK(std::find(columns.begin(), columns.end(), each.name) == columns.end());
}

TEST_CASE("an analysed construct has the outcome of its findings, margins and rules",
          "[models][findings][outcome]") {
  auto one = assessed_of(2.0);
  one.analysis.findings.trust.checks = {{"residual", 1e-9, 1e-7, true, ""},
                                        {"force balance", 0.1, 1e-8, false, ""}};
  const Outcome outcome = outcome_of(one);
  CHECK(outcome.doubts == std::vector<Check>{{"force balance", 0.1, 1e-8, false, ""}});
  CHECK(figure(outcome, "peak_stress") == 400.0);
  CHECK(*figure(outcome, "plate_to_yield") == Approx(1.5));
  CHECK(figure(outcome, "gap_strain") == 0.12);
  CHECK(figure(outcome, "screw_pull") == 120.0);
  CHECK(*figure(outcome, "screw_stress") == Approx(40.0 / std::numbers::pi));
  // Of screws that are seen well enough; of one load or all of a day, whichever is less.
  CHECK(figure(outcome, "margin_pull_out") == 1.9);
  CHECK(figure(outcome, "margin_plate_fatigue") == 2.1);
  CHECK_FALSE(figure(outcome, "margin_plate_yield"));
  CHECK(figure(outcome, "rules_broken") == 1.0);
  CHECK(figure(outcome, rule_figure(rule_names()[3])) == 1.0);
  CHECK(figure(outcome, rule_figure(rule_names()[1])) == 0.0);
}

TEST_CASE("a comparison reads the catalogue, in units that people read", "[models][findings][outcome]") {
  std::vector<AssessedConstruct> assessed = {assessed_of(2.0), assessed_of(3.0)};
  assessed[1].analysis.findings.trust.mesh_error_peak = 0.2;
  const std::vector<Construct> constructs = {two_screws(), two_screws()};
  const Comparison comparison = compare(constructs, assessed);
  std::size_t shown = 0;
  for (const auto& each : compared_figures()) {
    const ComparedFigure* figure = find(comparison, each.compared.label);
    CAPTURE(each.name);
    const Outcome outcome = outcome_of(assessed[1]);
    const auto value = each.read({outcome, assessed[1].analysis.findings, assessed[1].assessment.margins, {}, {}});
    CHECK((figure != nullptr) == value.has_value());
    if (figure == nullptr) continue;
    ++shown;
    CHECK(figure->unit == shown_in(each.unit).unit);
    CHECK(*figure->values[1] == Approx(*value * shown_in(each.unit).scale));
  }
  CHECK(shown == comparison.figures.size());
  const ComparedFigure& stress = *find(comparison, "plate stress, largest");
  CHECK(*stress.values[0] == 400.0);
  CHECK(*stress.values[1] == 600.0);
  CHECK(stress.high_is_better == false);
  CHECK(stress.model_error == 0.2);  // the mesh's own, where it is more
  const ComparedFigure& strain = *find(comparison, "gap strain, largest");
  CHECK(*strain.values[1] == Approx(18.0));
  CHECK(strain.unit == "%");
  CHECK_FALSE(strain.high_is_better);
  CHECK(strain.model_error == model_error_of_stiffness);
  // 60 000 N mm/rad over 57.3 degrees a radian.
  CHECK(*find(comparison, "stiffness, torsion")->values[0] == Approx(60.0 / 57.29578));
  CHECK(*find(comparison, "screw fibre stress, largest")->values[1] == 420.0);
  CHECK(*find(comparison, "screws, those across the fracture included")->values[0] == 3.0);
}

TEST_CASE("a core's stress is von Mises of what a cut carries", "[models][findings][outcome]") {
  ScrewSize size;
  size.core_diameter = 2.0 * mm;
  ScrewStation cut;
  cut.axial = -50.0 * newton;
  cut.bending = 120.0 * newton_mm;
  cut.torsion = -80.0 * newton_mm;
  // Area pi, section modulus pi / 4, torsional modulus pi / 2.
  const double direct = 50.0 / std::numbers::pi + 480.0 / std::numbers::pi, shear = 160.0 / std::numbers::pi;
  CHECK(core_stress(cut, size) == Approx(std::sqrt(direct * direct + 3.0 * shear * shear)));
}

}  // namespace gapstrain
