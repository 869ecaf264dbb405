#include "models/checks/checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

void check_protection(const Construct& construct, ProblemList& problems) {
  const Healing& healing = *construct.healing;
  double begin = 0.0;
  for (std::size_t k = 0; k < healing.protection.size(); ++k) {
    const ProtectedTime& time = healing.protection[k];
    const std::string where = fmt::format("healing.protection[{}]", k);
    if (!(time.until_week > begin && time.until_week < healing.weeks_from))
      problems.error(where + ".until_week",
                     fmt::format("A protected time ends with week {:.4g}; it must end after week {:.4g}, where it "
                                 "begins, and before the earliest week of union ({:.4g}), until when the fracture "
                                 "is in need of its plate.",
                                 time.until_week, begin, healing.weeks_from));
    if (!(time.share >= 0.0 && time.share <= 1.0))
      problems.error(where + ".share", fmt::format("In a protected time {:.4g} of the loads' cycles come; allowed "
                                                   "are 0 to 1.",
                                                   time.share));
    for (const std::string& name : time.without)
      if (std::none_of(construct.loads.begin(), construct.loads.end(),
                       [&](const LoadCase& load) { return load.name == name && load.cycles_per_day.has_value(); }))
        problems.error(where + ".without",
                       fmt::format("A protected time is without \"{}\", but no load with cycles_per_day has that "
                                   "name.",
                                   name));
    begin = std::max(begin, time.until_week);
  }
}

}  // namespace

void check_healing(const Construct& construct, ProblemList& problems) {
  if (!construct.healing) return;
  const Healing& healing = *construct.healing;
  constexpr double most_weeks = 260.0;  // five years
  if (!(healing.weeks_from >= 1.0 && healing.weeks_from <= most_weeks))
    problems.error("healing.weeks_from",
                   fmt::format("Union is expected after {:.4g} weeks; allowed are 1 to {:.0f}.",
                               healing.weeks_from, most_weeks));
  if (!(healing.weeks_to >= healing.weeks_from && healing.weeks_to <= most_weeks))
    problems.error(
        "healing.weeks_to",
        fmt::format("Union is expected after {:.4g} weeks at the latest; it must not come before weeks_from "
                    "({:.4g}) nor after {:.0f} weeks.",
                    healing.weeks_to, healing.weeks_from, most_weeks));
  check_tissue(healing.at_first, "healing.tissue_at_first", problems);
  check_tissue(healing.at_union, "healing.tissue_at_union", problems);
  if (!(healing.at_union.youngs_modulus > healing.at_first.youngs_modulus))
    problems.error(
        "healing.tissue_at_union",
        fmt::format("The gap does not stiffen: from {} ({}) to {} ({}). Name a stiffer tissue for the week of "
                    "union.",
                    healing.at_first.name, text(healing.at_first.youngs_modulus), healing.at_union.name,
                    text(healing.at_union.youngs_modulus)));
  if (!(healing.activity_factor >= 1.0 && healing.activity_factor <= 100.0))
    problems.error("healing.activity_factor",
                   fmt::format("The activity factor is {:.4g}; allowed are 1 (as often as the loads say) to 100.",
                               healing.activity_factor));
  check_protection(construct, problems);
  if (only(construct.fractures).tissue)
    problems.warning("healing",
                     "The gap is filled with a tissue of its own; the race between bone and plate puts the "
                     "healing tissue in its place.");
}

void check_stock(const Stock& stock, ProblemList& problems) {
  problems.positive("stock.screw_step", "The step between stocked screw lengths", stock.screw_step);
  problems.not_negative("stock.screw_allowance", "The allowance on a screw's measured depth",
                        stock.screw_allowance);
}

}  // namespace gapstrain::models
