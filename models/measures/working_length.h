// The same construct with its innermost screws moved by one hole.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"
#include "models/parts/construct.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

struct ScrewVariant {
  bool further_out = true;
  std::vector<Screw> screws;               // the whole choice; empty when unavailable
  std::optional<std::string> unavailable;  // why
};

// Both innermost screws of those that are in after the last step, moved to the nearest hole away from the fracture
// that is free in all steps, and likewise towards it. A variant
// that check() refuses is unavailable.
std::vector<ScrewVariant> working_length_variants(const Construct& construct);

// Each variant after its last step; nothing for one that is unavailable.
std::vector<std::optional<ConstructState>> make_variants(const Assembly& assembly,
                                                         const std::vector<ScrewVariant>& variants);

// Change of each available variant against the construct under one load. `made`, `variants_made`: both after their
// last steps.
std::vector<WorkingLengthVariant> measure_working_length_effect(
    const Assembly& assembly, const ConstructState& made, const std::vector<ScrewVariant>& variants,
    const std::vector<std::optional<ConstructState>>& variants_made, const AssembledLoad& load);

}  // namespace gapstrain::models
