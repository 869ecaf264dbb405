// One load on one choice of screws, solved; and the whole field of that answer.
#pragma once

#include "models/build/assembly.h"
#include "models/findings/analyse.h"

#include <Eigen/Core>

#include <array>
#include <vector>

namespace gapstrain::models {

// @throw ModelError naming the body that nothing holds.
solver::Solution solve_load(const Assembly& assembly, const std::vector<int>& chosen, const AssembledLoad& load);

// Displacements of all nodes of all bodies, six a node, a column for each solution. (6n x solutions) a body
std::array<Eigen::MatrixXd, 3> recover_displacements(const Assembly& assembly,
                                                     const std::vector<solver::Solution>& solutions);

// Positions in assembly.screws of the given screws. @pre all of them were candidates.
std::vector<int> chosen_screws(const Assembly& assembly, const std::vector<Screw>& screws);

// Same hole, direction, cortices and kind: one candidate serves both.
bool same_place(const Screw& one, const Screw& other);

// Forces of a link in a solution; nothing when it took no part. (k)
Eigen::VectorXd link_force(const solver::Solution& solution, int link);

}  // namespace gapstrain::models
