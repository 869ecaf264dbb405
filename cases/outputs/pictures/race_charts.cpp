#include "cases/outputs/pictures/race_charts.h"

#include "cases/outputs/tables/race_weeks.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace gapstrain::cases {

namespace {

namespace fs = std::filesystem;

std::string legend(models::HealingCourse course) {
  switch (course) {
    case models::HealingCourse::steady:
      return "heals all over";
    case models::HealingCourse::governed:
      return "heals where strain allows";
    case models::HealingCourse::none:
      return "does not heal";
  }
  return {};
}

// One figure of the gap over the weeks, union in its middle week.
class GapCurves {
 public:
  GapCurves(const models::Race& race, const models::StressHistory& history)
      : weeks_(weeks_of_moments(race, history)), last_(race.weeks.back()) {}

  template <class Figure>
  viz::StudyCurve curve(const std::string& name, const models::StressHistory::Course& course,
                        const Figure& figure) const {
    viz::StudyCurve curve{name, weeks_, {}, {}, {}};
    for (const auto& gap : course.gap) curve.y.push_back(figure(gap));
    if (last_ > weeks_.back()) {  // it stays as it is
      curve.x.push_back(last_);
      curve.y.push_back(curve.y.back());
    }
    return curve;
  }

 private:
  std::vector<double> weeks_;
  double last_;
};

void draw_damage(const viz::Display& display, const models::Race& race, const models::StressHistory& history,
                 const fs::path& file) {
  const GapCurves gap(race, history);
  viz::CurveChart chart;
  chart.words = {"The race between bone and plate",
                 fmt::format("{} samples, 5th to 95th percentile as a band; stress "
                             "and tissue under the loads as entered, union in week {:.3g}",
                             race.samples, race.union_week.middle)};
  chart.x = {"weeks since the operation", false};
  viz::CurvePanel damage{{"fatigue damage of the plate, and of screws", true, 1.0}, {}, {{"breaks", 1.0, 1.0}}},
      stress{{"peak stress of the plate, MPa", false}, {}, {}}, tissue{{"tissue's modulus, MPa", true}, {}, {}};
  for (std::size_t c = 0; c < race.courses.size(); ++c) {
    const auto& course = history.courses[c];
    const std::string name = legend(course.course);
    damage.curves.push_back(damage_curve(name, race, race.courses[c]));
    stress.curves.push_back(gap.curve(name, course, [](const auto& state) { return state.plate_peak.value(); }));
    tissue.curves.push_back(gap.curve(name, course, [](const auto& state) { return state.modulus.value(); }));
  }
  // Last, so that a course is drawn alike in all panels.
  for (const auto& course : race.courses)
    if (course.course == models::HealingCourse::governed && course.screws)
      damage.curves.push_back(damage_curve("screws, where strain allows", race, *course.screws));
  chart.panels = {damage, stress, tissue};
  viz::draw_curves(display, chart, file);
}

void draw_windows(const viz::Display& display, const models::Race& race, const models::StressHistory& history,
                  const fs::path& file) {
  const GapCurves gap(race, history);
  const auto& course = *std::find_if(history.courses.begin(), history.courses.end(), [](const auto& candidate) {
    return candidate.course == models::HealingCourse::governed;
  });
  const auto curve = [&](const char* name, const auto& share) {
    return gap.curve(name, course, [&](const models::GapState& state) { return 100.0 * share(state); });
  };
  viz::CurveChart chart;
  chart.words = {
      "The gap while it heals where strain allows",
      fmt::format("Shares of its area under the loads as entered, union in week {:.3g}", race.union_week.middle)};
  chart.x = {"weeks since the operation", false};
  chart.panels = {{{"Perren's windows, %", false},
                   {curve("bone, up to 2 %", [](const auto& s) { return s.perren.bone; }),
                    curve("cartilage, up to 10 %", [](const auto& s) { return s.perren.cartilage; }),
                    curve("granulation, up to 100 %", [](const auto& s) { return s.perren.granulation; }),
                    curve("no tissue", [](const auto& s) { return s.perren.none; }),
                    curve("closed", [](const auto& s) { return s.perren.closed; })},
                   {}},
                  {{"Claes & Heigele's windows, %", false},
                   {curve("bone straight away", [](const auto& s) { return s.claes.membranous; }),
                    curve("bone by way of cartilage", [](const auto& s) { return s.claes.endochondral; }),
                    curve("fibrous tissue", [](const auto& s) { return s.claes.fibrous; })},
                   {}},
                  {{"on the way to union, %", false},
                   {curve("united", [](const auto& s) { return s.united; }),
                    curve("held back by strain", [](const auto& s) { return s.held; })},
                   {}}};
  viz::draw_curves(display, chart, file);
}

}  // namespace

viz::StudyCurve damage_curve(const std::string& name, const models::Race& race,
                             const models::RaceOutcome& outcome) {
  viz::StudyCurve curve{name, {}, {}, {}, {}};
  for (std::size_t week = 1; week < race.weeks.size(); ++week) {  // none on the first day: no place on this axis
    curve.x.push_back(race.weeks[week]);
    curve.y.push_back(outcome.damage[week].middle);
    curve.low.push_back(outcome.damage[week].low);
    curve.high.push_back(outcome.damage[week].high);
  }
  return curve;
}

void draw_race(const viz::Display& display, const models::Race& race, const models::StressHistory& history,
               const fs::path& folder) {
  draw_damage(display, race, history, display.file(folder / "race"));
  draw_windows(display, race, history, display.file(folder / "gap_windows"));
}

}  // namespace gapstrain::cases
