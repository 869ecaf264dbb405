// A construct made ready to solve: bodies factored and condensed, every screw that may be asked about as links.
#pragma once

#include "models/build/fragment_meshes.h"
#include "models/build/load_setup.h"
#include "models/build/planned_screw.h"
#include "models/build/plate_mesh.h"
#include "models/build/screw_links.h"
#include "models/parts/bone_shape.h"
#include "models/parts/construct.h"
#include "models/parts/plate_shape.h"
#include "solver/bodies/system.h"

#include <array>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace gapstrain::models {

// Indices of the construct's bodies.
enum BodyIndex { plate_body = 0, proximal_body = 1, distal_body = 2 };

struct BuiltBody {
  std::string name;
  std::unique_ptr<solver::Body> body;
  solver::Ports ports;
  std::unique_ptr<const solver::Condensed> condensed;  // at a place of its own: the system refers to it
};

// A screw in the assembly: its mechanics and its links among the system's.
struct CandidateScrew {
  PlannedScrew planned;
  ScrewModel model;
  std::vector<int> links;  // head plug, head to near cortex, near to far cortex (when there is one)
};

struct AssembledLoad {
  std::string name;
  std::vector<int> supports;  // links
  solver::PortLoads forces;   // one load case
};

struct Assembly {
  Construct construct;
  std::unique_ptr<BoneShape> bone_shape;
  std::unique_ptr<PlateShape> plate_shape;
  PlateMesh plate_mesh;
  Fragments fragments;  // probe 0 of each fragment: motion of its fracture edge at mid-cortex, (3 x nodes)
  // Nodes of the plate whose stress is read for any layout without a full recovery: every rim, and a sample
  // elsewhere. Probe 0 of the plate reads them on the top face, probe 1 on the bottom face, (3 x nodes).
  std::vector<int> plate_sample;
  std::array<BuiltBody, 3> bodies;
  std::vector<CandidateScrew> screws;
  std::vector<int> tissue_links;
  LoadPorts load_ports;
  std::unique_ptr<solver::System> system;
  std::vector<AssembledLoad> loads;              // the construct's
  std::array<AssembledLoad, 4> stiffness_loads;  // unit_loads, in that order

  // Links of a choice of screws with the tissue and a load's supports.
  std::vector<int> active_links(const std::vector<int>& chosen, const AssembledLoad& load) const;
};

// Builds the bodies with ports for all `candidates` (those of construct.screws among them, in any order). Meshes
// one after another, factors in parallel. `progress` may be empty.
// @pre check() reports no error for the construct with any of the candidates.
// @throw mesh::MeshError, solver::NotElasticError
Assembly assemble(const Construct& construct, const std::vector<Screw>& candidates,
                  const std::function<void(const std::string&)>& progress = {});

}  // namespace gapstrain::models
