#include "cases/outputs/sentences/assessment_lines.h"

#include "cases/outputs/sentences/margins_text.h"
#include "cases/outputs/sentences/review_text.h"
#include "cases/text/digits.h"
#include "models/assessment/comparison.h"
#include "models/words/interface_words.h"
#include "models/words/margin_words.h"
#include "models/words/race_words.h"
#include "models/words/state_words.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::cases {

namespace {

// The least margin where screws sit softly in bone.
std::string at_soft_bound(const models::ResultState& state) {
  if (!state.interface || !state.interface->soft.day.least) return "";
  return fmt::format("; {} with screws soft in bone", three_digits(state.interface->soft.day.least->factor));
}

std::string as_screws_soften(const models::Failure& failure) {
  const bool is_of_course = failure.when.kind == models::FailureTime::Kind::as_screws_soften;
  return is_of_course ? " " + models::failure_time(failure.when) : std::string{};
}

// What the figures rest on beyond small turns and screws as they are on the first day.
void add_ways(const models::Construct& construct, const models::ResultState& state,
              std::vector<std::string>& sentences) {
  if (!state.softening.empty())
    sentences.push_back(fmt::format("Screws soften in bone, {}.", models::softening_in_short(state.softening)));
  else if (!construct.interface_course.empty())
    sentences.emplace_back("Screws soften in bone as stated by the case; figures are of the first day.");
  if (!state.turned.empty())
    sentences.push_back(fmt::format("Large turns: {}.", models::turned_sentence(state.turned)));
}

std::string verdict(const models::Construct& construct, const models::Assessment& assessment,
                    const RestStands& rest) {
  const auto standing = assessment.state.standing();
  if (standing == models::Standing::not_trusted)
    return "Verdict: none. The calculation failed its own checks; use none of the figures below.";
  const models::Margin* least = models::least_margin(assessment.margins);
  if (least == nullptr) return fmt::format("Verdict: none. No margin is known; {} why.", rest.margins_say);
  const std::string part = models::part_name(*least);
  const std::string what =
      models::is_of_all_loads(least->kind) ? part : fmt::format("{}, under \"{}\"", part, least->load);
  if (standing == models::Standing::fails)
    return least->factor < 1.0
               ? fmt::format("Verdict: FAILS. The least margin is {}: {}; at {:.0f} % of that load it would hold.",
                             three_digits(least->factor), what, std::floor(100.0 * least->factor))
               : fmt::format("Verdict: FAILS{}. {}", as_screws_soften(assessment.state.fails.front()),
                             models::failure_sentence(construct, assessment.state.fails.front()));
  return fmt::format("Verdict: holds. The least margin is {}: {}{}{}.", three_digits(least->factor), what,
                     at_soft_bound(assessment.state),
                     least->factor < 1.0 + models::model_error_of_stress
                         ? fmt::format("; that is within the model's own error of {:.0f} %",
                                       100.0 * models::model_error_of_stress)
                         : "");
}

// Of the race, else of the least margin.
std::string what_it_hangs_on(const models::Construct& construct, const models::Assessment& assessment,
                             const RestStands& rest) {
  if (assessment.race)
    if (const auto weights = models::weight_sentence(assessment.race->hangs_on)) return *weights;
  const models::Margin* least = models::least_margin(assessment.margins);
  if (least == nullptr) return {};
  std::string rests_on = models::margin_assumptions(construct, *least);
  if (rests_on.empty()) return {};
  constexpr std::size_t most = 50;  // characters: the rest stands with the margins
  if (rests_on.size() > most) {
    rests_on.resize(rests_on.rfind(' ', most));
    const auto opened = rests_on.rfind(" (");  // no bracket is left open
    if (opened != std::string::npos && rests_on.find(')', opened) == std::string::npos) rests_on.resize(opened);
    rests_on += fmt::format(" ... (see {})", rest.margins);
  }
  return fmt::format("The least margin rests on: {}.", rests_on);
}

}  // namespace

std::vector<std::string> assessment_sentences(const models::Construct& construct,
                                              const models::Assessment& assessment, const RestStands& rest) {
  std::vector<std::string> sentences{verdict(construct, assessment, rest)};
  add_ways(construct, assessment.state, sentences);
  if (assessment.race) sentences.push_back("Healing: " + models::race_in_short(*assessment.race));
  if (assessment.no_race) sentences.push_back("Healing: " + models::no_race_sentence(*assessment.no_race));
  if (const auto hangs_on = what_it_hangs_on(construct, assessment, rest); !hangs_on.empty())
    sentences.push_back(hangs_on);
  if (!assessment.margins.empty()) sentences.push_back(margins_sentence(assessment.margins, rest));
  sentences.push_back("Rules: " + review_sentence(assessment.review));
  return sentences;
}

}  // namespace gapstrain::cases
