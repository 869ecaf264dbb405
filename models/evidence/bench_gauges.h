// Strain gauges on a bench model's plate.
#pragma once

#include "models/assembly/assembly.h"

#include <vector>

namespace gapstrain::models {

// Strain along the plate on its outer face, on the centre line at places along it (mm): what a small gauge between
// two holes reads, up to what is stretched across. `chosen`: screws in, positions in Assembly::screws.
std::vector<double> gauge_strains(const Assembly& assembly, const std::vector<int>& chosen, std::size_t load,
                                  const std::vector<double>& along);

}  // namespace gapstrain::models
