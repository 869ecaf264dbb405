// Named materials with the source of every constant. Values live in material.cpp, from published tables.
#pragma once

#include "models/parts/units.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

// Amplitude of fully reversed stress that smooth bars of a metal bear for 10^7 cycles: the spread of published
// values.
struct FatigueStrength {
  Stress low, middle, high;
  std::string source;
  bool operator==(const FatigueStrength&) const = default;
};

enum class MetalLaw {
  elastic,         // whatever the stress: a bound
  elastic_plastic  // sections bend for good beyond their yield strength
};

// Isotropic metal of plates and screws.
struct Metal {
  std::string name;
  Stress youngs_modulus;
  double poissons_ratio = 0.0;
  std::optional<Stress> yield_strength;  // 0.2 % proof; absent: no factor to yield is reported
  std::string source;
  std::optional<Stress> ultimate_strength = std::nullopt;          // both or neither; absent: no fatigue
  std::optional<FatigueStrength> fatigue_strength = std::nullopt;  // is reported
  bool operator==(const Metal&) const = default;
};

// Cortical bone, transversely isotropic in the wall's plane: L along the bone's axis, T around it.
struct CorticalBone {
  std::string name;
  Stress longitudinal_modulus;
  Stress transverse_modulus;
  double poissons_ratio_lt = 0.0;      // contraction along T per stretch along L
  Stress shear_modulus_lt;             // in the wall's plane
  Stress shear_modulus_lr;             // L with the wall's normal
  Stress shear_modulus_tr;             // T with the wall's normal
  std::optional<double> yield_strain;  // tension, long axis; absent: no utilisation is reported
  std::string source;
  bool operator==(const CorticalBone&) const = default;
};

// Isotropic tissue that fills the gap.
struct Tissue {
  std::string name;
  Stress youngs_modulus;
  double poissons_ratio = 0.0;
  std::string source;
  bool operator==(const Tissue&) const = default;
};

// Isotropic cortex: the moduli of CorticalBone from two constants.
CorticalBone isotropic_cortex(std::string name, Stress youngs_modulus, double poissons_ratio, std::string source);

// The catalogue. find_* return nothing for an unknown name; *_names list what is known, for messages.
std::optional<Metal> find_metal(std::string_view name);
std::optional<CorticalBone> find_cortex(std::string_view name);
std::optional<Tissue> find_tissue(std::string_view name);
std::vector<std::string> metal_names();
std::vector<std::string> cortex_names();
std::vector<std::string> tissue_names();

}  // namespace gapstrain::models
