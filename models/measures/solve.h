// A construct made and loaded; and the whole field of an answer.
#pragma once

#include "models/findings/model_error.h"
#include "models/loaded/apply_load.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::models {

// The sentence for a motion that nothing resists, under a load of that name (empty: any).
ModelError free_to_move(const Assembly& assembly, const solver::MechanismError& error, const std::string& load);

// The construct under a load, on top of how it was made. @throw ModelError naming the body that nothing holds.
ConstructState solve_load(const Assembly& assembly, const ConstructState& made, const AssembledLoad& load,
                          Metals metals = Metals::as_given);

// Answer to a small load on the construct as it was made: what touches goes on touching. @throw ModelError
solver::Solution solve_small_load(const Assembly& assembly, const ConstructState& made, const AssembledLoad& load);

// Displacements of all nodes of all bodies, six a node, a column for each solution. (6n x solutions) a body
std::vector<Eigen::MatrixXd> recover_displacements(const Assembly& assembly,
                                                   const std::vector<solver::Solution>& solutions);

// Positions in assembly.screws of the given screws. @pre all of them were candidates.
std::vector<int> chosen_screws(const Assembly& assembly, const std::vector<Screw>& screws);

// Same hole, direction, cortices and kind: one candidate serves both.
bool same_place(const Screw& one, const Screw& other);

bool has_place(const std::vector<Screw>& screws, const Screw& screw);
// Appends those whose place is not there yet.
void add_places(std::vector<Screw>& screws, const std::vector<Screw>& more);

// Forces of a link in a solution; nothing when it took no part. (k)
Eigen::VectorXd link_force(const solver::Solution& solution, int link);

}  // namespace gapstrain::models
