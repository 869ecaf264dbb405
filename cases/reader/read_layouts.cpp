#include "cases/figures/figure_words.h"
#include "cases/figures/limits_and_charts.h"
#include "cases/reader/read_parts.h"
#include "cases/reader/read_wish.h"
#include "cases/text/words.h"
#include "models/parts/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

// The kinds that the case's own plate screws have.
std::vector<models::ScrewKind> own_kinds(const std::vector<models::Screw>& screws) {
  std::vector<models::ScrewKind> kinds;
  for (const auto& screw : screws)
    if (screw.kind != models::ScrewKind::lag && std::find(kinds.begin(), kinds.end(), screw.kind) == kinds.end())
      kinds.push_back(screw.kind);
  return kinds;
}

std::vector<models::ScrewKind> read_kinds(const Section& layouts) {
  std::vector<models::ScrewKind> kinds;
  const auto texts = layouts.texts("kinds");
  for (std::size_t k = 0; k < texts.size(); ++k)
    if (const auto kind = models::find_screw_kind(texts[k]))
      kinds.push_back(*kind);
    else
      layouts.complain(
          "kinds", k,
          fmt::format("found \"{}\"{}; allowed: {}", texts[k], did_you_mean(texts[k], models::screw_kind_names()),
                      join_or(models::screw_kind_names())));
  return kinds;
}

std::vector<models::FigureWish> read_wishes(const Section& layouts, std::string_view key) {
  std::vector<models::FigureWish> wishes;
  const auto texts = layouts.texts(key);
  for (std::size_t k = 0; k < texts.size(); ++k)
    if (auto wish = read_wish(layouts, key, k, texts[k])) wishes.push_back(std::move(*wish));
  return wishes;
}

}  // namespace

models::LayoutRules usual_layouts(const std::vector<models::Screw>& screws) {
  models::LayoutRules rules;
  rules.kinds = own_kinds(screws);
  rules.rank_by = {{"margins_failing", false}, {"rules_broken", false}, {"margin", true}, {"screws", false}};
  rules.front = {models::FigureWish{"peak_stress", false}, models::FigureWish{"gap_strain", false}};
  return rules;
}

std::optional<models::LayoutRules> read_layouts(const Section& layouts, const std::vector<models::Screw>& screws) {
  if (!layouts.present()) return std::nullopt;
  models::LayoutRules rules = usual_layouts(screws);
  rules.least_per_fragment = layouts.count("least_per_fragment").value_or(rules.least_per_fragment);
  rules.most_per_fragment = layouts.count("most_per_fragment");
  rules.most_in_all = layouts.count("most_in_all");
  if (layouts.has("kinds")) rules.kinds = read_kinds(layouts);
  rules.barred = layouts.counts("barred");
  rules.filled = layouts.counts("filled");
  if (layouts.has("rank_by")) rules.rank_by = read_wishes(layouts, "rank_by");
  if (layouts.has("front")) {
    const auto wishes = read_wishes(layouts, "front");
    if (wishes.size() == 2)
      rules.front = {wishes[0], wishes[1]};
    else if (layouts.texts("front").size() != 2)
      layouts.complain("front", "two findings are weighed against each other; name just two");
  }
  for (const auto& limit : read_limits(layouts, known_findings()))
    rules.limits.push_back({limit.finding, limit.least, limit.most});
  return rules;
}

}  // namespace gapstrain::cases
