#include "models/parts/material.h"

#include <utility>

namespace gapstrain::models {

namespace {

// "From memory" in a source: the figure is quoted without the publication at hand. Treat it as a starting value.

struct MetalRow {
  std::string_view name;
  double modulus, poissons_ratio, yield;  // MPa, -, MPa
  std::string_view source;
  double ultimate = 0.0;                                        // MPa; 0: no fatigue data
  double fatigue_low = 0.0, fatigue = 0.0, fatigue_high = 0.0;  // amplitude at 10^7 cycles, MPa
  std::string_view fatigue_source = {};
};

// The standards' strengths are minima of bar or sheet; a finished implant may differ.
constexpr MetalRow metals[] = {
    {"stainless-steel-annealed", 190e3, 0.30, 190.0,
     "ISO 5832-1 minimum proof stress of the annealed state; modulus 186 to 200 GPa in handbooks; all from "
     "memory",
     520.0, 200.0, 250.0, 280.0,
     "240 to 280 MPa, round bars, from memory; low end 200 MPa: 316 round bar, untreated, axial, ASM "
     "International data"},
    {"stainless-steel-cold-worked", 190e3, 0.30, 690.0,
     "ISO 5832-1 minimum proof stress of cold-worked bar; modulus 186 to 200 GPa in handbooks; all from memory",
     930.0, 310.0, 380.0, 448.0,
     "310 to 450 MPa, 30 % cold-worked bars, biomaterials textbook tables, from memory"},
    {"titanium-grade-1", 103e3, 0.34, 170.0, "ASTM F67 minimum proof stress; Poisson's ratio from memory", 240.0,
     174.0, 193.0, 212.0,
     "193 MPa, smooth, rotating bending, producer's data sheet; spread of 10 % either way assumed"},
    {"titanium-grade-2", 103e3, 0.34, 275.0, "ASTM F67 minimum proof stress; elastic constants from memory"},
    {"titanium-grade-3", 103e3, 0.34, 380.0, "ASTM F67 minimum proof stress; elastic constants from memory"},
    {"titanium-grade-4", 104e3, 0.34, 483.0, "ASTM F67 minimum proof stress; elastic constants from memory"},
    {"titanium-grade-4-cold-worked", 104e3, 0.34, 520.0, "ISO 5832-2 minimum proof stress; all from memory", 760.0,
     255.0, 300.0, 345.0, "300 MPa, from memory; spread of 15 % either way assumed"},
    {"titanium-6al-4v-eli", 113.8e3, 0.342, 795.0,
     "ASTM F136 minimum proof stress of bar up to 44 mm; elastic constants: ASM data sheet of annealed Ti-6Al-4V "
     "ELI",
     965.0, 500.0, 560.0, 620.0,
     "500 MPa smooth bar, supplier's data sheet of medical bar; 560 to 620 MPa textbooks, from memory"},
    {"titanium-6al-7nb", 105e3, 0.34, 800.0, "ISO 5832-11 minimum proof stress; all from memory", 1000.0, 500.0,
     550.0, 600.0, "500 to 600 MPa, from memory"},
};

struct CortexRow {
  std::string_view name;
  double e_l, e_t, nu_lt, g_lt, g_lr, g_tr;  // MPa
  double yield_strain;                       // 0: not known
  std::string_view source;
};

// Handbooks number the axes 1 radial, 2 circumferential, 3 long, with nu_ij the contraction along j per stretch
// along i. So nu_LT = nu_32 = nu_23 E_3 / E_2, G_LT = G_23, G_LR = G_13, G_TR = G_12.
constexpr CortexRow cortex_rows[] = {
    // The plane square to the long axis is isotropic: G_TR = E_T / 2 (1 + nu_TT) with nu_TT = 0.58.
    {"human-femur", 17000.0, 11500.0, 0.46, 3300.0, 3300.0, 11500.0 / (2.0 * 1.58), 0.0073,
     "D. T. Reilly and A. H. Burstein, J. Biomech. 8 (1975) 393-405, machine tests, as tabulated in S. C. Cowin, "
     "Bone "
     "Mechanics (1989) p. 102; yield strain: H. H. Bayraktar et al., J. Biomech. 37 (2004) 27-35, from memory"},
    {"human-femur-ultrasound", 20000.0, 13400.0, 0.235 * 20.0 / 13.4, 6230.0, 5610.0, 4530.0, 0.0073,
     "R. B. Ashman et al., J. Biomech. 17 (1984) 349-361, as tabulated in S. C. Cowin, Bone Mechanics (1989) p. "
     "102; "
     "yield strain: H. H. Bayraktar et al., J. Biomech. 37 (2004) 27-35, from memory"},
    {"canine-femur", 20100.0, 15600.0, 0.265 * 20.1 / 15.6, 6670.0, 5680.0, 4680.0, 0.0,
     "R. B. Ashman et al., J. Biomech. 17 (1984) 349-361, ultrasound, from memory"},
};

constexpr std::string_view isotropic_name = "isotropic-bone";

struct TissueRow {
  std::string_view name;
  double modulus, poissons_ratio;
  std::string_view source;
};

constexpr std::string_view lacroix =
    "input set of D. Lacroix and P. J. Prendergast, J. Biomech. 35 (2002) 1163-1171, drained constants";
constexpr std::string_view claes =
    "staged callus of L. E. Claes and C. A. Heigele, J. Biomech. 32 (1999) 255-266, from memory; Poisson's ratio "
    "assumed";

constexpr TissueRow tissues[] = {
    {"granulation-tissue", 0.2, 0.167, lacroix}, {"fibrous-tissue", 2.0, 0.167, lacroix},
    {"cartilage", 10.0, 0.167, lacroix},         {"immature-bone", 1000.0, 0.3, lacroix},
    {"mature-woven-bone", 6000.0, 0.3, lacroix}, {"soft-callus", 1000.0, 0.3, claes},
    {"intermediate-callus", 3000.0, 0.3, claes}, {"hard-callus", 6000.0, 0.3, claes},
};

template <class Row, std::size_t count>
const Row* find(const Row (&rows)[count], std::string_view name) {
  for (const Row& row : rows)
    if (row.name == name) return &row;
  return nullptr;
}

template <class Row, std::size_t count>
std::vector<std::string> names(const Row (&rows)[count]) {
  std::vector<std::string> list;
  for (const Row& row : rows) list.emplace_back(row.name);
  return list;
}

}  // namespace

CorticalBone isotropic_cortex(std::string name, Stress youngs_modulus, double poissons_ratio, std::string source) {
  const Stress shear = youngs_modulus / (2.0 * (1.0 + poissons_ratio));
  return {std::move(name), youngs_modulus, youngs_modulus, poissons_ratio,   shear,
          shear,           shear,          std::nullopt,   std::move(source)};
}

std::optional<Metal> find_metal(std::string_view name) {
  const MetalRow* row = find(metals, name);
  if (!row) return std::nullopt;
  Metal metal{std::string(name), row->modulus * mpa, row->poissons_ratio, row->yield * mpa,
              std::string(row->source)};
  if (row->ultimate > 0.0) {
    metal.ultimate_strength = row->ultimate * mpa;
    metal.fatigue_strength =
        FatigueStrength{row->fatigue_low * mpa, row->fatigue * mpa, row->fatigue_high * mpa,
                        std::string(row->fatigue_source) + "; ultimate strength typical, from memory"};
  }
  return metal;
}

std::optional<CorticalBone> find_cortex(std::string_view name) {
  if (name == isotropic_name)
    return isotropic_cortex(std::string(name), 17000.0 * mpa, 0.3,
                            "common practice for man (17 to 18 GPa) and dog (16 to 20 GPa), from memory");
  const CortexRow* row = find(cortex_rows, name);
  if (!row) return std::nullopt;
  CorticalBone bone{std::string(name), row->e_l * mpa,  row->e_t * mpa,
                    row->nu_lt,        row->g_lt * mpa, row->g_lr * mpa,
                    row->g_tr * mpa,   std::nullopt,    std::string(row->source)};
  if (row->yield_strain > 0.0) bone.yield_strain = row->yield_strain;
  return bone;
}

std::optional<Tissue> find_tissue(std::string_view name) {
  const TissueRow* row = find(tissues, name);
  if (!row) return std::nullopt;
  return Tissue{std::string(name), row->modulus * mpa, row->poissons_ratio, std::string(row->source)};
}

std::vector<std::string> metal_names() { return names(metals); }

std::vector<std::string> cortex_names() {
  auto list = names(cortex_rows);
  list.emplace_back(isotropic_name);
  return list;
}

std::vector<std::string> tissue_names() { return names(tissues); }

}  // namespace gapstrain::models
