#include "cases/outputs/pictures/comparison_pictures.h"

#include "cases/files/file_names.h"
#include "cases/outputs/pictures/race_charts.h"
#include "cases/outputs/sentences/state_lines.h"
#include "viz/compared/compared_pictures.h"
#include "viz/plan/review_pictures.h"
#include "viz/study/study_pictures.h"

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
    viz::draw_side_by_side(display, compared, display.file(folder / (stem + "_side_by_side")));
    viz::draw_gap_strain_compared(display, compared, display.file(folder / (stem + "_gap_strain")));
  }
}

// Figures whose name begins with "margin, ", a bar a construct.
void draw_margins(const viz::Display& display, const std::vector<ComparedCase>& cases,
                  const models::Comparison& comparison, const fs::path& folder) {
  constexpr std::string_view beginning = "margin, ";
  viz::MarginChart chart{"Margins", "strength over demand, each kind at its worst part and load", {}, {}};
  for (std::size_t k = 0; k < cases.size(); ++k) chart.constructs.push_back(heading(cases[k], k));
  for (const auto& figure : comparison.figures) {
    if (!figure.name.starts_with(beginning)) continue;
    viz::MarginRow row{figure.name.substr(beginning.size()), {}};
    for (const auto& value : figure.values) row.factors.push_back(value.value_or(none));
    chart.rows.push_back(std::move(row));
  }
  if (!chart.rows.empty()) viz::draw_margins(display, chart, display.file(folder / "margins"));
}

// Of plate or screws, whichever is nearer to breaking.
viz::StudyCurve worst_curve(const std::string& name, const models::Race& race, const models::RaceCourse& course) {
  const bool screws = course.screws && course.screws->damage.back().middle > course.damage.back().middle;
  return screws ? damage_curve(name + ", screws", race, *course.screws)
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
    viz::CurvePanel panel{{name, true, 1.0}, {}, {{"breaks", 1.0, 1.0}}};
    for (std::size_t k = 0; k < cases.size(); ++k)
      if (const auto& race = cases[k].assessed.assessment.race)
        panel.curves.push_back(worst_curve(heading(cases[k], k), *race, models::course_of(*race, course)));
    if (panel.curves.empty()) return;
    chart.panels.push_back(std::move(panel));
  }
  viz::draw_curves(display, chart, display.file(folder / "race"));
}

}  // namespace

void draw_comparison(const PictureStyle& style, const std::vector<ComparedCase>& cases,
                     const models::Comparison& comparison, const fs::path& folder) {
  std::vector<std::string> names, files, alarms;
  for (std::size_t k = 0; k < cases.size(); ++k) {
    names.push_back(heading(cases[k], k));
    files.push_back(cases[k].file);
    for (const auto& alarm : short_alarms_of(cases[k].assessed.assessment.state))
      alarms.push_back(fmt::format("{}: {}", letter_of(k), alarm));
  }
  const viz::Display display(picture_frame(style, fmt::format("{}", fmt::join(names, "  |  ")),
                                           fmt::format("{}", fmt::join(files, ", ")), alarms));
  draw_margins(display, cases, comparison, folder);
  draw_races(display, cases, folder);
  draw_loads(display, cases, folder);
}

}  // namespace gapstrain::cases
