// What the spots of a gap add up to.
#pragma once

#include "models/race/healing_gap.h"
#include "models/race/stress_history.h"

#include <vector>

namespace gapstrain::models {

// Under the load that strains it most; closed where it is under every load. `loads`: spots of each.
std::vector<SpotStrain> most_strained(const std::vector<std::vector<SpotStrain>>& loads);

// How far a spot has come, in quarters of the way between two rungs of the ladder: finer than its tissue, which is
// that of the nearest rung.
using SpotQuarters = std::vector<std::size_t>;
inline constexpr std::size_t quarters_a_rung = 4;

SpotStages nearest_stages(const SpotQuarters& quarters);

// Whether a spot's strain lets the tissue of its next quarter form. @pre there is one
bool bears_next(const HealingGap& gap, const SpotStrain& spot, std::size_t quarters);

// All but the plate's stress. `worst`: of most_strained().
GapState summarise_gap(const HealingGap& gap, const std::vector<SpotStrain>& worst, const SpotQuarters& quarters);

}  // namespace gapstrain::models
