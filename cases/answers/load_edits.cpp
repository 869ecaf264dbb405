#include "cases/answers/load_edits.h"

#include "cases/toml/quantity_text.h"

#include <fmt/format.h>

#include <array>
#include <set>
#include <utility>
#include <vector>

namespace gapstrain::cases {

namespace {

constexpr std::array<std::pair<const char*, Dimension>, 6> parts{{{"axial", Dimension::force},
                                                                  {"transverse_y", Dimension::force},
                                                                  {"transverse_z", Dimension::force},
                                                                  {"bending_y", Dimension::moment},
                                                                  {"bending_z", Dimension::moment},
                                                                  {"torsion", Dimension::moment}}};

// A case without loads has three of a bench (bench_loads), written out here so that they can be changed.
Json bench_tables() {
  return Json::array({{{"name", "axial 100 N"}, {"axial", "100 N"}},
                      {{"name", "bending 1 N m"}, {"bending_y", "1 N m"}},
                      {{"name", "torsion 1 N m"}, {"supports", "cantilever"}, {"torsion", "1 N m"}}});
}

Json load_tables(const Json& state) { return state.contains("load") ? state["load"] : bench_tables(); }

std::vector<std::size_t> positions(const Json& edit, std::size_t count) {
  std::vector<std::size_t> found;
  if (edit.contains("loads") && edit["loads"].is_array())
    for (const auto& position : edit["loads"])
      if (position.is_number_unsigned() && position.get<std::size_t>() < count)
        found.push_back(position.get<std::size_t>());
  if (found.empty() || found.size() != edit["loads"].size())
    throw RequestError(fmt::format("\"loads\" lists positions of the {} loads, counted from 0", count));
  return found;
}

double factor_of(const Json& load) { return load.value("factor", 1.0); }

// What holds the bone, and where: all that is no part of what acts, nor said of the load as a whole.
Json supports_of(Json load) {
  for (const auto& [key, dimension] : parts) load.erase(key);
  for (const char* key : {"name", "factor", "force", "cycles_per_day", "spread"}) load.erase(key);
  return load;
}

std::string name_of_load(const Json& loads, std::size_t position) {
  return loads[position].value("name", fmt::format("load {}", position + 1));
}

Json combined(const Json& loads, const std::vector<std::size_t>& chosen, const std::string& name) {
  const Json& first = loads[chosen.front()];
  Json sum = supports_of(first);
  sum["name"] = name;
  for (const std::size_t position : chosen) {
    const Json& load = loads[position];
    if (!are_same(supports_of(load), supports_of(first)))
      throw RequestError(fmt::format("\"{}\" and \"{}\" are held in different ways, so they cannot act at once",
                                     name_of_load(loads, chosen.front()), name_of_load(loads, position)));
    if (load.contains("four_point"))
      throw RequestError("four-point bending takes the place of other loads; it cannot act together with them");
    if (load.contains("force"))
      throw RequestError(
          fmt::format("\"{}\" has forces on the bone's surface; combine such loads in the case file",
                      name_of_load(loads, position)));
  }
  for (const auto& [key, dimension] : parts) {
    double total = 0.0;
    for (const std::size_t position : chosen)
      if (loads[position].contains(key))
        total += factor_of(loads[position]) * parse_quantity(loads[position][key].get<std::string>(), dimension);
    if (total != 0.0) sum[key] = fmt::format("{} {}", total, dimension == Dimension::force ? "N" : "N mm");
  }
  return sum;
}

}  // namespace

bool edit_loads(const Json& entered, Json& state, const std::string& kind, const Json& edit) {
  static const std::set<std::string> known{"scale_load", "keep_loads", "all_loads", "combine_loads"};
  if (!known.contains(kind)) return false;
  if (kind == "all_loads") {
    state.erase("load");
    if (entered.contains("load")) state["load"] = entered["load"];
    return true;
  }
  Json loads = load_tables(state);
  if (kind == "scale_load") {
    if (!edit.contains("load") || !edit["load"].is_number_unsigned() ||
        edit["load"].get<std::size_t>() >= loads.size())
      throw RequestError(
          fmt::format("\"load\" is the position of one of the {} loads, counted from 0", loads.size()));
    if (!edit.contains("factor") || !edit["factor"].is_number())
      throw RequestError("\"factor\" of an edit is a number");
    Json& load = loads[edit["load"].get<std::size_t>()];
    load["factor"] = edit["factor"];
    if (edit["factor"] == 1.0) load.erase("factor");
  } else if (kind == "keep_loads") {
    Json kept = Json::array();
    for (const std::size_t position : positions(edit, loads.size())) kept.push_back(loads[position]);
    loads = kept;
  } else {
    const auto chosen = positions(edit, loads.size());
    loads.push_back(combined(loads, chosen, edit.value("name", "together")));
  }
  state["load"] = loads;
  return true;
}

}  // namespace gapstrain::cases
