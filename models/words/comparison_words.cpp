#include "models/words/comparison_words.h"

#include "models/words/margin_words.h"
#include "models/words/race_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace gapstrain::models {

namespace {

using Compared = std::vector<ComparedConstruct>;

std::string named(const Margin& margin) {
  return fmt::format("{:.2g} ({}, {})", margin.factor, part_name(margin), margin.load);
}

void add_failures(const Compared& constructs, std::vector<std::string>& sentences) {
  for (const auto& [construct, assessed] : constructs) {
    if (!assessed.analysis.findings.trust.passed())
      sentences.push_back(
          fmt::format("\"{}\" fails its own checks: its figures are NOT TO BE TRUSTED.", construct.name));
    for (const auto& margin : worst_of_each_kind(failing(assessed.assessment.margins)))
      sentences.push_back(fmt::format("\"{}\" FAILS: {}", construct.name, margin_sentence(construct, margin)));
  }
}

void add_races(const Compared& constructs, const Comparison& comparison, std::vector<std::string>& sentences) {
  for (const auto& [construct, assessed] : constructs) {
    const Assessment& assessment = assessed.assessment;
    sentences.push_back(assessment.no_race
                            ? fmt::format("\"{}\": no race against healing: {}", construct.name,
                                          no_race_sentence(*assessment.no_race))
                            : fmt::format("\"{}\": {}", construct.name, race_in_short(*assessment.race)));
  }
  for (const auto& pair : comparison.pairs)
    for (const auto& race : pair.races)
      if (race.course == HealingCourse::governed) {
        sentences.push_back(comparison_sentence(race, constructs[pair.first].construct.name,
                                                constructs[pair.second].construct.name));
        if (const auto weights = weight_sentence(race.hangs_on)) sentences.back() += " " + *weights;
      }
}

void add_margins(const Compared& constructs, const LeastMargins& least, std::vector<std::string>& sentences) {
  for (const std::size_t k : least.incomplete)
    sentences.push_back(fmt::format("Not every margin of \"{}\" is known, so it is left out for all.",
                                    constructs[k].construct.name));
  if (!least.ends) return;
  const auto& [best, worst, ratio, told_apart] = *least.ends;
  const double error = 100.0 * model_error_of_stress;
  const std::string both = fmt::format("Least margins that are known of all: \"{}\" {}, \"{}\" {}",
                                       constructs[best.construct].construct.name, named(best.margin),
                                       constructs[worst.construct].construct.name, named(worst.margin));
  sentences.push_back(
      told_apart
          ? fmt::format("{}: the first has {:.2g} times as much in hand, which is more than the model's own "
                        "error of {:.0f} % each way.",
                        both, ratio, error)
          : fmt::format("{}: the difference is within the model's own error of {:.0f} % each way.", both, error));
}

void add_rules(const Compared& constructs, std::vector<std::string>& sentences) {
  for (const auto& [construct, assessed] : constructs) {
    const auto broken = broken_rules(assessed.assessment.review);
    sentences.push_back(broken.empty()
                            ? fmt::format("\"{}\" keeps the rules of the trade that apply.", construct.name)
                            : fmt::format("\"{}\" breaks {} of the rules of the trade: {}.", construct.name,
                                          broken.size(), fmt::join(broken, ", ")));
  }
}

}  // namespace

std::vector<std::string> comparison_verdict(const std::vector<ComparedConstruct>& constructs,
                                            const Comparison& comparison) {
  std::vector<std::string> sentences;
  add_failures(constructs, sentences);
  add_races(constructs, comparison, sentences);
  add_margins(constructs, comparison.least_margins, sentences);
  add_rules(constructs, sentences);
  return sentences;
}

}  // namespace gapstrain::models
