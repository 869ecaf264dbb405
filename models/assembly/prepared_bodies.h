// The bodies of a construct, factored and condensed: what depends on its geometry alone, and costs seconds.
#pragma once

#include "models/assembly/fragment_meshes.h"
#include "models/assembly/plate_mesh.h"
#include "models/assembly/port_book.h"
#include "models/geometry/bone_shape.h"
#include "models/geometry/plate_shape.h"
#include "models/parts/construct.h"
#include "solver/bodies/body.h"

#include <array>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace gapstrain::models {

struct BuiltBody {
  std::string name;
  std::shared_ptr<const solver::Body> body;  // of the stiffness that it was factored with
  std::shared_ptr<const solver::Ports> ports;
  std::shared_ptr<const solver::Condensed> condensed;
  double stiffness = 1.0;  // of the construct's material over that of `body`
};

struct PreparedBodies {
  Construct construct;  // for which they were made
  std::vector<Screw> candidates;
  std::shared_ptr<const BoneShape> bone_shape;
  std::shared_ptr<const PlateShape> plate_shape;
  PlateMesh plate_mesh;
  Fragments fragments;       // probe 0 of each fragment: see Assembly
  PlateSample plate_sample;  // likewise of the plate
  std::array<BuiltBody, 3> bodies;
  PortWishes wishes;
  std::unique_ptr<const PortBook> ports;
};

// Whether two constructs with their candidates differ in nothing that their bodies depend on. Moduli of a body may
// all be larger or smaller by one factor; loads, contact, tissue, steps and forces of all kinds are free.
bool have_same_bodies(const Construct& one, const std::vector<Screw>& candidates_of_one, const Construct& other,
                      const std::vector<Screw>& candidates_of_other);

// The construct with its bones' and its plate's moduli scaled to those of another, for its bodies to be made with:
// constructs that have the same bodies then get the same to the last bit.
Construct with_moduli_of(const Construct& construct, const Construct& other);

// Meshes one body after another, factors in parallel. `progress` may be empty.
// @pre check() reports no error for the construct with any of the candidates.
// @throw TooLargeError, mesh::MeshError, solver::NotElasticError, ClampError
std::shared_ptr<const PreparedBodies> prepare_bodies(const Construct& construct,
                                                     const std::vector<Screw>& candidates,
                                                     const std::function<void(const std::string&)>& progress = {});

// The bodies with a construct's own moduli: compliances scaled, nothing factored again.
std::array<BuiltBody, 3> bodies_of(const PreparedBodies& prepared, const Construct& construct);

// Candidates, then the construct's wires, each with its place.
std::vector<PlannedScrew> plan_screws(const Construct& construct, const std::vector<Screw>& candidates,
                                      const PlateShape& plate_shape, const BoneShape& bone_shape);

}  // namespace gapstrain::models
