// What tightening a ball-headed screw brings, and what it can bear.
#pragma once

#include "models/parts/screw.h"

#include <optional>

namespace gapstrain::models {

// Force of a screw tightened to a torque: T = F (d_m/2 tan(lambda + phi) + mu r_h), tan lambda = p / (pi d_m),
// tan phi = mu, d_m = (D + d) / 2 (power screws, any machine-element handbook), with mu = 0.25 in the thread and
// under the head and a mean head radius of 0.63 D (2.2 mm at 3.5 mm), from memory.
Force preload_of_torque(const ScrewSize& size, Moment torque, double friction = 0.25);

// Thread shear strength over an engaged length: S L pi D (0.5 + depth / (sqrt(3) p)), depth = (D - d) / 2. Chapman
// et al. 1996, J Biomech Eng 118:391, and the appendix of ASTM F543 (formula from memory). S = 51.6 MPa: shear
// along the axis of human cortical bone, Turner et al. 2001, Calcif Tissue Int 69:373; other bone is taken alike.
Force pull_out_strength(const ScrewSize& size, Length engaged);

// Tension at which the core yields; nothing for a metal without yield strength.
std::optional<Force> core_yield(const Screw& screw);

// The force tightening brings: `preload`, or that of `insertion_torque`, or half the pull-out strength of the
// engaged cortices (a choice of this program, no source).
Force tightened_force(const Screw& screw, Length engaged);

// `slide`, or by thread: 0.6 mm up to 2.0 mm, 0.8 mm up to 2.7 mm, 1.0 mm above (from memory).
Length tightened_slide(const Screw& screw);

}  // namespace gapstrain::models
