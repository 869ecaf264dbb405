#include "models/checks/checks.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::models {

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
