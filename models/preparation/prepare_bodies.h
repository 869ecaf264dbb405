// Meshes, factors and condenses the bodies of a construct: what needs a mesher, and takes seconds.
#pragma once

#include "models/assembly/assembly.h"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace gapstrain::models {

// Meshes one body after another, factors side by side. `progress` may be empty.
// @pre check() reports no error for the construct with any of the candidates.
// @throw TooLargeError, mesh::MeshError, solver::NotElasticError, ClampError, NoBoneError
std::shared_ptr<const PreparedBodies> prepare_bodies(const Construct& construct,
                                                     const std::vector<Screw>& candidates,
                                                     const std::function<void(const std::string&)>& progress = {});

// The construct on bodies made for it.
Assembly assemble(const Construct& construct, const std::vector<Screw>& candidates,
                  const std::function<void(const std::string&)>& progress = {});

}  // namespace gapstrain::models
