#include "cases/outputs/tables/race_csv.h"

#include "cases/outputs/json/race_json.h"
#include "cases/outputs/tables/race_weeks.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace gapstrain::cases {

namespace {

using Figure = std::function<double(const models::GapState&)>;

struct RaceColumn {
  const char* name;
  Figure figure;
  bool in_ratios = false;  // between moments it goes in equal ratios, else straight
};

const std::vector<RaceColumn>& columns() {
  static const std::vector<RaceColumn> all = {
      {"tissue_modulus_mpa", [](const auto& gap) { return gap.modulus.value(); }, true},
      {"plate_peak_mpa", [](const auto& gap) { return gap.plate_peak.value(); }},
      {"largest_axial_strain", [](const auto& gap) { return gap.largest_strain; }},
      {"largest_shear_strain", [](const auto& gap) { return gap.largest_shear; }},
      {"perren_bone", [](const auto& gap) { return gap.perren.bone; }},
      {"perren_cartilage", [](const auto& gap) { return gap.perren.cartilage; }},
      {"perren_granulation", [](const auto& gap) { return gap.perren.granulation; }},
      {"perren_none", [](const auto& gap) { return gap.perren.none; }},
      {"closed", [](const auto& gap) { return gap.perren.closed; }},
      {"claes_membranous", [](const auto& gap) { return gap.claes.membranous; }},
      {"claes_endochondral", [](const auto& gap) { return gap.claes.endochondral; }},
      {"claes_fibrous", [](const auto& gap) { return gap.claes.fibrous; }},
      {"united", [](const auto& gap) { return gap.united; }},
      {"held", [](const auto& gap) { return gap.held; }}};
  return all;
}

// At union's state from then on.
double at_week(const RaceColumn& column, const std::vector<models::GapState>& gap,
               const std::vector<double>& weeks, double week) {
  const auto after = static_cast<std::size_t>(std::upper_bound(weeks.begin(), weeks.end(), week) - weeks.begin());
  if (after == weeks.size()) return column.figure(gap.back());
  const double share = (week - weeks[after - 1]) / (weeks[after] - weeks[after - 1]);
  const double before = column.figure(gap[after - 1]), next = column.figure(gap[after]);
  return column.in_ratios ? before * std::pow(next / before, share) : before + share * (next - before);
}

}  // namespace

std::string race_csv(const models::Race& race, const models::StressHistory& history) {
  std::vector<std::string> names{"course", "week", "damage_low", "damage_middle", "damage_high"};
  for (const auto& column : columns()) names.push_back(column.name);
  std::string table = fmt::format("{}\r\n", fmt::join(names, ","));
  const auto moments = weeks_of_moments(race, history);
  for (std::size_t c = 0; c < race.courses.size(); ++c)
    for (std::size_t w = 0; w < race.weeks.size(); ++w) {
      const auto& damage = race.courses[c].damage[w];
      table += fmt::format("{},{:g},{:.9g},{:.9g},{:.9g}", course_name(race.courses[c].course), race.weeks[w],
                           damage.low, damage.middle, damage.high);
      for (const auto& column : columns())
        table += fmt::format(",{:.9g}", at_week(column, history.courses[c].gap, moments, race.weeks[w]));
      table += "\r\n";
    }
  return table;
}

}  // namespace gapstrain::cases
