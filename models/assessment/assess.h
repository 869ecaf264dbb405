// All that a surgeon asks of one construct: analysis, margins, rules, plan, and the race between bone and plate.
#pragma once

#include "models/assessment/result_state.h"
#include "models/margins/margins.h"
#include "models/measures/analyse.h"
#include "models/plan/plan.h"
#include "models/race/race.h"
#include "models/rules/rules.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

struct Assessment {
  std::vector<Margin> margins;                // worst first
  std::vector<std::string> margins_left_out;  // why some have none
  std::vector<RuleFinding> review;            // broken ones first
  Plan plan;
  std::optional<StressHistory> history;  // both or neither
  std::optional<Race> race;
  std::optional<std::string> no_race;  // why there is none, and what to enter
  ResultState state;
};

struct AssessedConstruct {
  Analysis analysis;
  Assessment assessment;
};

// All but the race: the construct as it is on the first day. `no_race` says so.
// @pre check(construct) reports no error.
// @throw ModelError, mesh::MeshError
AssessedConstruct assess_first_day(const Construct& construct, const Progress& progress = {});

// Likewise, with the race.
AssessedConstruct assess(const Construct& construct, const Progress& progress = {});

}  // namespace gapstrain::models
