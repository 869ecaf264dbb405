#include "cases/answers/case_edits.h"

#include "cases/answers/load_edits.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace gapstrain::cases {

namespace {

const Json& wanted(const Json& edit, const char* key) {
  if (!edit.contains(key)) throw RequestError(fmt::format("the edit lacks \"{}\"", key));
  return edit[key];
}

int number_in(const Json& edit, const char* key) {
  const Json& value = wanted(edit, key);
  if (!value.is_number_integer()) throw RequestError(fmt::format("\"{}\" of an edit is a whole number", key));
  return value.get<int>();
}

std::string text_in(const Json& edit, const char* key) {
  const Json& value = wanted(edit, key);
  if (!value.is_string()) throw RequestError(fmt::format("\"{}\" of an edit is a text", key));
  return value.get<std::string>();
}

std::string kind_of(const Json& screw, const Json& state) {
  if (screw.contains("kind")) return screw["kind"].get<std::string>();
  if (state.contains("screws") && state["screws"].contains("kind"))
    return state["screws"]["kind"].get<std::string>();
  return "locking";
}

bool is_in(const Json& screw, int hole) { return screw.contains("hole") && screw["hole"] == hole; }

Json& screw_called(Json& screws, const std::string& label) {
  const auto found =
      std::find_if(screws.begin(), screws.end(), [&](const Json& s) { return s["label"] == label; });
  if (found == screws.end()) throw RequestError(fmt::format("there is no screw \"{}\"", label));
  return *found;
}

void require_free(const Json& screws, int hole) {
  for (const auto& screw : screws)
    if (is_in(screw, hole))
      throw RequestError(fmt::format("hole {} has the screw {}; take it out or move it first", hole,
                                     screw["label"].get<std::string>()));
}

// Of all labels in the steps under these keys.
void each_step_list(Json& state,
                    const std::function<void(Json& step, const char* key, std::vector<std::string>&)>& f) {
  if (!state.contains("step")) return;
  for (auto& step : state["step"])
    for (const char* key : {"place", "insert", "tighten", "screw", "remove"}) {
      if (!step.contains(key)) continue;
      std::vector<std::string> labels;
      if (step[key].is_string())
        labels.push_back(step[key].get<std::string>());
      else
        for (const auto& label : step[key]) labels.push_back(label.get<std::string>());
      f(step, key, labels);
    }
}

// Takes a label out of the steps' lists of these keys (empty: all), and steps that then do nothing.
void forget(Json& state, const std::string& label, const std::set<std::string>& keys) {
  each_step_list(state, [&](Json& step, const char* key, std::vector<std::string>& labels) {
    if (!keys.empty() && !keys.contains(key)) return;
    if (std::erase(labels, label) == 0) return;
    if (labels.empty())
      step.erase(key);
    else
      step[key] = labels;
  });
  if (!state.contains("step")) return;
  Json kept = Json::array();
  for (const auto& step : state["step"])
    if (!step.empty()) kept.push_back(step);
  if (kept.empty())
    state.erase("step");
  else
    state["step"] = kept;
}

std::string new_label(const Json& state, int hole) {
  std::set<std::string> taken;
  for (const auto& screw : state["screw"]) taken.insert(screw["label"].get<std::string>());
  if (state.contains("temporary"))
    for (const auto& hold : state["temporary"]) taken.insert(hold.value("label", ""));
  std::string label = fmt::format("S{}", hole);
  for (char more = 'b'; taken.contains(label) && more <= 'z'; ++more) label = fmt::format("S{}{}", hole, more);
  return label;
}

// The first of the entered case's screws that is wanted, in that hole if there is one.
const Json* model_screw(const Json& screws, int hole, const std::function<bool(const Json&)>& is_wanted) {
  const Json* first = nullptr;
  for (const auto& screw : screws) {
    if (!screw.contains("hole") || !is_wanted(screw)) continue;
    if (is_in(screw, hole)) return &screw;
    if (first == nullptr) first = &screw;
  }
  return first;
}

Json screw_like(const Json& entered, const Json& screws, const std::string& kind, int hole) {
  const Json* model = model_screw(screws, hole, [&](const Json& s) { return kind_of(s, entered) == kind; });
  if (model == nullptr && kind != "locking")
    model = model_screw(screws, hole, [&](const Json& s) { return kind_of(s, entered) != "locking"; });
  if (model == nullptr)
    throw RequestError(fmt::format("the case has no {} screw to take size and metal from", kind));
  Json screw = *model;
  if (!is_in(screw, hole)) {
    screw.erase("label");
    screw.erase("tilt_along");
    screw.erase("tilt_across");
  }
  if (kind != "compression") screw.erase("slide");
  screw["hole"] = hole;
  screw["kind"] = kind;
  return screw;
}

void put_screw(const Json& entered, Json& state, const Json& edit) {
  const int hole = number_in(edit, "hole");
  require_free(state["screw"], hole);
  const Json screws = screw_tables(entered);
  const Json* own = model_screw(screws, hole, [&](const Json& s) { return is_in(s, hole); });
  const Json* first = model_screw(screws, hole, [](const Json&) { return true; });
  const std::string kind = edit.contains("kind") ? text_in(edit, "kind")
                           : own != nullptr      ? kind_of(*own, entered)
                           : first != nullptr    ? kind_of(*first, entered)
                                                 : "locking";
  Json screw = screw_like(entered, screws, kind, hole);
  if (edit.contains("cortices"))
    screw["cortices"] = number_in(edit, "cortices");
  else if (kind == "lag")
    screw.erase("cortices");
  const bool is_own = screw.contains("label") && own != nullptr && screw["label"] == (*own)["label"];
  const auto is_taken = [&](const Json& other) { return is_own && other["label"] == screw["label"]; };
  if (!is_own || std::any_of(state["screw"].begin(), state["screw"].end(), is_taken))
    screw["label"] = new_label(state, hole);
  state["screw"].push_back(screw);
  if (state.contains("step")) state["step"].push_back({{"screw", screw["label"]}});
}

void remove_screw(Json& state, const Json& edit) {
  const std::string label = text_in(edit, "label");
  screw_called(state["screw"], label);
  Json kept = Json::array();
  for (const auto& screw : state["screw"])
    if (screw["label"] != label) kept.push_back(screw);
  state["screw"] = kept;
  forget(state, label, {});
}

void move_screw(Json& state, const Json& edit) {
  const int hole = number_in(edit, "hole");
  Json& screw = screw_called(state["screw"], text_in(edit, "label"));
  if (!screw.contains("hole"))
    throw RequestError(fmt::format("the screw {} stands beside the plate", screw["label"].get<std::string>()));
  require_free(state["screw"], hole);
  screw["hole"] = hole;
  screw.erase("tilt_along");
  screw.erase("tilt_across");
}

void change_screw(const Json& entered, Json& state, const Json& edit) {
  const std::string label = text_in(edit, "label");
  Json& screw = screw_called(state["screw"], label);
  if (!screw.contains("hole")) throw RequestError(fmt::format("the screw {} stands beside the plate", label));
  if (edit.contains("kind")) {
    const std::string kind = text_in(edit, "kind");
    Json other = screw_like(entered, screw_tables(entered), kind, screw["hole"].get<int>());
    other["label"] = label;
    if (kind != "lag" && screw.contains("cortices"))
      other["cortices"] = screw["cortices"];
    else
      other.erase("cortices");
    screw = other;
    if (kind == "locking") forget(state, label, {"tighten"});
  }
  if (edit.contains("cortices")) screw_called(state["screw"], label)["cortices"] = number_in(edit, "cortices");
}

void order_steps(Json& state, const Json& edit) {
  if (!state.contains("step")) {
    state["step"] = Json::array();
    for (const auto& screw : state["screw"]) state["step"].push_back({{"screw", screw["label"]}});
  }
  const Json steps = state["step"];
  const Json& order = wanted(edit, "order");
  std::set<std::size_t> seen;
  Json ordered = Json::array();
  for (const auto& position : order) {
    if (!position.is_number_unsigned() || position.get<std::size_t>() >= steps.size() ||
        !seen.insert(position.get<std::size_t>()).second)
      throw RequestError(
          fmt::format("the new order names each of the {} steps once, counted from 0", steps.size()));
    ordered.push_back(steps[position.get<std::size_t>()]);
  }
  if (ordered.size() != steps.size())
    throw RequestError(fmt::format("the new order names each of the {} steps once, counted from 0", steps.size()));
  state["step"] = ordered;
}

void fill_gap(Json& state, const Json& edit) {
  constexpr double poissons_ratio =
      0.3;  // of a filling of which only the modulus is told: ours, as most tissues have
  Json& fracture = state["fracture"];
  fracture.erase("tissue");
  fracture.erase("filling");
  if (edit.contains("tissue")) {
    if (const std::string tissue = text_in(edit, "tissue"); tissue != "none") fracture["tissue"] = tissue;
    return;
  }
  const Json& modulus = wanted(edit, "modulus_mpa");
  if (!modulus.is_number()) throw RequestError("\"modulus_mpa\" of an edit is a number");
  fracture["filling"] = {{"youngs_modulus", fmt::format("{} MPa", modulus.get<double>())},
                         {"poissons_ratio", poissons_ratio}};
}

}  // namespace

Json screw_tables(const Json& entered) {
  Json screws = Json::array();
  int beside_plate = 0;
  if (!entered.contains("screw")) return screws;
  for (const auto& table : entered["screw"]) {
    Json screw = table;
    if (!table.contains("holes") && !table.contains("hole")) {
      if (!table.contains("label")) screw["label"] = fmt::format("L{}", beside_plate + 1);
      ++beside_plate;
      screws.push_back(screw);
      continue;
    }
    screw.erase("holes");
    const Json holes = table.contains("holes") ? table["holes"] : Json::array({table["hole"]});
    for (const auto& hole : holes) {
      screw["hole"] = hole;
      if (!table.contains("label") || holes.size() > 1)
        screw["label"] = fmt::format("{}{}", table.value("label", "S"), hole.get<int>());
      screws.push_back(screw);
    }
  }
  return screws;
}

Json edited(const Json& entered, Json state, const Json& edit) {
  const std::string kind = text_in(edit, "do");
  if (kind == "as_entered") return entered;
  static const std::set<std::string> of_screws{"put_screw", "remove_screw", "move_screw", "change_screw",
                                               "order_steps"};
  if (of_screws.contains(kind)) state["screw"] = screw_tables(state);
  if (kind == "put_screw")
    put_screw(entered, state, edit);
  else if (kind == "remove_screw")
    remove_screw(state, edit);
  else if (kind == "move_screw")
    move_screw(state, edit);
  else if (kind == "change_screw")
    change_screw(entered, state, edit);
  else if (kind == "order_steps")
    order_steps(state, edit);
  else if (kind == "fill_gap")
    fill_gap(state, edit);
  else if (!edit_loads(entered, state, kind, edit))
    throw RequestError(fmt::format("there is no edit \"{}\"", kind));
  // What came to be as it was entered is no change.
  if (of_screws.contains(kind) && are_same(state["screw"], screw_tables(entered)))
    state["screw"] = entered["screw"];
  return state;
}

}  // namespace gapstrain::cases
