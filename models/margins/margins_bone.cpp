#include "models/margins/margins_list.h"

#include <limits>

namespace gapstrain::models {

namespace {

struct YieldStrain {
  double strain = 0.0;
  std::string source;
};

// A catalogue's bone without a yield strain of its own is taken at man's; of a bone with constants of its own
// nothing is known.
std::optional<YieldStrain> yield_strain_of(const CorticalBone& cortex) {
  if (cortex.yield_strain) return YieldStrain{*cortex.yield_strain, cortex.source};
  if (!find_cortex(cortex.name)) return std::nullopt;
  const CorticalBone human = find_cortex("human-femur").value();
  return YieldStrain{*human.yield_strain, "yield strain of another species: " + human.source};
}

void add_strain(MarginKind kind, double BoneFindings::*strain, const YieldStrain& yield, const Findings& findings,
                MarginList& list) {
  const LoadFindings* worst = nullptr;
  for (const auto& load : findings.loads)
    if (worst == nullptr || load.bone.*strain > worst->bone.*strain) worst = &load;
  if (worst == nullptr) return;
  const double largest = worst->bone.*strain;
  const bool at_screws = kind == MarginKind::bone_yield_at_screws;
  list.add({kind, worst->load, yield.strain / largest, yield.source, at_screws, ScrewId::none,
            StrainBasis{largest, yield.strain}});
}

}  // namespace

void add_bone_margins(const Construct& construct, const Findings& findings, MarginList& list) {
  const CorticalBone& cortex = construct.bone.cortex;
  const auto yield = yield_strain_of(cortex);
  if (!yield) {
    list.left_out.emplace_back(UnknownStrength{MarginKind::bone_yield, cortex.name});
    return;
  }
  add_strain(MarginKind::bone_yield, &BoneFindings::peak_strain, *yield, findings, list);
  add_strain(MarginKind::bone_yield_at_screws, &BoneFindings::peak_strain_at_screws, *yield, findings, list);
}

}  // namespace gapstrain::models
