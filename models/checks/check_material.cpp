#include "models/checks/checks.h"

#include <fmt/format.h>

namespace gapstrain::models {

namespace {

void check_isotropic(const std::string& where, std::string_view name, Stress youngs_modulus, double poissons_ratio,
                     ProblemList& problems) {
  problems.positive(where + ".youngs_modulus", fmt::format("Young's modulus of \"{}\"", name), youngs_modulus);
  if (!(poissons_ratio >= 0.0 && poissons_ratio < 0.5))
    problems.error(where + ".poissons_ratio",
                   fmt::format("Poisson's ratio of \"{}\" is {:.4g}; it must be from 0 to "
                               "below 0.5, and metals have about 0.3.",
                               name, poissons_ratio));
}

}  // namespace

void check_cortex(const CorticalBone& cortex, ProblemList& problems) {
  const std::string where = "bone.cortical_bone";
  bool is_good = problems.positive(where + ".longitudinal_modulus",
                                   "The longitudinal modulus of the cortical bone", cortex.longitudinal_modulus);
  is_good &= problems.positive(where + ".transverse_modulus", "The transverse modulus of the cortical bone",
                               cortex.transverse_modulus);
  problems.positive(where + ".shear_modulus_lt", "The shear modulus LT of the cortical bone",
                    cortex.shear_modulus_lt);
  problems.positive(where + ".shear_modulus_lr", "The shear modulus LR of the cortical bone",
                    cortex.shear_modulus_lr);
  problems.positive(where + ".shear_modulus_tr", "The shear modulus TR of the cortical bone",
                    cortex.shear_modulus_tr);
  const double nu = cortex.poissons_ratio_lt;
  // Of the plane-stress law in the wall. An equal modulus both ways is isotropic bone, where all three axes bound
  // nu.
  const double limit = is_good ? (cortex.longitudinal_modulus / cortex.transverse_modulus).value() : 1.0;
  if (!(nu >= 0.0 && nu * nu < limit))
    problems.error(
        where + ".poissons_ratio_lt",
        fmt::format("Poisson's ratio LT of the cortical bone is {:.4g}; for these moduli it must be from 0 to "
                    "below {:.3g}, or the bone would give off energy when strained.",
                    nu, std::sqrt(limit)));
  if (cortex.yield_strain && !(*cortex.yield_strain > 0.0 && *cortex.yield_strain < 0.1))
    problems.error(where + ".yield_strain",
                   fmt::format("The yield strain of the cortical bone is {:.4g}; it must be above 0 and below 0.1 "
                               "(0.007 is usual).",
                               *cortex.yield_strain));
}

void check_metal(const Metal& metal, const std::string& where, ProblemList& problems) {
  check_isotropic(where, metal.name, metal.youngs_modulus, metal.poissons_ratio, problems);
  if (metal.yield_strength)
    problems.positive(where + ".yield_strength", fmt::format("The yield strength of \"{}\"", metal.name),
                      *metal.yield_strength);
  if (metal.ultimate_strength.has_value() != metal.fatigue_strength.has_value())
    problems.error(
        where, fmt::format("Of \"{}\" only one of ultimate and fatigue strength is given; give both or neither.",
                           metal.name));
  if (!metal.ultimate_strength || !metal.fatigue_strength) return;
  if (problems.positive(where + ".ultimate_strength", fmt::format("The ultimate strength of \"{}\"", metal.name),
                        *metal.ultimate_strength) &&
      problems.positive(where + ".fatigue_strength", fmt::format("The fatigue strength of \"{}\"", metal.name),
                        metal.fatigue_strength->middle) &&
      !(metal.fatigue_strength->high < 0.9 * *metal.ultimate_strength))
    problems.error(
        where + ".fatigue_strength",
        fmt::format("The fatigue strength of \"{}\" is {}; with its spread it must stay below 0.9 times the "
                    "ultimate strength ({}).",
                    metal.name, text(metal.fatigue_strength->middle), text(*metal.ultimate_strength)));
}

void check_tissue(const Tissue& tissue, const std::string& where, ProblemList& problems) {
  check_isotropic(where, tissue.name, tissue.youngs_modulus, tissue.poissons_ratio, problems);
}

}  // namespace gapstrain::models
