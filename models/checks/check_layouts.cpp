#include "models/checks/checks.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::models {

void check_layouts(const Construct& construct, ProblemList& problems) {
  if (!construct.layouts) return;
  const LayoutRules& rules = *construct.layouts;
  const auto holes = static_cast<int>(only(construct.plates).holes.size());
  for (const auto& [name, list] : {std::pair{"barred", &rules.barred}, std::pair{"filled", &rules.filled}})
    for (const int hole : *list)
      if (hole < 1 || hole > holes)
        problems.error(fmt::format("layouts.{}", name),
                       fmt::format("There is no hole {}; the plate's holes are 1 to {}.", hole, holes));
  for (const int hole : rules.filled)
    if (std::find(rules.barred.begin(), rules.barred.end(), hole) != rules.barred.end())
      problems.error("layouts.filled", fmt::format("Hole {} is barred and filled at once; remove one.", hole));
  if (rules.most_per_fragment.value_or(rules.least_per_fragment) < rules.least_per_fragment)
    problems.error("layouts.most_per_fragment",
                   fmt::format("At most {} screws a fragment are fewer than the {} that each has at least.",
                               *rules.most_per_fragment, rules.least_per_fragment));
  if (rules.most_in_all.value_or(2 * rules.least_per_fragment) < 2 * rules.least_per_fragment)
    problems.error("layouts.most_in_all",
                   fmt::format("At most {} screws in all are fewer than the {} that two fragments have at least.",
                               *rules.most_in_all, 2 * rules.least_per_fragment));
  for (const ScrewKind kind : rules.kinds) {
    if (kind == ScrewKind::lag)
      problems.error("layouts.kinds",
                     "Lag screws stay as they are in all layouts; name kinds that hold one fragment.");
    else if (std::none_of(construct.screws.begin(), construct.screws.end(),
                          [&](const Screw& screw) { return screw.kind == kind && !screw.entry; }))
      problems.error(
          "layouts.kinds",
          "The case has no screw of one of these kinds, and so no size for it; add one to [[screw]], or "
          "leave the kind out.");
  }
}

}  // namespace gapstrain::models
