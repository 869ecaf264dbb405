#include "cases/new_case/new_case_findings.h"

#include "cases/outputs/sentences/assessment_lines.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/text/digits.h"
#include "models/margins/part_name.h"
#include "models/patient/rare_event.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace gapstrain::cases {

namespace {

const char* verb(models::Standing standing) { return standing == models::Standing::holds ? "holds" : "fails"; }

models::Standing turned(models::Standing standing) {
  return standing == models::Standing::holds ? models::Standing::fails : models::Standing::holds;
}

// "torsion, for which there is no measurement in cats".
std::string part_and_evidence(const models::Patient& patient, const models::PartDoubt& doubt) {
  const std::string part(models::name_of(doubt.part));
  const std::string where = patient.species == models::Species::cat
                                ? "in cats"
                                : fmt::format("of the {}", models::name_of(patient.bone));
  switch (doubt.evidence) {
    case models::LoadEvidence::none:
      return fmt::format("{}, for which there is no measurement {}", part, where);
    case models::LoadEvidence::memory:
      return fmt::format("{}, known from memory alone", part);
    case models::LoadEvidence::derived:
      return fmt::format("{}, which is derived from strains and not measured itself", part);
    default:
      break;
  }
  return fmt::format("{}, of which the published band is wide", part);
}

std::string turning_sentence(const models::Patient& patient, models::Standing taken,
                             const models::PartDoubt& doubt) {
  const models::TurningPoint& turning = doubt.turning;
  return fmt::format("{}: at {} times the value taken it {} (at {} it still {}; the band is {} to {})",
                     part_and_evidence(patient, doubt), three_digits(turning.turned.value()), verb(turned(taken)),
                     three_digits(turning.not_yet.value()), verb(taken), two_digits(turning.low),
                     two_digits(turning.high));
}

std::string side_sentence(models::Standing taken, const models::SideDoubt& doubt) {
  return fmt::format("the side that bending stretches: with the {} one ({}) it {}", doubt.side.name,
                     doubt.side.source, verb(turned(taken)));
}

// Of what is no part of the day's loads.
std::string once_sentence(const models::OnceBorne& once, const models::RareEvent& event) {
  return fmt::format(
      "Once, {} times \"{}\", a landing after a jump ({}): what gives first ({}) does from {} times on, so it {}.",
      three_digits(once.needed), once.first.load, event.source, models::part_name(once.first),
      three_digits(once.first.factor),
      once.is_borne() ? "bears that" : "BENDS FOR GOOD: keep the patient from jumping");
}

}  // namespace

std::string doubt_sentences(const models::Patient& patient, const models::LoadDoubts& doubts) {
  if (doubts.taken == models::Standing::not_trusted) return {};
  std::vector<std::string> hangs_on, bands;
  for (const auto& doubt : doubts.turning_parts())
    hangs_on.push_back(turning_sentence(patient, doubts.taken, doubt));
  for (const auto& doubt : doubts.turning_sides()) hangs_on.push_back(side_sentence(doubts.taken, doubt));
  if (doubts.turns_by_size())
    hangs_on.push_back(fmt::format(
        "how much more the muscles of a patient below 27 kg pull: with all loads {} times as large (leverage by "
        "weight to the power of 0.25, Biewener 2005, J Exp Biol 208:1665, abstract) it {}",
        three_digits(doubts.small_patient->factor), verb(turned(doubts.taken))));
  for (const auto& doubt : doubts.parts)
    bands.push_back(fmt::format("{} {} to {}", models::name_of(doubt.part), two_digits(doubt.turning.low),
                                two_digits(doubt.turning.high)));
  const bool all_known = doubts.are_all_known();
  const std::string unknown =
      all_known ? "" : " At an end of a band the calculation fails its own checks: it is not known there.";
  const std::string standing = doubts.taken == models::Standing::holds ? "HOLDS" : "FAILS";
  if (doubts.is_open())
    return fmt::format("{}: but this hangs on {}.{}", standing, fmt::join(hangs_on, "; and on "), unknown);
  const std::string tried =
      fmt::format("each part of the load, one at a time: {} times the value taken{}", fmt::join(bands, ", "),
                  doubts.small_patient && doubts.taken == models::Standing::holds
                      ? fmt::format("; and with all loads {} times as large, as muscles below 27 kg may pull",
                                    three_digits(doubts.small_patient->factor))
                      : "");
  if (!all_known)
    return fmt::format("{}: as far as is known, tried over the band of {}.{}", standing, tried, unknown);
  return fmt::format("It {} over the whole band of {}.", verb(doubts.taken), tried);
}

std::vector<std::string> draft_findings(const models::Construct& construct, const models::Assessment& assessment,
                                        const models::Patient& patient, const models::LoadDoubts& doubts) {
  auto paragraphs = state_sentences(assessment.state);
  if (const std::string doubt = doubt_sentences(patient, doubts); !doubt.empty()) {
    const bool is_first = doubts.is_open() || !doubts.are_all_known();
    paragraphs.insert(is_first ? paragraphs.begin() : paragraphs.end(), doubt);
  }
  for (const auto& sentence : assessment_sentences(construct, assessment)) paragraphs.push_back(sentence);
  const models::RareEvent event = models::landing(patient.species, patient.bone);
  if (const auto once = models::borne_once(assessment.margins, event); once && !once->first.load.empty())
    paragraphs.push_back(once_sentence(*once, event));
  return paragraphs;
}

std::vector<std::string> draft_without_findings(const std::string& reason) {
  return {fmt::format("NOT TO BE TRUSTED: its analysis has no answer: {}.", reason)};
}

}  // namespace gapstrain::cases
