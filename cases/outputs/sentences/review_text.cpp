#include "cases/outputs/sentences/review_text.h"

#include "cases/cautions.h"
#include "cases/text/columns.h"
#include "models/words/rule_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <iterator>

namespace gapstrain::cases {

namespace {

using models::RuleFinding;
using models::Verdict;

std::vector<RuleFinding> with(const std::vector<RuleFinding>& findings, Verdict verdict) {
  std::vector<RuleFinding> found;
  std::copy_if(findings.begin(), findings.end(), std::back_inserter(found),
               [&](const RuleFinding& finding) { return finding.verdict == verdict; });
  return found;
}

std::string broken_text(const RuleFinding& finding) {
  return beside("BROKEN",
                fmt::format("{}: {}. Bound: {}.", finding.rule, figure_text(finding), bound_text(finding))) +
         beside("", advice_text(finding)) + beside("", fmt::format("Source: {}.", finding.source));
}

std::string kept_text(const RuleFinding& finding) {
  return beside("kept", fmt::format("{}: {}. Bound: {} ({}).", finding.rule, figure_text(finding),
                                    bound_text(finding), finding.source));
}

}  // namespace

std::string review_sentence(const std::vector<models::RuleFinding>& findings) {
  const auto broken = with(findings, Verdict::broken);
  const std::size_t apply = findings.size() - with(findings, Verdict::not_applicable).size();
  if (broken.empty()) return fmt::format("All {} rules of the trade that apply are kept.", apply);
  std::vector<std::string> names;
  for (const auto& finding : broken) names.push_back(finding.rule);
  return fmt::format("{} of {} rules of the trade {} broken: {}.", broken.size(), apply,
                     broken.size() == 1 ? "is" : "are", fmt::join(names, "; "));
}

std::string review_text(const std::vector<models::RuleFinding>& findings) {
  const auto broken = with(findings, Verdict::broken), kept = with(findings, Verdict::kept);
  const auto silent = with(findings, Verdict::not_applicable);
  std::string text;
  for (const auto& finding : broken) text += broken_text(finding) + "\n";
  for (const auto& finding : kept) text += kept_text(finding);
  if (!silent.empty()) text += "\n";
  for (const auto& finding : silent)
    text += beside("-", fmt::format("{}: does not apply; {}.", finding.rule, figure_text(finding)));
  text += "\n";
  for (const auto caution : cautions)
    for (const auto& line : wrap(caution, screen_columns, 2)) text += line + "\n";
  return text;
}

}  // namespace gapstrain::cases
