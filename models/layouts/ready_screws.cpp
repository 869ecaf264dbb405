#include "models/layouts/ready_screws.h"

#include "models/measures/solve.h"
#include "models/measures/working_length.h"

#include <algorithm>

namespace gapstrain::models {

std::vector<Screw> screws_to_make_ready(const Construct& construct) {
  if (construct.layouts) return screws_to_make_ready(construct, Layouts(construct));
  std::vector<Screw> all;
  add_places(all, construct.screws);
  for (const auto& variant : working_length_variants(construct)) add_places(all, variant.screws);
  return all;
}

std::vector<Screw> screws_to_make_ready(const Construct& construct, const Layouts& layouts) {
  std::vector<Screw> all;
  add_places(all, layouts.candidates());
  add_places(all, construct.screws);
  return all;
}

std::vector<Screw> screws_to_make_ready(const Construct& construct, std::vector<Screw> candidates) {
  for (auto& candidate : candidates) {
    const auto own = std::find_if(construct.screws.begin(), construct.screws.end(),
                                  [&](const Screw& screw) { return same_place(screw, candidate); });
    if (own != construct.screws.end())
      candidate = *own;
    else
      candidate.id = ScrewId::none;
  }
  std::vector<Screw> all;
  add_places(all, candidates);
  add_places(all, construct.screws);
  number_screws(all);
  return all;
}

}  // namespace gapstrain::models
