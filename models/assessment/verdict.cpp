#include "models/assessment/verdict.h"

#include "models/race/race_sentences.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace gapstrain::models {

namespace {

using Kinds = std::set<MarginKind>;

Kinds kinds_of(const AssessedConstruct& one) {
  Kinds kinds;
  for (const auto& margin : one.assessment.margins)
    if (!margin.indicative) kinds.insert(margin.kind);
  return kinds;
}

// Of what is known of all: a construct whose fatigue is not known must not look the stronger for it.
Kinds common_kinds(const std::vector<AssessedConstruct>& assessed) {
  Kinds common = kinds_of(assessed.front());
  for (const auto& one : assessed) {
    const Kinds kinds = kinds_of(one);
    std::erase_if(common, [&](MarginKind kind) { return !kinds.contains(kind); });
  }
  return common;
}

std::string named(const Margin& margin) {
  return fmt::format("{:.2g} ({}, {})", margin.factor, margin.part, margin.load);
}

void add_failures(const std::vector<Construct>& constructs, const std::vector<AssessedConstruct>& assessed,
                  std::vector<std::string>& sentences) {
  for (std::size_t k = 0; k < assessed.size(); ++k) {
    const Findings& findings = assessed[k].analysis.findings;
    if (!findings.trust.passed())
      sentences.push_back(
          fmt::format("\"{}\" fails its own checks: its figures are NOT TO BE TRUSTED.", constructs[k].name));
    for (const auto& margin : worst_of_each_kind(failing(assessed[k].assessment.margins)))
      sentences.push_back(fmt::format("\"{}\" FAILS: {}", constructs[k].name, margin.sentence));
  }
}

void add_races(const std::vector<Construct>& constructs, const std::vector<AssessedConstruct>& assessed,
               const Comparison& comparison, std::vector<std::string>& sentences) {
  for (std::size_t k = 0; k < assessed.size(); ++k) {
    const Assessment& assessment = assessed[k].assessment;
    if (assessment.no_race)
      sentences.push_back(
          fmt::format("\"{}\": no race against healing: {}", constructs[k].name, *assessment.no_race));
    else if (!assessment.race->verdict.empty())
      sentences.push_back(fmt::format("\"{}\": {}{}", constructs[k].name, assessment.race->verdict.front(),
                                      assessment.race->held_up ? " " + *assessment.race->held_up : ""));
  }
  for (const auto& pair : comparison.pairs)
    for (const auto& race : pair.races)
      if (race.course == HealingCourse::governed) {
        sentences.push_back(race.sentence);
        if (const auto weights = weight_sentence(race.hangs_on)) sentences.back() += " " + *weights;
      }
}

void add_margins(const std::vector<Construct>& constructs, const std::vector<AssessedConstruct>& assessed,
                 std::vector<std::string>& sentences) {
  struct Least {
    std::size_t construct;
    const Margin* margin;
  };
  std::vector<Least> all;
  std::size_t most_kinds = 0;
  for (const auto& one : assessed) most_kinds = std::max(most_kinds, kinds_of(one).size());
  const Kinds kinds = common_kinds(assessed);
  for (std::size_t k = 0; k < assessed.size(); ++k) {
    if (const Margin* margin = least_margin(assessed[k].assessment.margins, kinds)) all.push_back({k, margin});
    if (kinds_of(assessed[k]).size() < most_kinds)
      sentences.push_back(
          fmt::format("Not every margin of \"{}\" is known, so it is left out for all.", constructs[k].name));
  }
  if (all.size() < 2) return;
  std::stable_sort(all.begin(), all.end(),
                   [](const Least& a, const Least& b) { return a.margin->factor > b.margin->factor; });
  const Least &best = all.front(), &worst = all.back();
  const double ratio = best.margin->factor / worst.margin->factor;
  // Loads differ in size for all constructs alike; what differs between constructs is the model's error of each.
  const double wide = (1.0 + model_error_of_stress) / (1.0 - model_error_of_stress);
  if (ratio > wide)
    sentences.push_back(
        fmt::format("Least margins that are known of all: \"{}\" {}, \"{}\" {}: the first has {:.2g} times as "
                    "much in hand, which is "
                    "more than the model's "
                    "own error of {:.0f} % each way.",
                    constructs[best.construct].name, named(*best.margin), constructs[worst.construct].name,
                    named(*worst.margin), ratio, 100 * model_error_of_stress));
  else
    sentences.push_back(
        fmt::format("Least margins that are known of all: \"{}\" {}, \"{}\" {}: the difference is within the "
                    "model's own error of "
                    "{:.0f} % each way.",
                    constructs[best.construct].name, named(*best.margin), constructs[worst.construct].name,
                    named(*worst.margin), 100 * model_error_of_stress));
}

void add_rules(const std::vector<Construct>& constructs, const std::vector<AssessedConstruct>& assessed,
               std::vector<std::string>& sentences) {
  for (std::size_t k = 0; k < assessed.size(); ++k) {
    const auto broken = broken_rules(assessed[k].assessment.review);
    sentences.push_back(broken.empty()
                            ? fmt::format("\"{}\" keeps the rules of the trade that apply.", constructs[k].name)
                            : fmt::format("\"{}\" breaks {} of the rules of the trade: {}.", constructs[k].name,
                                          broken.size(), fmt::join(broken, ", ")));
  }
}

}  // namespace

std::vector<std::string> find_verdict(const std::vector<Construct>& constructs,
                                      const std::vector<AssessedConstruct>& assessed,
                                      const Comparison& comparison) {
  std::vector<std::string> sentences;
  add_failures(constructs, assessed, sentences);
  add_races(constructs, assessed, comparison, sentences);
  add_margins(constructs, assessed, sentences);
  add_rules(constructs, assessed, sentences);
  return sentences;
}

}  // namespace gapstrain::models
