#include "cases/outputs/json/state_json.h"

#include "cases/outputs/sentences/state_lines.h"
#include "models/margins/part_name.h"
#include "models/words/interface_words.h"
#include "models/words/limit_words.h"
#include "models/words/state_words.h"

namespace gapstrain::cases {

namespace {

const char* limit_key(models::LimitKind kind) {
  switch (kind) {
    case models::LimitKind::pull_out:
      return "pull_out";
    case models::LimitKind::core_yield:
      return "core_yield";
    case models::LimitKind::over_yield_by_steps:
      return "over_yield_by_steps";
    case models::LimitKind::over_yield_by_load:
      return "over_yield_by_load";
    case models::LimitKind::bent_by_steps:
      return "bent_by_steps";
    case models::LimitKind::bent_by_load:
      return "bent_by_load";
    case models::LimitKind::preload_lost:
      return "preload_lost";
    case models::LimitKind::gap_gapes:
      return "gap_gapes";
    case models::LimitKind::plate_slips:
      return "plate_slips";
    case models::LimitKind::slot_used_up:
      return "slot_used_up";
    case models::LimitKind::hold_left_in:
      break;
  }
  return "hold_left_in";
}

const char* time_key(models::FailureTime::Kind kind) {
  using Kind = models::FailureTime::Kind;
  switch (kind) {
    case Kind::at_first_load:
      return "at_first_load";
    case Kind::in_race:
      return "in_race";
    case Kind::before_union:
      return "before_union";
    case Kind::before_union_unhealed:
      return "before_union_unhealed";
    case Kind::as_screws_soften:
      return "as_screws_soften";
    case Kind::before_cycles_asked:
      break;
  }
  return "before_cycles_asked";
}

Json failure_json(const models::Construct& construct, const models::Failure& failure) {
  Json json{{"part", models::failed_part(failure)}, {"load", failure.load()}};
  put(json, "factor", failure.factor());
  json["when"] = models::failure_time(failure.when);
  json["sentence"] = models::failure_sentence(construct, failure);
  if (const auto* margin = failure.margin(); margin != nullptr && !margin->label.empty())
    json["screw"] = margin->label;
  if (const auto* race = std::get_if<models::LostRace>(&failure.what))
    json["breaks_before_union"] = race->breaks_before_union;
  json["time"] = time_key(failure.when.kind);
  put(json, "from_week", failure.when.from);
  put(json, "to_week", failure.when.to);
  return json;
}

const char* bounds_key(models::BoundsVerdict verdict) {
  switch (verdict) {
    case models::BoundsVerdict::holds_at_both:
      return "holds_at_both";
    case models::BoundsVerdict::hangs_on_it:
      return "hangs_on_it";
    case models::BoundsVerdict::fails_at_both:
      return "fails_at_both";
    case models::BoundsVerdict::unknown:
      break;
  }
  return "unknown";
}

Json bound_json(const models::InterfaceBound& bound) {
  Json json{{"stiffness", bound.stiffness}, {"standing", standing_word(bound.day.standing)}};
  if (const auto& least = bound.day.least) {
    json["least_margin"] = least->factor;
    json["part"] = models::part_name(*least);
    json["load"] = least->load;
  }
  put(json, "gap_strain", bound.day.gap_strain);
  return json;
}

Json bounds_json(const models::InterfaceBounds& bounds) {
  Json json{{"taken", bounds.taken},
            {"bonded", bound_json(bounds.bonded)},
            {"soft", bound_json(bounds.soft)},
            {"verdict", bounds_key(bounds.verdict())}};
  put(json, "least_margin", bounds.least_margin());
  json["sentence"] = models::bounds_sentence(bounds);
  return json;
}

}  // namespace

Json state_json(const models::Construct& construct, const models::ResultState& state) {
  Json json{{"standing", standing_word(state.standing())},
            {"not_trusted", Json::array()},
            {"fails", Json::array()},
            {"limits", models::limit_sentences(state.limits)},
            {"estimated", keys_of(state.estimated)}};
  for (const auto& doubt : state.not_trusted) json["not_trusted"].push_back(models::doubt_sentence(doubt));
  for (const auto& failure : state.fails) json["fails"].push_back(failure_json(construct, failure));
  if (state.interface) json["screws_in_bone"] = bounds_json(*state.interface);
  json["second_order"] = Json::array();
  for (const auto& load : state.second_order) json["second_order"].push_back(load.load);
  json["large_turns"] = Json::array();
  for (const auto& load : state.turned) json["large_turns"].push_back(load.load);
  for (const auto& [week, bound] : state.softening) {
    Json stage = bound_json(bound);
    stage["week"] = week;
    json["screws_soften"].push_back(std::move(stage));
  }
  return json;
}

Json passed_limits_json(const std::vector<models::PassedLimit>& limits) {
  Json json = Json::array();
  for (const auto& limit : limits) {
    Json entry{{"kind", limit_key(limit.kind)}};
    if (!limit.label.empty()) entry["label"] = limit.label;
    put(entry, "load", limit.load);
    if (limit.kind != models::LimitKind::hold_left_in) {
      entry["value"] = limit.value;
      entry["limit"] = limit.limit;
      entry["unit"] = models::unit_text(limit.unit);
    }
    if (limit.kind == models::LimitKind::gap_gapes) entry["touching"] = limit.touching;
    if (limit.kind == models::LimitKind::plate_slips)
      entry["fragment"] = limit.fragment > 0 ? "distal" : "proximal";
    if (limit.kind == models::LimitKind::slot_used_up) entry["hole"] = limit.hole;
    json.push_back(entry);
  }
  return json;
}

}  // namespace gapstrain::cases
