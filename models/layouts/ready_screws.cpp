#include "models/layouts/ready_screws.h"

#include "models/measures/solve.h"
#include "models/measures/working_length.h"

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

}  // namespace gapstrain::models
