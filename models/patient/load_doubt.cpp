#include "models/patient/load_doubt.h"

#include "models/parts/only.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr int most_halvings = 2;

bool is_other(Standing standing, Standing taken) {
  return standing != taken && standing != Standing::not_trusted && taken != Standing::not_trusted;
}

template <class Change>
Construct with_loads(const Construct& construct, const Change& change) {
  Construct changed = construct;
  for (LoadCase& load : changed.loads) load = change(load);
  return changed;
}

}  // namespace

TurningPoint find_turning_point(Standing taken, double low, double high, int halvings,
                                const std::function<Standing(double factor)>& standing_at) {
  TurningPoint found{low, high, standing_at(low), taken, standing_at(high), std::nullopt, std::nullopt};
  const bool at_low = is_other(found.at_low, taken), at_high = is_other(found.at_high, taken);
  if (!at_low && !at_high) return found;
  // The nearer end, where both turn.
  const bool downward = at_low && (!at_high || -std::log(low) < std::log(high));
  double turned = downward ? low : high, not_yet = 1.0;
  for (int k = 0; k < halvings; ++k) {
    const double between = std::sqrt(turned * not_yet);
    (is_other(standing_at(between), taken) ? turned : not_yet) = between;
  }
  found.turned = turned;
  found.not_yet = not_yet;
  return found;
}

std::vector<PartDoubt> LoadDoubts::turning_parts() const {
  std::vector<PartDoubt> turning;
  for (const PartDoubt& doubt : parts)
    if (doubt.turning.turned) turning.push_back(doubt);
  return turning;
}

std::vector<SideDoubt> LoadDoubts::turning_sides() const {
  std::vector<SideDoubt> turning;
  for (const SideDoubt& doubt : other_sides)
    if (is_other(doubt.standing, taken)) turning.push_back(doubt);
  return turning;
}

bool LoadDoubts::turns_by_size() const { return small_patient && is_other(small_patient->standing, taken); }

bool LoadDoubts::is_open() const {
  return !turning_parts().empty() || !turning_sides().empty() || turns_by_size();
}

bool LoadDoubts::are_all_known() const {
  constexpr Standing unknown = Standing::not_trusted;
  return taken != unknown && !(small_patient && small_patient->standing == unknown) &&
         std::none_of(parts.begin(), parts.end(),
                      [](const PartDoubt& doubt) {
                        return doubt.turning.at_low == unknown || doubt.turning.at_high == unknown;
                      }) &&
         std::none_of(other_sides.begin(), other_sides.end(),
                      [](const SideDoubt& doubt) { return doubt.standing == unknown; });
}

LoadDoubts doubt_loads(const Patient& patient, const Construct& construct, Standing taken,
                       const std::function<Standing(const Construct&)>& standing_of) {
  const LimbLoads limb = limb_loads(patient.species, patient.bone);
  LoadDoubts doubts;
  doubts.taken = taken;
  for (const LoadPart part : load_parts) {
    const LimbLoad& band = limb.part(part);
    const auto standing_at = [&](double factor) {
      return standing_of(
          with_loads(construct, [&](const LoadCase& load) { return with_part(load, part, factor); }));
    };
    doubts.parts.push_back(
        {part, band.evidence,
         find_turning_point(taken, band.low / band.middle, band.high / band.middle, most_halvings, standing_at)});
  }
  std::stable_sort(doubts.parts.begin(), doubts.parts.end(),
                   [](const PartDoubt& one, const PartDoubt& other) { return one.evidence > other.evidence; });
  const Aspect aspect = only(construct.plates).aspect;
  for (const TensionSide& side : limb.other_sides)
    doubts.other_sides.push_back({side, standing_of(with_loads(construct, [&](const LoadCase& load) {
                                    return with_side(load, side, aspect);
                                  }))});
  if (const double factor = more_muscle_force(patient.mass); factor > 1.0)
    doubts.small_patient = {factor, standing_of(with_loads(construct, [&](const LoadCase& load) {
                              LoadCase more = load;  // bending comes of the axial force
                              more.axial_compression = factor * load.axial_compression;
                              more.torsion = factor * load.torsion;
                              return more;
                            }))};
  return doubts;
}

}  // namespace gapstrain::models
