// The order of the steps: nothing may hold what a later step is to move.
#include "models/assembly/procedure.h"
#include "models/rules/rules_subject.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <numeric>
#include <set>

namespace gapstrain::models {

namespace {

// A screw that came too early, and the step it was in the way of: "S5 is tightened".
struct TooEarly {
  std::vector<std::string> early;
  std::string before;
};

// What was found on a walk through the steps.
struct Walk {
  bool presses = false;          // a compression or lag screw or a fracture clamp does
  bool mixed = false;            // a fragment has ball heads that press the plate on, and locking heads
  std::vector<TooEarly> blocks;  // what presses
  std::vector<TooEarly> lifts;   // plate screws with ball heads
};

class StepWalker {
 public:
  explicit StepWalker(const RuleSubject& subject) : subject_(subject) {
    std::vector<int> all(subject.screws.size());
    std::iota(all.begin(), all.end(), 0);
    procedure_ = procedure_of(subject.construct, all);
  }

  Walk walk() {
    for (const auto& step : procedure_.steps) {
      for (const int hold : step.place) place(hold);
      for (const int screw : step.insert) in_.insert(static_cast<std::size_t>(screw));
      const std::set<std::size_t> tight_before = tight_;
      for (const int screw : step.tighten) tighten(static_cast<std::size_t>(screw), tight_before);
      for (const auto& part : step.remove) remove(part);
    }
    walk_.mixed = is_mixed(false) || is_mixed(true);
    return walk_;
  }

 private:
  const SeatedScrew& seated(std::size_t i) const { return subject_.screws[i]; }
  bool locks(std::size_t i) const { return seated(i).screw->kind == ScrewKind::locking; }

  std::vector<std::string> among(const std::set<std::size_t>& screws,
                                 const std::function<bool(std::size_t)>& is) const {
    std::vector<std::string> names;
    for (const std::size_t i : screws)
      if (is(i)) names.push_back(seated(i).name);
    return names;
  }
  std::vector<std::string> locked(bool distal) const {
    return among(in_, [&](std::size_t i) { return locks(i) && seated(i).is_distal == distal; });
  }

  void place(int index) {
    const TemporaryHold& hold = subject_.construct.temporary[static_cast<std::size_t>(index)];
    if (hold.kind != HoldKind::fracture_clamp) return;
    walk_.presses = true;
    pull_together(hold.label + " is closed");
  }

  // Fragments that are both locked to the plate do not come together any more.
  void pull_together(const std::string& event) {
    auto early = locked(false);
    const auto distal = locked(true);
    if (early.empty() || distal.empty()) return;
    early.insert(early.end(), distal.begin(), distal.end());
    walk_.blocks.push_back({early, event});
  }

  void tighten(std::size_t i, const std::set<std::size_t>& tight_before) {
    const SeatedScrew& screw = seated(i);
    const std::string event = screw.name + " is tightened";
    tight_.insert(i);
    if (screw.screw->kind == ScrewKind::lag) {
      walk_.presses = true;
      pull_together(event);
      return;
    }
    auto early = locked(screw.is_distal);
    if (!early.empty()) walk_.lifts.push_back({early, event});
    if (screw.screw->kind != ScrewKind::compression) return;
    walk_.presses = true;
    for (auto& name : among(tight_before, [&](std::size_t k) {
           return seated(k).screw->kind == ScrewKind::cortical && seated(k).is_distal == screw.is_distal;
         }))
      early.push_back(name);
    if (!early.empty()) walk_.blocks.push_back({early, event});
  }

  void remove(const Part& part) {
    if (part.kind != Part::Kind::screw) return;
    in_.erase(static_cast<std::size_t>(part.index));
    tight_.erase(static_cast<std::size_t>(part.index));
  }

  bool is_mixed(bool distal) const {
    bool ball = false, thread = false;
    for (const auto& screw : subject_.screws) {
      if (screw.is_distal != distal || !screw.is_plate_screw()) continue;
      (screw.screw->kind == ScrewKind::locking ? thread : ball) = true;
    }
    return ball && thread;
  }

  const RuleSubject& subject_;
  Procedure procedure_;
  std::set<std::size_t> in_, tight_;
  Walk walk_;
};

// Names the first mishap; the advice moves it behind.
void judge(RuleFinding& finding, const std::vector<TooEarly>& mishaps, bool has_steps, std::string_view why) {
  if (mishaps.empty()) {
    finding.figure = "in order";
    return;
  }
  const auto& [early, before] = mishaps.front();
  finding.figure = fmt::format("{} {} in before {}{}", listed(early), early.size() == 1 ? "is" : "are", before,
                               has_steps ? "" : ", as the screws are listed: there are no steps");
  break_rule(finding, fmt::format("Insert {} after {}: {}.", listed(early), before, why));
  for (std::size_t i = 1; i < mishaps.size(); ++i)
    break_rule(finding, fmt::format("Likewise {} after {}.", listed(mishaps[i].early), mishaps[i].before));
}

// What neither presses nor mixes needs no walk.
Walk walk_through(const RuleSubject& subject) {
  const bool locks_only = std::all_of(subject.screws.begin(), subject.screws.end(),
                                      [](const SeatedScrew& s) { return s.screw->kind == ScrewKind::locking; });
  return locks_only && subject.pressing().empty() ? Walk{} : StepWalker(subject).walk();
}

RuleFinding press_first(const RuleSubject& subject) {
  const Walk walk = walk_through(subject);
  RuleFinding finding;
  finding.bound = "before the step that presses, the sliding fragment is not held and the two are not both locked";
  finding.source =
      "common practice, no source; a tight neutral screw blocks the slide: Csiszer et al. 2012, Vet. Surg. 41:300 "
      "(from the abstract)";
  if (!walk.presses) return not_applicable(finding, "nothing presses the fracture");
  judge(finding, walk.blocks, !subject.construct.steps.empty(),
        "held already, the fragments do not come together");
  return finding;
}

RuleFinding ball_heads_first(const RuleSubject& subject) {
  const Walk walk = walk_through(subject);
  RuleFinding finding;
  finding.bound = "in each fragment no screw locks before those that press the plate onto the bone";
  finding.source = "common practice, no source";
  if (!walk.mixed) return not_applicable(finding, "no fragment has screws of both kinds");
  judge(finding, walk.lifts, !subject.construct.steps.empty(),
        "once locked, the plate cannot be pulled onto the bone there");
  return finding;
}

}  // namespace

std::vector<Rule> order_rules() {
  return {{"order of pressing", press_first}, {"order of ball and locking heads", ball_heads_first}};
}

}  // namespace gapstrain::models
