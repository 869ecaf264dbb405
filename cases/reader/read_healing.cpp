#include "cases/reader/read_parts.h"

namespace gapstrain::cases {

std::optional<models::Healing> read_healing(const Section& section) {
  if (!section.present()) return std::nullopt;
  models::Healing healing;
  healing.weeks_from = section.get<double>("weeks_from");
  healing.weeks_to = section.get<double>("weeks_to");
  const auto tissue = [&](std::string_view key) {
    return models::find_tissue(section.text(key).value_or("")).value_or(models::Tissue{});
  };
  healing.at_first = tissue("tissue_at_first");
  healing.at_union = tissue("tissue_at_union");
  healing.activity_factor = section.get<double>("activity_factor");
  for (const auto& time : section.sections("protection"))
    healing.protection.push_back(
        {time.get<double>("until_week"), time.find<double>("share").value_or(1.0), time.texts("without")});
  return healing;
}

models::Stock read_stock(const Section& section) {
  return {section.get<models::Length>("screw_step"), section.get<models::Length>("screw_allowance")};
}

}  // namespace gapstrain::cases
