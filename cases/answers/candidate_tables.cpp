#include "cases/answers/candidate_tables.h"

#include "models/parts/words.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

// To the last bit: the shortest text that reads back as the same number.
std::string length(models::Length value) { return fmt::format("{} mm", value.value()); }
std::string angle(models::Angle value) { return fmt::format("{} rad", value.value()); }

Json table_without_hole(const models::Screw& screw) {
  Json table{{"kind", models::name_of(screw.kind)}};
  if (models::find_screw_size(screw.size.designation) == screw.size) {
    table["size"] = screw.size.designation;
  } else {
    table["thread_diameter"] = length(screw.size.thread_diameter);
    table["core_diameter"] = length(screw.size.core_diameter);
    table["pitch"] = length(screw.size.pitch);
  }
  if (models::find_metal(screw.material.name) == screw.material) table["material"] = screw.material.name;
  table["cortices"] = screw.cortices;
  if (screw.tilt_along.value() != 0.0) table["tilt_along"] = angle(screw.tilt_along);
  if (screw.tilt_across.value() != 0.0) table["tilt_across"] = angle(screw.tilt_across);
  if (screw.slide) table["slide"] = length(*screw.slide);
  if (screw.entry) {
    table["position"] = length(screw.entry->position);
    table["around"] = angle(screw.entry->around);
  }
  return table;
}

}  // namespace

Json candidate_tables(const std::vector<models::Screw>& candidates) {
  Json tables = Json::array();
  for (const auto& screw : candidates) {
    Json table = table_without_hole(screw);
    if (screw.hole == 0) {
      tables.push_back(table);
      continue;
    }
    Json rest = tables.empty() ? Json() : tables.back();
    if (rest.is_object() && rest.contains("holes")) {
      rest.erase("holes");
      if (rest == table) {
        tables.back()["holes"].push_back(screw.hole);
        continue;
      }
    }
    table["holes"] = Json::array({screw.hole});
    tables.push_back(table);
  }
  return tables;
}

}  // namespace gapstrain::cases
