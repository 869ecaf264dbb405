// The order of the steps: nothing may hold what a later step is to move.
#include "models/assembly/procedure.h"
#include "models/rules/rules_subject.h"

#include <algorithm>
#include <functional>
#include <numeric>
#include <set>

namespace gapstrain::models {

namespace {

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
    walk_.mixed = is_mixed(0) || is_mixed(1);
    return walk_;
  }

 private:
  const SeatedScrew& seated(std::size_t i) const { return subject_.screws[i]; }
  bool locks(std::size_t i) const { return seated(i).screw->kind == ScrewKind::locking; }

  RuleParts among(const std::set<std::size_t>& screws, const std::function<bool(std::size_t)>& is) const {
    RuleParts parts;
    for (const std::size_t i : screws)
      if (is(i)) parts.push_back(seated(i).part);
    return parts;
  }
  RuleParts locked(std::size_t fragment) const {
    return among(in_, [&](std::size_t i) { return locks(i) && seated(i).fragment == fragment; });
  }

  void place(int index) {
    const TemporaryHold& hold = subject_.construct.temporary[static_cast<std::size_t>(index)];
    if (hold.kind != HoldKind::fracture_clamp) return;
    walk_.presses = true;
    pull_together({ScrewId::none, hold.label, 0}, true);
  }

  // Fragments that are both locked to the plate do not come together any more.
  void pull_together(const RulePart& by, bool is_clamp) {
    auto early = locked(0);
    const auto beyond = locked(1);
    if (early.empty() || beyond.empty()) return;
    early.insert(early.end(), beyond.begin(), beyond.end());
    walk_.blocks.push_back({early, by, is_clamp});
  }

  void tighten(std::size_t i, const std::set<std::size_t>& tight_before) {
    const SeatedScrew& screw = seated(i);
    tight_.insert(i);
    if (screw.screw->kind == ScrewKind::lag) {
      walk_.presses = true;
      pull_together(screw.part, false);
      return;
    }
    auto early = locked(screw.fragment);
    if (!early.empty()) walk_.lifts.push_back({early, screw.part});
    if (screw.screw->kind != ScrewKind::compression) return;
    walk_.presses = true;
    for (auto& part : among(tight_before, [&](std::size_t k) {
           return seated(k).screw->kind == ScrewKind::cortical && seated(k).fragment == screw.fragment;
         }))
      early.push_back(part);
    if (!early.empty()) walk_.blocks.push_back({early, screw.part});
  }

  void remove(const Part& part) {
    if (part.kind != Part::Kind::screw) return;
    in_.erase(static_cast<std::size_t>(part.index));
    tight_.erase(static_cast<std::size_t>(part.index));
  }

  bool is_mixed(std::size_t fragment) const {
    bool ball = false, thread = false;
    for (const auto& screw : subject_.screws) {
      if (screw.fragment != fragment || !screw.is_plate_screw()) continue;
      (screw.screw->kind == ScrewKind::locking ? thread : ball) = true;
    }
    return ball && thread;
  }

  const RuleSubject& subject_;
  Procedure procedure_;
  std::set<std::size_t> in_, tight_;
  Walk walk_;
};

RuleFinding judge(RuleFinding finding, bool of_pressing, const std::vector<TooEarly>& mishaps, bool has_steps) {
  if (!mishaps.empty()) finding.verdict = Verdict::broken;
  finding.basis = OrderBasis{of_pressing, has_steps, mishaps};
  return finding;
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
  finding.basis = OrderBasis{true};
  finding.source =
      "common practice, no source; a tight neutral screw blocks the slide: Csiszer et al. 2012, Vet. Surg. 41:300 "
      "(from the abstract)";
  if (!walk.presses) return not_applicable(finding, Inapplicable::nothing_presses);
  return judge(finding, true, walk.blocks, !subject.construct.steps.empty());
}

RuleFinding ball_heads_first(const RuleSubject& subject) {
  const Walk walk = walk_through(subject);
  RuleFinding finding;
  finding.basis = OrderBasis{false};
  finding.source = "common practice, no source";
  if (!walk.mixed) return not_applicable(finding, Inapplicable::screws_not_mixed);
  return judge(finding, false, walk.lifts, !subject.construct.steps.empty());
}

}  // namespace

std::vector<Rule> order_rules() {
  return {{"order of pressing", press_first}, {"order of ball and locking heads", ball_heads_first}};
}

}  // namespace gapstrain::models
