#include "models/preparation/from_scratch.h"

#include "models/layouts/ready_screws.h"
#include "models/preparation/prepare_bodies.h"

namespace gapstrain::models {

namespace {

AssessedConstruct assess_from_scratch(const Construct& construct, bool with_race, const Progress& progress) {
  const auto screws = screws_to_make_ready(construct);
  return assess(prepare_bodies(construct, screws, progress), construct, screws, with_race, progress);
}

}  // namespace

Analysis analyse(const Construct& construct, const Progress& progress) {
  return analyse(assemble(construct, screws_to_make_ready(construct), progress), progress);
}

AssessedConstruct assess(const Construct& construct, const Progress& progress) {
  return assess_from_scratch(construct, true, progress);
}

AssessedConstruct assess_first_day(const Construct& construct, const Progress& progress) {
  return assess_from_scratch(construct, false, progress);
}

}  // namespace gapstrain::models
