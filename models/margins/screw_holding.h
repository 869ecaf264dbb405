// What a bone's walls hold of a screw: its thread pulled out and its shaft pressed sideways, at once.
#pragma once

#include "models/findings/findings.h"
#include "models/parts/screw.h"

#include <limits>
#include <optional>
#include <string_view>
#include <vector>

namespace gapstrain::models {

// Compressive strength of human cortex across its axis, the lower of its two directions: 131 MPa, D. T. Reilly and
// A. H. Burstein 1975, J. Biomech. 8:393, from memory.
inline const Stress bearing_strength_of_cortex = 131.0 * mpa;
inline constexpr std::string_view screw_holding_source =
    "pull-out: Chapman et al. 1996, J Biomech Eng 118:391, and ASTM F543 (formula from memory), with the shear "
    "strength of human cortex of Turner et al. 2001, Calcif Tissue Int 69:373; bearing: 131 MPa across human "
    "cortex, D. T. Reilly "
    "and "
    "A. H. Burstein 1975, J. Biomech. 8:393, from memory; both together: a choice of this program, no source";

// Factor on two demands at once, each given as its share of its own strength, whose squares add up to 1 at failure
// (an ellipse, a choice of this program: no source for bone screws). Infinite for no demand.
double factor_of_both(double share_of_one, double share_of_other);

struct ScrewHolding {
  Force pull;            // along the screw towards its head, of all its walls; negative pushes it in
  Force pull_out;        // strength of the thread in them; against being pushed in it is taken alike
  bool far = false;      // the wall that is pressed hardest for its size
  Force shear, bearing;  // of that wall: pressed sideways, and its strength: thread diameter x wall x 131 MPa
  double factor = 0.0;   // of both; infinite for an idle screw
};

// The pull is taken for the whole thread, since a wall that begins to give hands it on to the other, sideways
// pressure wall by wall. The moment that a wall takes is not in it. Nothing without walls.
std::optional<ScrewHolding> screw_holding(const ScrewSize& size, const std::vector<CortexForce>& cortices);

// The least factor of a screw over all loads and, of a ball head, the preload that the steps left.
struct LeastHold {
  double factor = std::numeric_limits<double>::infinity();
  std::optional<std::size_t> load;  // nothing: after the last step alone, or no demand at all
  bool indicative = false;          // its only wall takes a moment as well, which is not counted
};
// Of a screw that is tightened; null for another.
const HeldForce* find_held(const std::vector<HeldForce>& all, ScrewId screw);
// `one_a_load`: what it does to its walls. `held`: after the last step; may be null.
LeastHold least_hold(const Screw& screw, const std::vector<std::vector<CortexForce>>& one_a_load,
                     const HeldForce* held);

}  // namespace gapstrain::models
