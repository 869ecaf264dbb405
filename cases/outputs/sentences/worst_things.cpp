#include "cases/outputs/sentences/worst_things.h"

#include "cases/outputs/sentences/face_name.h"
#include "cases/outputs/sentences/fracture_remark.h"
#include "cases/text/digits.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::cases {

namespace {

std::string factor(const std::optional<double>& factor) {
  if (!factor) return "no yield strength is known";
  return *factor < 1.0 ? fmt::format("factor to yield {:.2g}: IT YIELDS", *factor)
                       : fmt::format("factor to yield {}", two_digits(*factor));
}

double used(const std::optional<double>& factor) { return factor && *factor > 0.0 ? 1.0 / *factor : 0.0; }

template <class Measure>
const models::LoadFindings& worst_load(const models::Findings& findings, Measure measure) {
  return *std::max_element(findings.loads.begin(), findings.loads.end(),
                           [&](const auto& a, const auto& b) { return measure(a) < measure(b); });
}

Remark plate_remark(const models::Findings& findings) {
  const auto& load = hottest_load(findings);
  const auto& peak = load.plate.peak;
  const std::string place = peak.hole ? fmt::format("at hole {}", *peak.hole)
                                      : fmt::format("{:.0f} mm from its proximal end", peak.along.value());
  std::string solid;
  for (const auto& hole : load.plate.holes)
    if (peak.hole == hole.hole && hole.peak_solid)
      solid = fmt::format(" (less conservative, in three dimensions: {:.0f} MPa)", hole.peak_solid->value());
  const auto& steps = findings.compression.steps;
  const double locked_in = steps.empty() ? 0.0 : steps.back().plate_peak.value();
  return {
      used(load.plate.factor_to_yield),
      fmt::format("Plate: {:.0f} MPa von Mises {}, {} face, under \"{}\"{}{}; {}.", peak.von_mises.value(), place,
                  face_name(peak.face), load.load, solid,
                  locked_in >= 0.5 ? fmt::format(", {:.0f} MPa after the steps alone", locked_in) : std::string{},
                  factor(load.plate.factor_to_yield))};
}

std::optional<Remark> screw_remark(const models::Findings& findings) {
  const models::ScrewFindings* worst = nullptr;
  const models::LoadFindings* under = nullptr;
  for (const auto& load : findings.loads)
    for (const auto& screw : load.screws)
      if (worst == nullptr || screw.peak_bending_stress > worst->peak_bending_stress) {
        worst = &screw;
        under = &load;
      }
  if (worst == nullptr) return std::nullopt;
  return Remark{used(worst->factor_to_yield),
                fmt::format("Screws: {}{} is loaded most: {:.0f} MPa in its core under \"{}\"; {}.", worst->label,
                            worst->hole > 0 ? fmt::format(" in hole {}", worst->hole) : std::string{},
                            worst->peak_bending_stress.value(), under->load, factor(worst->factor_to_yield))};
}

Remark bone_remark(const models::Findings& findings) {
  const auto& load = worst_load(findings, [](const auto& l) { return l.bone.peak_strain; });
  const auto& margin = load.bone.factor_to_yield_strain;
  return {
      used(margin),
      fmt::format("Bone: strain up to {:.2g} %, clear of the screws, under \"{}\"{}.", 100 * load.bone.peak_strain,
                  load.load, margin ? fmt::format("; factor to yield strain {}", two_digits(*margin)) : "")};
}

// Whether something has bent further under a load than in the steps.
bool bends_under(const models::Findings& findings, const models::LoadFindings& load) {
  constexpr double more = 1.001;
  const auto& steps = findings.compression.steps;
  return std::any_of(load.bent.begin(), load.bent.end(), [&](const models::BentPart& part) {
    return steps.empty() ||
           std::none_of(steps.back().bent.begin(), steps.back().bent.end(), [&](const models::BentPart& before) {
             return before.screw == part.screw && before.label == part.label && part.turn <= more * before.turn;
           });
  });
}

std::optional<Remark> buckling_remark(const models::Findings& findings) {
  std::optional<Remark> remark;
  for (const auto& load : findings.loads)
    if (load.buckling_factor && (!remark || used(load.buckling_factor) > remark->used))
      remark = {
          used(load.buckling_factor),
          fmt::format("Buckling: the construct gives way sideways at {} times the load \"{}\"{}{}.",
                      two_digits(*load.buckling_factor), load.load,
                      bends_under(findings, load) ? ", or less: parts of it yield under that load" : "",
                      load.second_order.amplification
                          ? fmt::format("; its second-order effects are in the figures, slopes grow by {:.2g} %",
                                        100.0 * (*load.second_order.amplification - 1.0))
                          : std::string{})};
  return remark;
}

std::optional<Remark> friction_remark(const models::Findings& findings) {
  std::optional<Remark> remark;
  const auto consider = [&](const std::optional<double>& use, const std::string& when) {
    if (use && (!remark || *use > remark->used))
      remark = {*use,
                *use < 0.995
                    ? fmt::format("Plate on bone: friction carries {:.0f} % of what it can, {}.", 100 * *use, when)
                    : fmt::format("Plate on bone: friction is used up, the plate SLIPS, {}.", when)};
  };
  if (!findings.compression.steps.empty())
    consider(findings.compression.steps.back().friction_use, "after the last step");
  for (const auto& load : findings.loads) consider(load.friction_use, fmt::format("under \"{}\"", load.load));
  return remark;
}

// The ball-headed screw that the steps leave nearest to its pull-out or its yield.
std::optional<Remark> preload_remark(const models::Findings& findings) {
  if (findings.compression.steps.empty()) return std::nullopt;
  std::optional<Remark> remark;
  for (const auto& held : findings.compression.steps.back().held) {
    const double share = std::max(held.of_pull_out.value_or(0.0), held.of_yield.value_or(0.0));
    if (share == 0.0 || (remark && share <= remark->used)) continue;
    std::string limits;
    if (held.of_pull_out) limits += fmt::format(", {:.0f} % of its pull-out strength", 100 * *held.of_pull_out);
    if (held.of_yield) limits += fmt::format(", {:.0f} % of its core's yield", 100 * *held.of_yield);
    remark = {share, fmt::format("Preload: {} is left with {:.0f} N{}.", held.label, held.axial.value(), limits)};
  }
  return remark;
}

}  // namespace

const models::LoadFindings& hottest_load(const models::Findings& findings) {
  return worst_load(findings, [](const auto& load) { return load.plate.peak.von_mises.value(); });
}

std::vector<std::string> worst_things(const models::Findings& findings) {
  if (findings.loads.empty()) return {};
  std::vector<Remark> remarks{plate_remark(findings), fracture_remark(findings), bone_remark(findings)};
  for (const auto& remark :
       {screw_remark(findings), buckling_remark(findings), friction_remark(findings), preload_remark(findings)})
    if (remark) remarks.push_back(*remark);
  std::stable_sort(remarks.begin(), remarks.end(),
                   [](const Remark& a, const Remark& b) { return a.used > b.used; });
  std::vector<std::string> sentences;
  for (const auto& remark : remarks) sentences.push_back(remark.sentence);
  return sentences;
}

}  // namespace gapstrain::cases
