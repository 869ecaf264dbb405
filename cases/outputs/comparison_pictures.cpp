#include "cases/outputs/comparison_pictures.h"

#include "cases/outputs/file_names.h"
#include "cases/outputs/race_charts.h"
#include "viz/compared_pictures.h"
#include "viz/study_pictures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

std::string heading(const ComparedCase& one, std::size_t index) {
  return fmt::format("{}: {}", letter_of(index), one.construct.name);
}

void draw_loads(const viz::Display& display, const std::vector<ComparedCase>& cases, const fs::path& folder) {
  const auto& loads = cases.front().construct.loads;
  for (std::size_t l = 0; l < loads.size(); ++l) {
    std::vector<viz::ComparedConstruct> compared;
    for (std::size_t k = 0; k < cases.size(); ++k) {
      const auto& analysis = cases[k].assessed.analysis;
      compared.push_back({heading(cases[k], k), &analysis.fields.loads[l], &analysis.findings.loads[l]});
    }
    const std::string stem = load_stem(l, loads[l].name);
    viz::draw_side_by_side(display, compared, folder / (stem + "_side_by_side.png"));
    viz::draw_gap_strain_compared(display, compared, folder / (stem + "_gap_strain.png"));
  }
}

// Figures whose name begins with "margin, ", a bar a construct.
void draw_margins(const viz::Display& display, const std::vector<ComparedCase>& cases,
                  const models::Comparison& comparison, const fs::path& folder) {
  constexpr std::string_view beginning = "margin, ";
  viz::BarChart chart;
  chart.words = {"Margins", "strength over demand, each kind at its worst part and load; below 1 it fails"};
  chart.value = {"strength / demand"};  // from 0: bars of a logarithmic axis have no foot
  for (std::size_t k = 0; k < cases.size(); ++k) chart.series.push_back(heading(cases[k], k));
  for (const auto& figure : comparison.figures) {
    if (!figure.name.starts_with(beginning)) continue;
    viz::BarRow row{figure.name.substr(beginning.size()), {}};
    for (const auto& value : figure.values) row.bars.push_back({value.value_or(none), none, none});
    chart.rows.push_back(std::move(row));
  }
  if (!chart.rows.empty()) viz::draw_bars(display, chart, folder / "margins.png");
}

// Of plate or screw heads, whichever is nearer to breaking.
viz::StudyCurve worst_curve(const std::string& name, const models::Race& race, const models::RaceCourse& course) {
  const bool screws = course.screws && course.screws->damage.back().middle > course.damage.back().middle;
  return screws ? damage_curve(name + ", screw heads", race, *course.screws)
                : damage_curve(name + ", plate", race, course);
}

void draw_races(const viz::Display& display, const std::vector<ComparedCase>& cases, const fs::path& folder) {
  viz::CurveChart chart;
  chart.words = {"The race between bone and plate",
                 "fatigue damage of what is nearer to breaking; line: median, band: 5th to 95th percentile"};
  chart.x = {"weeks after the operation"};
  const std::pair<models::HealingCourse, const char*> panels[]{
      {models::HealingCourse::governed, "damage where the gap stiffens as strain allows"},
      {models::HealingCourse::none, "damage where the gap does not stiffen"}};
  for (const auto& [course, name] : panels) {
    viz::CurvePanel panel{{name, true}, {}, {{"breaks", 1.0, 1.0}}};
    for (std::size_t k = 0; k < cases.size(); ++k)
      if (const auto& race = cases[k].assessed.assessment.race)
        panel.curves.push_back(worst_curve(heading(cases[k], k), *race, models::course_of(*race, course)));
    if (panel.curves.empty()) return;
    chart.panels.push_back(std::move(panel));
  }
  viz::draw_curves(display, chart, folder / "race.png");
}

}  // namespace

void draw_comparison(const std::vector<ComparedCase>& cases, const models::Comparison& comparison,
                     const fs::path& folder) {
  const viz::Display display;
  draw_loads(display, cases, folder);
  draw_margins(display, cases, comparison, folder);
  draw_races(display, cases, folder);
}

}  // namespace gapstrain::cases
