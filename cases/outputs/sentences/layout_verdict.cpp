#include "cases/outputs/sentences/layout_verdict.h"

#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/sentences/worst_things.h"
#include "cases/text/columns.h"
#include "cases/text/digits.h"
#include "models/assessment/assess.h"
#include "models/margins/part_name.h"
#include "models/words/rule_words.h"
#include "models/words/state_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace gapstrain::cases {

namespace {

std::string standing_of(const models::ResultState& state) {
  std::vector<std::string> reasons;
  for (const auto& doubt : state.not_trusted) reasons.push_back(models::doubt_sentence(doubt));
  for (const auto& failure : state.fails) {
    const auto factor = failure.factor();
    reasons.push_back(models::failed_part(failure) + (factor ? " " + two_digits(*factor) : ""));
  }
  const std::string word = standing_word(state.standing());
  return reasons.empty() ? word : fmt::format("{}: {}", word, fmt::join(reasons, "; "));
}

std::string least_margin_text(const std::vector<models::Margin>& margins) {
  const models::Margin* least = models::least_margin(margins);
  if (least == nullptr) return "no margin is known";
  return fmt::format("least margin {}, {}, under \"{}\"", two_digits(least->factor), models::part_name(*least),
                     least->load);
}

std::string rules_text(const std::vector<models::RuleFinding>& review) {
  std::vector<std::string> broken;
  for (const auto& rule : review)
    if (rule.verdict == models::Verdict::broken)
      broken.push_back(fmt::format("{} ({})", rule.rule, models::figure_text(rule)));
  return broken.empty() ? "Breaks no rule of the trade."
                        : fmt::format("Breaks {} rule{} of the trade: {}.", broken.size(),
                                      broken.size() == 1 ? "" : "s", fmt::join(broken, "; "));
}

}  // namespace

std::string layout_verdict(const std::string& rank, const models::Construct& construct,
                           const models::Findings& findings) {
  models::Assessment assessment;
  assessment.margins = models::collect_margins(construct, findings).margins;
  assessment.review = models::review(construct);
  const auto& hottest = hottest_load(findings);
  const auto& peak = hottest.plate.peak;
  return beside(rank, fmt::format("{}; {}; plate {:.4g} MPa under \"{}\"{}. {}",
                                  standing_of(models::state_of(construct, findings, assessment)),
                                  least_margin_text(assessment.margins), peak.von_mises.value(), hottest.load,
                                  peak.hole ? fmt::format(" at hole {}", *peak.hole) : " away from the holes",
                                  rules_text(assessment.review)));
}

}  // namespace gapstrain::cases
