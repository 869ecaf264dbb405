// Which of several constructs for one patient to prefer, and why.
#pragma once

#include "models/assessment/comparison.h"

#include <optional>
#include <vector>

namespace gapstrain::models {

enum class PreferenceGround {
  none_is_trusted,
  none_holds,
  none_judged_holds,  // of those that are trusted
  holds_alone,
  outlasts_others,
  most_in_hand,  // beyond the model's own error
  breaks_fewer_rules,
  alike  // within the model's own error
};

// How one of the constructs stands.
struct ConstructStanding {
  std::size_t construct = 0;
  Standing standing = Standing::holds;
  std::optional<Margin> least{};          // margin; nothing when none is known
  std::optional<Failure> failure{};       // the worst
  std::optional<BoundsVerdict> bounds{};  // whether that survives both bounds of screws in bone
};

// Values; words are made of them by models/words/preference_words.h.
struct Preference {
  std::optional<std::size_t> preferred;  // nothing: none holds, none is to be trusted, or they are alike
  PreferenceGround ground = PreferenceGround::alike;
  std::optional<double> outlasts;            // share of the samples, against the one that comes nearest
  std::vector<ConstructStanding> standings;  // those that do not hold first
  std::vector<std::size_t> broken_rules;     // how many, one a construct
};

// A construct that is not to be trusted is neither preferred nor held against another. Of those that hold: the one
// whose implants outlast the others' in 95 % of the race's samples; without such a one that with the larger least
// margin, where they differ by more than the model's own error; then the one that breaks fewer rules. Where none
// holds the standings say which load each would bear.
// @pre two or more constructs
Preference find_preference(const std::vector<AssessedConstruct>& assessed, const Comparison& comparison);

}  // namespace gapstrain::models
