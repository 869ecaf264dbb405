// Interfragmentary motion and strain round the fracture edge.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

namespace gapstrain::models {

// Motion of the fracture edge at mid-cortex, distal against proximal, at the nodes in the order of
// Fragment::edge, seen by somebody who turns with both edges by the mean of their turns: the same wherever the
// construct is held. (nodes x 3)
Eigen::MatrixX3d edge_motions(const Assembly& assembly, const std::vector<Eigen::MatrixXd>& port_forces,
                              const Eigen::VectorXd& amplitudes);
Eigen::MatrixX3d edge_motions(const Assembly& assembly, const ConstructState& state);

// Under a load, against the construct as it was made.
GapFindings measure_gap(const Assembly& assembly, const ConstructState& made, const ConstructState& loaded);

// The same from what touches in both states, and the edge's motions `before` and `after`.
GapFindings measure_gap(const Assembly& assembly, const solver::PressedForces& made,
                        const solver::PressedForces& loaded, const Eigen::MatrixX3d& before,
                        const Eigen::MatrixX3d& after);

// Perren's windows by strain magnitude: 2 %, 10 %, 100 %. Perren 1979, Clin Orthop 138:175 (limits as quoted in
// surgical texts). Points without a strain are closed.
PerrenWindows perren_windows(const std::vector<GapPoint>& edge);

}  // namespace gapstrain::models
