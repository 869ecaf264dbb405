#include "cases/outputs/assessment_lines.h"

#include "cases/outputs/margins_text.h"
#include "cases/outputs/review_text.h"

#include <fmt/format.h>

namespace gapstrain::cases {

std::vector<std::string> failure_sentences(const models::Assessment& assessment) {
  std::vector<std::string> sentences;
  for (const auto& margin : models::worst_of_each_kind(models::failing(assessment.margins)))
    sentences.push_back(fmt::format("{}: factor {:.2g}. {}", margin.part, margin.factor, margin.sentence));
  return sentences;
}

std::vector<std::string> assessment_sentences(const models::Assessment& assessment) {
  std::vector<std::string> sentences;
  if (assessment.race && !assessment.race->verdict.empty())
    sentences.push_back(fmt::format("Healing: {}{}", assessment.race->verdict.front(),
                                    assessment.race->held_up ? " " + *assessment.race->held_up : ""));
  if (assessment.no_race) sentences.push_back("Healing: " + *assessment.no_race);
  if (!assessment.margins.empty()) sentences.push_back(margins_sentence(assessment.margins));
  sentences.push_back("Rules: " + review_sentence(assessment.review));
  return sentences;
}

}  // namespace gapstrain::cases
