#include "models/patient/sizing.h"

#include "models/findings/model_error.h"
#include "models/layouts/construct_solver.h"
#include "models/measures/figures.h"
#include "models/parts/load_parts.h"
#include "models/rules/rules.h"
#include "solver/host/side_by_side.h"

#include <algorithm>
#include <array>
#include <utility>

namespace gapstrain::models {

namespace {

constexpr int least_screws = 3, most_screws = 5;
constexpr std::size_t next_to_fracture = 4, outermost = 2;
constexpr double as_good = 0.97;  // in hand; less is no reason against a customary choice

std::size_t screws_of(const FoundLayout& found) { return found.holes.proximal.size() + found.holes.distal.size(); }

// 2 with what is wanted in hand, 1 when it holds, else 0.
int rank_of(const FoundLayout& found) { return found.margin >= wanted_margin ? 2 : found.margin >= 1.0 ? 1 : 0; }

MarginKind least_kind(const MarginFactors& factors) {
  const std::array kinds{std::pair{factors.plate_yield, MarginKind::plate_yield},
                         std::pair{factors.plate_fatigue, MarginKind::plate_fatigue},
                         std::pair{factors.screw_yield, MarginKind::screw_yield},
                         std::pair{factors.screw_fatigue, MarginKind::screw_fatigue},
                         std::pair{factors.screw_hold, MarginKind::screw_hold}};
  return std::find_if(kinds.begin(), kinds.end(), [&](const auto& kind) { return kind.first == factors.least(); })
      ->second;
}

// Of one fragment, from the fracture outward.
std::vector<int> clear_holes(const Construct& construct, bool distal) {
  const auto& holes = only(construct.plates).holes;
  const double fracture = fracture_along(construct);
  std::vector<int> numbers;
  for (int hole = 1; hole <= static_cast<int>(holes.size()); ++hole)
    if ((holes[static_cast<std::size_t>(hole - 1)].position.value() >= fracture) == distal)
      numbers.push_back(hole);
  if (!distal) std::reverse(numbers.begin(), numbers.end());
  return numbers;
}

ScrewHoles holes_of(const Assembly& assembly, const std::vector<int>& chosen) {
  std::vector<int> taken;
  for (const int index : chosen)
    taken.push_back(assembly.screws[static_cast<std::size_t>(index)].planned.screw.hole);
  const auto of_fragment = [&](bool distal) {
    std::vector<int> holes = clear_holes(assembly.construct, distal);
    std::erase_if(holes, [&](int hole) { return std::find(taken.begin(), taken.end(), hole) == taken.end(); });
    return holes;
  };
  return {of_fragment(false), of_fragment(true)};
}

bool is_as_good(const FoundLayout& customary, const FoundLayout& best) {
  return rank_of(customary) == rank_of(best) && customary.broken.size() == best.broken.size() &&
         screws_of(customary) <= screws_of(best) && customary.margin >= as_good * best.margin;
}

std::optional<FoundLayout> outcome_of(ConstructSolver& solver, const Assembly& assembly,
                                      const std::vector<int>& chosen) {
  try {
    const Outcome outcome = solver.solve(chosen);
    if (!outcome.doubts.empty() || !outcome.margins.least()) return std::nullopt;
    FoundLayout found{holes_of(assembly, chosen), *outcome.margins.least(), least_kind(outcome.margins), {}, 0};
    static const std::vector<std::string> names = rule_names();
    for (std::size_t rule = 0; rule < outcome.broken_rules.size(); ++rule)
      if (outcome.broken_rules[rule]) found.broken.push_back(names[rule]);
    return found;
  } catch (const ModelError&) {
    return std::nullopt;
  }
}

// With each part of all loads at one end of its band after the other; the least margin of all, nothing where one
// end has no answer or no part has a band.
std::optional<double> least_over_bands(const std::shared_ptr<const PreparedBodies>& prepared,
                                       const Construct& construct, const std::vector<Screw>& screws,
                                       const std::vector<int>& chosen) {
  std::optional<double> least;
  for (const LoadPart part : load_parts)
    for (double PartBand::*const end : {&PartBand::low, &PartBand::high}) {
      Construct changed = construct;
      for (LoadCase& load : changed.loads) load = with_part(load, part, band_of(load, part).*end);
      if (changed.loads == construct.loads) continue;
      const Assembly assembly = assemble(prepared, changed, screws);
      const PeakStress peak(assembly, PlatePlaces::likely);
      ConstructSolver solver(assembly, peak);
      const auto found = outcome_of(solver, assembly, chosen);
      if (!found) return std::nullopt;
      least = std::min(least.value_or(found->margin), found->margin);
    }
  return least;
}

}  // namespace

LayoutRules layouts_to_size(const Construct& construct) {
  LayoutRules rules;
  rules.least_per_fragment = least_screws;
  rules.most_per_fragment = most_screws;
  rules.kinds = {ScrewKind::locking};
  for (const bool distal : {false, true}) {
    std::vector<int> holes = clear_holes(construct, distal);
    // Those over the fracture take no screw.
    std::erase_if(holes, [&](int hole) {
      return std::none_of(construct.screws.begin(), construct.screws.end(), [&](const Screw& screw) {
        const bool same_side = std::find(holes.begin(), holes.end(), screw.hole) != holes.end();
        return same_side && (distal ? screw.hole <= hole : screw.hole >= hole);
      });
    });
    for (std::size_t k = next_to_fracture; k + outermost < holes.size(); ++k) rules.barred.push_back(holes[k]);
  }
  return rules;
}

bool is_enough(const FoundLayout& found) { return found.margin >= wanted_margin && found.broken.empty(); }

bool holds_over_bands(const FoundLayout& found) { return found.over_bands && *found.over_bands >= 1.0; }

bool is_better(const FoundLayout& one, const FoundLayout& other) {
  if (rank_of(one) != rank_of(other)) return rank_of(one) > rank_of(other);
  if (one.broken.size() != other.broken.size()) return one.broken.size() < other.broken.size();
  if (rank_of(one) == 2 && holds_over_bands(one) != holds_over_bands(other)) return holds_over_bands(one);
  if (rank_of(one) == 2 && screws_of(one) != screws_of(other)) return screws_of(one) < screws_of(other);
  return one.margin > other.margin;
}

std::optional<FoundLayout> find_layout(const std::shared_ptr<const PreparedBodies>& prepared,
                                       const Construct& construct, const std::vector<Screw>& screws,
                                       const Layouts& layouts) {
  const Assembly assembly = assemble(prepared, construct, screws);
  const PeakStress peak(assembly, PlatePlaces::likely);
  constexpr std::size_t at_a_time = 64;  // neighbours share what they have in common
  std::vector<std::optional<FoundLayout>> all(layouts.size());
  solver::side_by_side((layouts.size() + at_a_time - 1) / at_a_time, [&](std::size_t block) {
    ConstructSolver solver(assembly, peak);
    const std::size_t end = std::min(layouts.size(), (block + 1) * at_a_time);
    for (std::size_t row = block * at_a_time; row < end; ++row)
      all[row] = outcome_of(solver, assembly, layouts.chosen(row));
  });
  std::optional<std::size_t> best;
  for (std::size_t row = 0; row < all.size(); ++row)
    if (all[row] && (!best || is_better(*all[row], *all[*best]))) best = row;
  if (!best) return std::nullopt;
  if (const auto own = layouts.own(); own && all[*own] && is_as_good(*all[*own], *all[*best])) best = own;
  FoundLayout found = *all[*best];
  found.solved = layouts.size();
  found.over_bands = least_over_bands(prepared, construct, screws, layouts.chosen(*best));
  return found;
}

bool Sizing::is_wanted() const { return taken && tried[*taken].found->margin >= wanted_margin; }

std::size_t Sizing::solved() const {
  std::size_t all = 0;
  for (const TriedPlate& plate : tried) all += plate.found ? plate.found->solved : 0;
  return all;
}

Sizing size_plates(const std::vector<PlateChoice>& plates,
                   const std::function<std::optional<FoundLayout>(const PlateChoice&)>& find) {
  Sizing sizing;
  for (const PlateChoice& plate : plates) {
    sizing.tried.push_back({plate, find(plate)});
    const auto& found = sizing.tried.back().found;
    if (!found) continue;
    // Of plates with enough in hand that break as many rules the smaller one stays.
    const FoundLayout* const taken = sizing.taken ? &*sizing.tried[*sizing.taken].found : nullptr;
    const bool as_many = taken != nullptr && rank_of(*taken) == 2 && rank_of(*found) == 2 &&
                         taken->broken.size() == found->broken.size() &&
                         holds_over_bands(*taken) == holds_over_bands(*found);
    if (taken == nullptr || (!as_many && is_better(*found, *taken))) sizing.taken = sizing.tried.size() - 1;
    if (is_enough(*found) && holds_over_bands(*found)) break;
  }
  return sizing;
}

}  // namespace gapstrain::models
