#include "models/preparation/from_scratch.h"

#include "models/layouts/ready_screws.h"
#include "models/preparation/prepare_bodies.h"

namespace gapstrain::models {

Analysis analyse(const Construct& construct, const Progress& progress) {
  return analyse(assemble(construct, screws_to_make_ready(construct), progress), progress);
}

AssessedConstruct assess(const Construct& construct, const std::vector<Screw>& screws, const Progress& progress) {
  return assess(prepare_bodies(construct, screws, progress), construct, screws, true, progress);
}

AssessedConstruct assess(const Construct& construct, const Progress& progress) {
  return assess(construct, screws_to_make_ready(construct), progress);
}

AssessedConstruct assess_first_day(const Construct& construct, const Progress& progress) {
  const auto screws = screws_to_make_ready(construct);
  return assess(prepare_bodies(construct, screws, progress), construct, screws, false, progress);
}

}  // namespace gapstrain::models
