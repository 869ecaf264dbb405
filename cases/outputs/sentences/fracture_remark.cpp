#include "cases/outputs/sentences/fracture_remark.h"

#include "cases/text/digits.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::cases {

namespace {

constexpr double healing_limit = 0.10;  // axial strain above which no cartilage forms: Perren & Cordey 1980

double largest_axial_strain(const models::LoadFindings& load) {
  const auto& strain = load.gap.axial_strain;
  return strain ? std::max(std::abs(strain->min), std::abs(strain->max)) : 0.0;
}

bool touches(const models::LoadFindings& load) { return load.face.touching > 0.0; }

double used(const models::LoadFindings& load) {
  const double strained = largest_axial_strain(load) / healing_limit;
  if (!load.force_left) return strained;
  return std::max({strained, load.gapes ? 1.5 : 0.0, 1.0 - *load.force_left});
}

std::string pressures(const models::FaceFindings& face) {
  return fmt::format("near {:.2g} MPa, far {:.2g}, {:.0f} % of the face touches", face.near.value(),
                     face.far.value(), 100 * face.touching);
}

std::string open_part(const models::LoadFindings& load) {
  const auto& gap = load.gap;
  const auto& share = gap.windows;
  if (!gap.axial_strain) return "";
  const std::string shear = gap.shear_strain
                                ? fmt::format(", shear up to {} %", two_digits(100 * gap.shear_strain->max))
                                : std::string{};
  if (touches(load))
    return fmt::format(" {:.0f} % of the edge is open, with axial strain {} to {} %{}.",
                       100 * (1.0 - share.closed), two_digits_signed(100 * gap.axial_strain->min),
                       two_digits_signed(100 * gap.axial_strain->max), shear);
  return fmt::format(
      "axial strain {} to {} %{}, under \"{}\". Of the edge {:.0f} % is below 2 % (bone), {:.0f} % "
      "below 10 % (cartilage), {:.0f} % above.",
      two_digits_signed(100 * gap.axial_strain->min), two_digits_signed(100 * gap.axial_strain->max), shear,
      load.load, 100 * share.bone, 100 * share.cartilage, 100 * (share.granulation + share.none));
}

std::string motions(const models::LoadFindings& load) {
  return fmt::format("motion up to {:.2g} mm, slip up to {:.2g} mm", load.gap.largest_motion.value(),
                     load.face.largest_slip.value());
}

std::string pressed(const models::Findings& findings, const models::LoadFindings& load) {
  const auto& face = findings.compression.steps.back().face;
  std::string text = fmt::format("Fracture pressed: {:.0f} N across it after the last step, {}; under \"{}\" ",
                                 face.force.value(), pressures(face), load.load);
  text += load.force_left
              ? fmt::format("{:.0f} N ({:.0f} %) are left", load.face.force.value(), 100 * *load.force_left)
              : fmt::format("{:.0f} N", load.face.force.value());
  return text + fmt::format("{}, {}.", load.gapes ? " and it GAPES" : "", motions(load)) + open_part(load);
}

}  // namespace

models::Force force_after_steps(const models::Findings& findings) {
  const auto& steps = findings.compression.steps;
  return steps.empty() ? models::Force{} : steps.back().face.force;
}

Remark fracture_remark(const models::Findings& findings) {
  const auto& loads = findings.loads;
  const auto worse = [](const auto& a, const auto& b) {
    // Of loads that strain nothing and leave all force, the one that moves the fracture most.
    return std::pair(used(a), a.gap.largest_motion) < std::pair(used(b), b.gap.largest_motion);
  };
  const auto& load = *std::max_element(loads.begin(), loads.end(), worse);
  if (force_after_steps(findings).value() > 0.0) return {used(load), pressed(findings, load)};
  if (touches(load))
    return {used(load),
            fmt::format("Fracture closes under \"{}\": {:.0f} N across it, {}; {}.{}", load.load,
                        load.face.force.value(), pressures(load.face), motions(load), open_part(load))};
  return {used(load), "Gap: " + open_part(load)};
}

}  // namespace gapstrain::cases
