#include "models/layouts/hole_choices.h"

#include "models/assembly/prepared_bodies.h"
#include "models/checks/screw_fault.h"
#include "models/measures/solve.h"
#include "models/parts/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace gapstrain::models {

namespace {

constexpr std::array kinds{ScrewKind::locking, ScrewKind::cortical, ScrewKind::compression, ScrewKind::lag};

const Screw* first_of(const Construct& construct, const std::function<bool(const Screw&)>& is_wanted) {
  const auto found = std::find_if(construct.screws.begin(), construct.screws.end(),
                                  [&](const Screw& screw) { return !screw.entry && is_wanted(screw); });
  return found == construct.screws.end() ? nullptr : &*found;
}

// What a screw of a kind is like on this construct; nothing where it has none to take size and metal from.
std::optional<Screw> like(const Construct& construct, ScrewKind kind, int hole) {
  const Screw* model = first_of(construct, [&](const Screw& s) { return s.kind == kind && s.hole == hole; });
  if (model != nullptr) return *model;
  model = first_of(construct, [&](const Screw& s) { return s.kind == kind; });
  if (model == nullptr && kind != ScrewKind::locking) model = first_of(construct, is_tightened);
  if (model == nullptr) return std::nullopt;
  Screw screw = *model;
  screw.tilt_along = screw.tilt_across = 0.0 * radian;
  if (kind != ScrewKind::compression) screw.slide.reset();
  if (kind == ScrewKind::lag) screw.cortices = 2;
  screw.kind = kind;
  return screw;
}

std::vector<PlannedScrew> plan(const Construct& construct, const std::vector<Screw>& screws) {
  const BoneShape shape(construct.bone, only(construct.plates).aspect);
  const std::vector plates{std::make_shared<const PlateShape>(only(construct.plates), shape)};
  return plan_screws(construct, screws, plates, shape);
}

}  // namespace

bool fit_one_mesh(const Construct& construct, const Screw& one, const Screw& other) {
  if (one.hole == 0 || one.hole != other.hole || one.plate != other.plate) return true;
  Construct alone = construct;
  alone.temporary.clear();
  const auto planned = plan(alone, {one, other});
  const auto& [first, second] = std::pair{planned[0], planned[1]};
  if (!first.placement.bone || !second.placement.bone) return false;
  const auto clear = [](const std::string& spot, const WallCrossing& wall, double radius,
                        const std::string& other_spot, const WallCrossing& other_wall, double other_radius) {
    constexpr double least_gap = 1.0;  // in the larger radius: room for elements between (ours)
    return spot.empty() || other_spot.empty() || spot == other_spot ||
           (wall.middle - other_wall.middle).norm() >
               radius + other_radius + least_gap * std::max(radius, other_radius);
  };
  const double core = 0.5 * first.screw.size.core_diameter.value();
  const double other_core = 0.5 * second.screw.size.core_diameter.value();
  return clear(first.near_spot, first.placement.bone->near, first.near_radius(), second.near_spot,
               second.placement.bone->near, second.near_radius()) &&
         clear(first.far_spot, first.placement.bone->far, core, second.far_spot, second.placement.bone->far,
               other_core);
}

std::vector<HoleChoice> choices_of_hole(const Construct& construct, int hole) {
  std::vector<HoleChoice> choices;
  std::vector<Screw> ready;
  if (const Screw* own = first_of(construct, [&](const Screw& screw) { return screw.hole == hole; })) {
    choices.push_back({*own, {}});
    ready.push_back(*own);
  }
  for (const ScrewKind kind : kinds) {
    const auto screw = like(construct, kind, hole);
    for (const int cortices : {2, 1}) {
      if (kind == ScrewKind::lag && cortices == 1) continue;
      HoleChoice choice;
      choice.screw.kind = kind;
      choice.screw.cortices = cortices;
      choice.screw.hole = hole;
      if (!screw) {
        choice.why_not = fmt::format("The case has no {} screw to take size and metal from; enter one.",
                                     kind == ScrewKind::locking ? "locking" : "ball-headed");
        choices.push_back(std::move(choice));
        continue;
      }
      choice.screw = *screw;
      choice.screw.cortices = cortices;
      choice.screw.hole = hole;
      if (screw->hole != hole) {
        choice.screw.label = fmt::format("H{}", hole);
        choice.screw.id = ScrewId::none;
      }
      if (has_place(ready, choice.screw)) continue;
      choice.why_not = fault_of_last(construct, {choice.screw});
      const auto other = std::find_if(ready.begin(), ready.end(), [&](const Screw& screw_ready) {
        return !fit_one_mesh(construct, screw_ready, choice.screw);
      });
      if (!choice.why_not && other != ready.end())
        choice.why_not = fmt::format(
            "In hole {} the mesh is made ready for a {} screw, whose shaft is of another size, or passes the bone "
            "beside a "
            "{} one's: enter that kind in the case to have it instead.",
            hole, name_of(other->kind), name_of(kind));
      if (!choice.why_not) ready.push_back(choice.screw);
      choices.push_back(std::move(choice));
    }
  }
  return choices;
}

std::vector<Screw> screws_of_all_choices(const Construct& construct) {
  std::vector<std::vector<HoleChoice>> choices;
  const auto holes = static_cast<int>(only(construct.plates).holes.size());
  for (int hole = 1; hole <= holes; ++hole) choices.push_back(choices_of_hole(construct, hole));
  std::vector<Screw> all;
  add_places(all, construct.screws);
  for (const ScrewKind kind : kinds)
    for (const int cortices : {2, 1})
      for (const auto& of_hole : choices)
        for (const auto& choice : of_hole)
          if (!choice.why_not && choice.screw.kind == kind && choice.screw.cortices == cortices)
            add_places(all, {choice.screw});
  return all;
}

std::vector<BesidePatch> screws_beside_patches(const Construct& construct, const std::vector<Screw>& ready) {
  constexpr double least = 1e-9;  // mm
  std::vector<BesidePatch> found;
  const auto planned = plan(construct, ready);
  const auto distance = [&](const std::string PlannedScrew::*spot, const WallCrossing BoneCrossing::*wall,
                            const PlannedScrew& screw) {
    if ((screw.*spot).empty() || !screw.placement.bone) return 0.0;
    const auto first = std::find_if(planned.begin(), planned.end(),
                                    [&](const PlannedScrew& other) { return other.*spot == screw.*spot; });
    return (((*first).placement.bone.value().*wall).middle - (screw.placement.bone.value().*wall).middle).norm();
  };
  for (std::size_t k = 0; k < ready.size(); ++k) {
    if (!has_place(construct.screws, ready[k])) continue;
    const double beside = std::max(distance(&PlannedScrew::near_spot, &BoneCrossing::near, planned[k]),
                                   distance(&PlannedScrew::far_spot, &BoneCrossing::far, planned[k]));
    if (beside > least) found.push_back({ready[k].label, beside * mm});
  }
  return found;
}

}  // namespace gapstrain::models
