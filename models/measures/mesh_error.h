// How much the mesh itself may be off, from the solution alone.
#pragma once

#include "models/measures/trust.h"

namespace gapstrain::models {

// Relative errors, the largest over the loads.
struct MeshError {
  double stiffness = 0.0;  // of the compliance: energy of the difference between raw and recovered stress
  double peak = 0.0;       // of the peak stress: jump of raw stress at the hottest node
};

// Recovery estimate of Zienkiewicz & Zhu 1987, Int J Numer Methods Eng 24:337, over plate and bone: squared energy
// norm of (recovered - raw) stress over the elastic energy of the construct.
MeshError estimate_mesh_error(const Assembly& assembly, const SolvedLoads& solved,
                              const std::vector<LoadFindings>& loads);

}  // namespace gapstrain::models
