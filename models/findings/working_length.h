// The same construct with its innermost screws moved by one hole.
#pragma once

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

// Both innermost screws moved to the nearest free hole away from the fracture, and likewise towards it. A variant
// that check() refuses is unavailable.
std::vector<ScrewVariant> working_length_variants(const Construct& construct);

struct Assembly;
struct AssembledLoad;

// Change of each available variant against the construct under one load.
std::vector<WorkingLengthVariant> measure_working_length_effect(const Assembly& assembly,
                                                                const std::vector<ScrewVariant>& variants,
                                                                const AssembledLoad& load);

}  // namespace gapstrain::models
