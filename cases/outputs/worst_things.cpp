#include "cases/outputs/worst_things.h"

#include "cases/outputs/face_name.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::cases {

namespace {

constexpr double healing_limit = 0.10;  // axial strain above which no cartilage forms: Perren & Cordey 1980

struct Remark {
  double used = 0.0;  // share of the part's limit
  std::string sentence;
};

std::string factor(const std::optional<double>& factor) {
  if (!factor) return "no yield strength is known";
  return *factor < 1.0 ? fmt::format("factor to yield {:.2g}: IT YIELDS", *factor)
                       : fmt::format("factor to yield {:.2g}", *factor);
}

double used(const std::optional<double>& factor) { return factor && *factor > 0.0 ? 1.0 / *factor : 0.0; }

double largest_axial_strain(const models::LoadFindings& load) {
  return std::max(std::abs(load.gap.axial_strain.min), std::abs(load.gap.axial_strain.max));
}

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
  return {used(load.plate.factor_to_yield),
          fmt::format("Plate: {:.0f} MPa von Mises {}, {} face, under \"{}\"{}; {}.", peak.von_mises.value(),
                      place, face_name(peak.face), load.load, solid, factor(load.plate.factor_to_yield))};
}

Remark gap_remark(const models::Findings& findings) {
  const auto& load = worst_load(findings, largest_axial_strain);
  const auto& gap = load.gap;
  const auto& share = gap.windows;
  if (gap.closes)
    return {1e9,
            fmt::format("Gap: under \"{}\" the fragments would pass through each other; they touch in truth, and "
                        "the gap figures do not hold.",
                        load.load)};
  return {largest_axial_strain(load) / healing_limit,
          fmt::format(
              "Gap: axial strain {:+.2g} to {:+.2g} %, shear up to {:.2g} %, under \"{}\". Of the edge {:.0f} % "
              "is below 2 % (bone), {:.0f} % below 10 % (cartilage), {:.0f} % above.",
              100 * gap.axial_strain.min, 100 * gap.axial_strain.max, 100 * gap.shear_strain.max, load.load,
              100 * share.bone, 100 * share.cartilage, 100 * (share.granulation + share.none))};
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
  return Remark{
      used(worst->factor_to_yield),
      fmt::format("Screws: {} in hole {} is loaded most: {:.0f} MPa in its core under \"{}\"; {}.", worst->label,
                  worst->hole, worst->peak_bending_stress.value(), under->load, factor(worst->factor_to_yield))};
}

Remark bone_remark(const models::Findings& findings) {
  const auto& load = worst_load(findings, [](const auto& l) { return l.bone.peak_strain; });
  const auto& margin = load.bone.factor_to_yield_strain;
  return {used(margin), fmt::format("Bone: strain up to {:.2g} %, clear of the screws, under \"{}\"{}.",
                                    100 * load.bone.peak_strain, load.load,
                                    margin ? fmt::format("; factor to yield strain {:.2g}", *margin) : "")};
}

std::optional<Remark> buckling_remark(const models::Findings& findings) {
  std::optional<Remark> remark;
  for (const auto& load : findings.loads)
    if (load.buckling_factor && (!remark || used(load.buckling_factor) > remark->used))
      remark = {used(load.buckling_factor),
                fmt::format("Buckling: the construct gives way sideways at {:.2g} times "
                            "the load \"{}\".",
                            *load.buckling_factor, load.load)};
  return remark;
}

}  // namespace

const models::LoadFindings& hottest_load(const models::Findings& findings) {
  return worst_load(findings, [](const auto& load) { return load.plate.peak.von_mises.value(); });
}

std::vector<std::string> worst_things(const models::Findings& findings) {
  if (findings.loads.empty()) return {};
  std::vector<Remark> remarks{plate_remark(findings), gap_remark(findings), bone_remark(findings)};
  if (const auto screw = screw_remark(findings)) remarks.push_back(*screw);
  if (const auto buckling = buckling_remark(findings)) remarks.push_back(*buckling);
  std::stable_sort(remarks.begin(), remarks.end(),
                   [](const Remark& a, const Remark& b) { return a.used > b.used; });
  std::vector<std::string> sentences;
  for (const auto& remark : remarks) sentences.push_back(remark.sentence);
  return sentences;
}

}  // namespace gapstrain::cases
