#include "models/layouts/layouts.h"

#include "models/assembly/body_numbers.h"
#include "models/checks/checks.h"
#include "models/checks/screw_fault.h"
#include "models/findings/model_error.h"
#include "models/measures/figures.h"
#include "models/measures/solve.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <set>

namespace gapstrain::models {

namespace {

constexpr std::size_t most_holes_of_layouts = 64;

bool stays(const Screw& screw) { return screw.kind == ScrewKind::lag; }

bool is_among(const std::vector<int>& holes, int hole) {
  return std::find(holes.begin(), holes.end(), hole) != holes.end();
}

// A hole's own screw, else one like the construct's first of the first kind that fits the hole. (One a hole: two
// kinds in one place would pass the same spot of the bone, which a mesh has once.)
std::optional<Screw> screw_for(const Construct& construct, int hole) {
  const HoleShape shape = only(construct.plates).holes[static_cast<std::size_t>(hole - 1)].shape;
  const auto find = [&](ScrewKind kind, int in_hole) {
    return std::find_if(construct.screws.begin(), construct.screws.end(), [&](const Screw& screw) {
      return screw.kind == kind && !screw.entry && (in_hole == 0 || screw.hole == in_hole);
    });
  };
  for (const ScrewKind kind : construct.layouts->kinds)
    if (const auto own = find(kind, hole); own != construct.screws.end()) return *own;
  for (const ScrewKind kind : construct.layouts->kinds) {
    const auto like = find(kind, 0);
    if (!fits_hole(kind, shape) || like == construct.screws.end()) continue;
    Screw screw = *like;
    screw.hole = hole;
    screw.label = fmt::format("H{}", hole);
    screw.id = ScrewId::none;
    screw.tilt_along = screw.tilt_across = 0.0 * radian;
    return screw;
  }
  return std::nullopt;
}

}  // namespace

Layouts::Layouts(const Construct& construct) {
  find_candidates(construct);
  find_conflicts(construct);
  enumerate(construct);
}

void Layouts::find_candidates(const Construct& construct) {
  const LayoutRules& rules = *construct.layouts;
  const double fracture = fracture_along(construct);
  const auto& holes = only(construct.plates).holes;
  if (holes.size() > most_holes_of_layouts)
    throw ModelError(fmt::format("the plate has {} holes; layouts are worked out for up to {}", holes.size(),
                                 most_holes_of_layouts));
  std::vector<int> taken;  // by screws that stay
  for (const auto& screw : construct.screws)
    if (stays(screw) && screw.hole > 0) taken.push_back(screw.hole);

  for (int hole = 1; hole <= static_cast<int>(holes.size()); ++hole) {
    holes_.emplace_back();
    if (is_among(rules.barred, hole) || is_among(taken, hole)) continue;
    const auto screw = screw_for(construct, hole);
    if (!screw) {
      left_out_.push_back(fmt::format("hole {}: no screw of the kinds allowed fits it", hole));
    } else if (const auto fault = fault_of_last(construct, {*screw})) {
      left_out_.push_back(fmt::format("hole {}: {}", hole, *fault));
    } else {
      const bool is_beyond = holes[static_cast<std::size_t>(hole - 1)].position.value() >= fracture;
      holes_.back() = {static_cast<int>(candidates_.size()), is_beyond ? 1U : 0U};
      candidates_.push_back(*screw);
    }
  }
  for (const auto& screw : construct.screws) {
    if (!stays(screw)) continue;
    staying_.push_back(static_cast<int>(candidates_.size()));
    candidates_.push_back(screw);
  }
  // Those that are the construct's own keep its ids, and new ones get none that another of its screws has.
  std::vector<Screw> all = candidates_;
  add_places(all, construct.screws);
  number_screws(all);
  std::copy_n(all.begin(), candidates_.size(), candidates_.begin());
}

void Layouts::find_conflicts(const Construct& construct) {
  const std::size_t count = candidates_.size();
  conflicts_.assign(count, std::vector<char>(count, 0));
  for (std::size_t one = 0; one < count; ++one)
    for (std::size_t two = one + 1; two < count; ++two)
      if (candidates_[one].hole != candidates_[two].hole &&
          fault_of_last(construct, {candidates_[one], candidates_[two]}))
        conflicts_[one][two] = conflicts_[two][one] = 1;

  const bool any_ball_head = std::any_of(candidates_.begin(), candidates_.end(), is_tightened);
  const auto add = [&](int candidate) {
    if (!is_among(order_, candidate)) order_.push_back(candidate);
  };
  if (any_ball_head)
    for (const auto& screw : construct.screws)
      for (std::size_t k = 0; k < count; ++k)
        if (same_place(candidates_[k], screw)) add(static_cast<int>(k));
  for (std::size_t k = 0; k < count; ++k) add(static_cast<int>(k));
}

void Layouts::enumerate(const Construct& construct) {
  const LayoutRules& rules = *construct.layouts;
  const int unlimited = static_cast<int>(holes_.size());
  const int most_a_side = rules.most_per_fragment.value_or(unlimited);
  const int most_in_all = rules.most_in_all.value_or(unlimited);
  std::set<int> own;
  for (std::size_t k = 0; k < candidates_.size(); ++k)
    for (const auto& screw : construct.screws)
      if (same_place(candidates_[k], screw)) own.insert(static_cast<int>(k));
  const bool own_is_whole = own.size() == construct.screws.size();

  std::vector<int> in = staying_;
  std::vector<int> count(fragment_count(construct), 0);
  const auto visit = [&](const auto& self, std::size_t hole, std::uint64_t code) -> void {
    if (hole == holes_.size()) {
      if (*std::min_element(count.begin(), count.end()) < rules.least_per_fragment) return;
      if (codes_.size() == most)
        throw ModelError(fmt::format("there are more than {} layouts; bar holes, or allow fewer screws", most));
      if (own_is_whole && std::set<int>(in.begin(), in.end()) == own) own_ = codes_.size();
      codes_.push_back(code);
      return;
    }
    code <<= 1;
    const auto& place = holes_[hole];
    const bool is_filled = is_among(rules.filled, static_cast<int>(hole) + 1);
    if (!is_filled) self(self, hole + 1, code);
    if (!place) return;
    int& side = count[place->fragment];
    const bool collides = std::any_of(in.begin(), in.end(), [&](int other) {
      return conflicts_[static_cast<std::size_t>(place->candidate)][static_cast<std::size_t>(other)] != 0;
    });
    if (collides || side == most_a_side || std::accumulate(count.begin(), count.end(), 0) == most_in_all) return;
    ++side;
    in.push_back(place->candidate);
    self(self, hole + 1, code | 1U);
    in.pop_back();
    --side;
  };
  visit(visit, 0, 0);
  if (codes_.empty())
    throw ModelError(
        fmt::format("no choice of screws is admissible: {} a fragment at least{}", rules.least_per_fragment,
                    left_out_.empty() ? "" : fmt::format("; left out are {}", fmt::join(left_out_, "; "))));
}

std::vector<int> Layouts::chosen(std::size_t row) const {
  std::vector<char> is_in(candidates_.size(), 0);
  for (const int candidate : staying_) is_in[static_cast<std::size_t>(candidate)] = 1;
  for (std::size_t hole = 0; hole < holes_.size(); ++hole) {
    if ((codes_[row] >> (holes_.size() - 1 - hole) & 1U) != 0)
      is_in[static_cast<std::size_t>(holes_[hole]->candidate)] = 1;
  }
  std::vector<int> screws;
  for (const int candidate : order_)
    if (is_in[static_cast<std::size_t>(candidate)] != 0) screws.push_back(candidate);
  return screws;
}

}  // namespace gapstrain::models
