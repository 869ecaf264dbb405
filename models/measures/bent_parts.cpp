#include "models/measures/bent_parts.h"

#include <optional>

namespace gapstrain::models {

namespace {

// The worst of the places that belong to a part; both sections of a hole are one.
template <class Belongs>
std::optional<BentPart> worst_of(const Assembly& assembly, const solver::Yielded& yielded,
                                 const Belongs& belongs) {
  const auto& places = assembly.yields.places;
  std::optional<BentPart> worst;
  for (std::size_t k = 0; k < places.size(); ++k) {
    if (!belongs(places[k])) continue;
    Eigen::Matrix<double, 6, 1> deformed = yielded.deformed.col(static_cast<Eigen::Index>(k));
    while (k + 1 < places.size() && belongs(places[k + 1]) && places[k + 1].along == places[k].along)
      deformed += yielded.deformed.col(static_cast<Eigen::Index>(++k));
    const double turn = deformed.tail<3>().norm();
    if (turn < turn_worth_saying.value() || (worst && worst->turn.value() >= turn)) continue;
    worst = BentPart{ScrewId::none, {}, places[k].along * mm, turn * radian, deformed(0) * mm};
  }
  return worst;
}

}  // namespace

std::vector<BentPart> bent_parts(const Assembly& assembly, const std::vector<int>& in,
                                 const solver::Yielded& yielded) {
  std::vector<BentPart> all;
  for (const int screw : in)
    if (auto bent = worst_of(assembly, yielded, [&](const YieldPlace& place) { return place.screw == screw; })) {
      const Screw& part = assembly.screws[static_cast<std::size_t>(screw)].planned.screw;
      bent->screw = part.id;
      bent->label = part.label;
      all.push_back(*bent);
    }
  for (std::size_t plate = 0; plate < assembly.plates.size(); ++plate)
    if (auto bent = worst_of(assembly, yielded,
                             [&](const YieldPlace& place) { return !place.screw && place.plate == plate; })) {
      bent->label = "plate";
      all.push_back(*bent);
    }
  return all;
}

}  // namespace gapstrain::models
