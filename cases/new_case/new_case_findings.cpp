#include "cases/new_case/new_case_findings.h"

#include "cases/outputs/sentences/assessment_lines.h"
#include "cases/outputs/sentences/state_lines.h"

#include <fmt/format.h>

namespace gapstrain::cases {

std::vector<std::string> draft_findings(const models::Construct& construct, const models::Assessment& assessment) {
  auto paragraphs = state_sentences(assessment.state);
  for (const auto& sentence : assessment_sentences(construct, assessment)) paragraphs.push_back(sentence);
  return paragraphs;
}

std::vector<std::string> draft_without_findings(const std::string& reason) {
  return {fmt::format("NOT TO BE TRUSTED: its analysis has no answer: {}.", reason)};
}

}  // namespace gapstrain::cases
