#include "cases/outputs/json/comparison_keys.h"

#include "cases/outputs/json/assessment_keys.h"
#include "cases/outputs/json/findings_keys.h"
#include "cases/outputs/json/race_json.h"

namespace gapstrain::cases {

namespace {

const OutputKeys of_preference{
    {"verdict", "which construct to prefer, or that none is"},
    {"reasons[]", "why, a sentence each"},
    {"construct", "letter of the one preferred; left out when none is"},
    {"ground",
     "what decided: none_is_trusted, none_holds, none_judged_holds, holds_alone, outlasts_others, most_in_hand, "
     "breaks_fewer_rules or alike"},
    {"outlasts", "outlasts_others: share of the samples, against the one that comes nearest"},
    {"broken_rules[]", "rules of the trade that are broken, one number a construct"},
};

const OutputKeys of_least_margins{
    {"incomplete[]", "letters of constructs without a kind of margin that others have: left out for all"},
    {"most.construct",
     "letter of the one whose least margin is largest; most and least are left out unless two "
     "constructs have one"},
    {"most.part", "what has that margin"},
    {"most.load", "under which"},
    {"most.factor", "strength over demand"},
    {"least.construct", "letter of the one whose least margin is smallest"},
    {"least.part", "what has that margin"},
    {"least.load", "under which"},
    {"least.factor", "strength over demand"},
    {"ratio", "of both factors"},
    {"told_apart", "by more than the model's own error of both"},
};

const OutputKeys of_compared_construct{
    {"letter", "A, B and so on, as the files were given"},
    {"name", "of the case"},
    {"file", "as it was named on the command line"},
    {"trustworthy", "all trust checks passed and all figures are finite numbers"},
};

const OutputKeys of_compared_figure{
    {"figure", "what is compared, of several loads the worst; what is told apart first, the widest first"},
    {"name", "the catalogue's name of it, as rows.csv, limits and rankings have it"},
    {"meaning", "likewise"},
    {"unit", "of its values; empty: a ratio or a count"},
    {"values[]", "one a construct; null: it has none"},
    {"ratio", "largest over smallest magnitude; left out unless two trusted constructs have it, and next to 0"},
    {"model_error", "share of a value that the model itself may be off by"},
    {"told_apart", "by more than the model's own error of both"},
    {"best", "letter of the one that does best; left out where neither way is better or none is told apart"},
};

}  // namespace

OutputKeys comparison_keys() {
  OutputKeys keys = program_keys();
  append(keys, "preference.", of_preference);
  keys.push_back({"verdict[]", "failures, races, least margins and rules of all, a sentence each"});
  append(keys, "least_margins.", of_least_margins);
  append(keys, "constructs[].", of_compared_construct);
  append(keys, "constructs[].state.", state_keys());
  append(keys, "constructs[].margins[].", margin_keys());
  append(keys, "constructs[].margins_left_out[].", left_out_keys());
  append(keys, "constructs[].review[].", review_keys());
  append(keys, "constructs[].race.", race_keys());
  append(keys, "constructs[].no_race.", no_race_keys());
  append(keys, "figures[].", of_compared_figure);
  keys.push_back({"pairs[].first", "letter of one construct"});
  keys.push_back({"pairs[].second", "letter of the other"});
  append(keys, "pairs[].races[].", race_comparison_keys());
  return keys;
}

}  // namespace gapstrain::cases
