// All that a surgeon asks of one construct: analysis, margins, rules, plan, and the race between bone and plate.
#pragma once

#include "models/assessment/result_state.h"
#include "models/margins/margins.h"
#include "models/measures/analyse.h"
#include "models/plan/plan.h"
#include "models/race/race.h"
#include "models/rules/rules.h"

#include <memory>
#include <optional>
#include <vector>

namespace gapstrain::models {

struct Assessment {
  std::vector<Margin> margins;                  // worst first
  std::vector<LeftOutMargin> margins_left_out;  // why some have none
  std::vector<RuleFinding> review;              // broken ones first
  Plan plan;
  std::optional<StressHistory> history;  // both or neither
  std::optional<Race> race;
  std::optional<NoRace> no_race;  // why there is none
  ResultState state;
};

struct AssessedConstruct {
  Analysis analysis;
  Assessment assessment;
};

// The construct on bodies made ready for `screws` and factored, and its first day at both bounds of screws in
// bone. `with_race`: else it is as on the first day alone, and `no_race` says so.
// @pre check(construct) reports no error; the bodies are the construct's
// @throw ModelError
AssessedConstruct assess(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                         const std::vector<Screw>& screws, bool with_race, const Progress& progress = {});

// The same of an analysis that is there, on the bodies that it was made on.
AssessedConstruct assess(Analysis analysis, const std::shared_ptr<const PreparedBodies>& prepared,
                         const Construct& construct, bool with_race, const Progress& progress = {});

// The same without a race and without what other links of its screws would bring: as far as the analysis goes.
AssessedConstruct assess_as_analysed(Analysis analysis, const Construct& construct);

// What trust and state make of buckling factors that were found after the analysis. @pre all loads have theirs
void add_buckling(AssessedConstruct& assessed, const Construct& construct);

// Tries both bounds of screws in bone, and the weeks of the construct's course of it. Nothing is tried of a
// construct that is not to be trusted.
void try_other_interfaces(AssessedConstruct& assessed, const std::shared_ptr<const PreparedBodies>& prepared,
                          const Construct& construct);

// What is known of it on the first day, without all that a verdict does not rest on. A construct that has no
// answer is not to be trusted.
FirstDay first_day_of(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                      const std::vector<Screw>& screws, Extent extent = Extent::verdict);
Standing standing_of(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                     const std::vector<Screw>& screws);

}  // namespace gapstrain::models
