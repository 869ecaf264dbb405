// A construct made ready to solve: bodies factored and condensed, every screw that may be asked about as links,
// every hold, every tissue, every pair of spots that may touch.
#pragma once

#include "models/assembly/body_numbers.h"
#include "models/assembly/load_setup.h"
#include "models/assembly/prepared_bodies.h"
#include "models/assembly/screw_links.h"
#include "models/assembly/yield_sections.h"
#include "models/geometry/bone_shape.h"
#include "models/geometry/plate_shape.h"
#include "models/parts/construct.h"
#include "solver/bodies/axial_slopes.h"
#include "solver/bodies/pressed.h"
#include "solver/bodies/system.h"
#include "solver/motion/turning_body.h"

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// A screw in the assembly: its mechanics and its links among the system's.
struct CandidateScrew {
  PlannedScrew planned;
  ScrewModel model;
  Eigen::Vector3d seat;     // centre of the port its head sits on
  int head = 0;             // from the head's seat, or its hole's rim, to the first cortex held
  std::optional<int> plug;  // locking head in its hole
  std::optional<int> far;   // near to far cortex
  std::vector<int> links;   // all of these
};

// A temporary hold. A wire is a screw that is held sideways only.
struct Hold {
  TemporaryHold hold;
  std::optional<CandidateScrew> wire;
  std::array<Eigen::Vector3d, 2> ends;  // mm
  std::vector<int> links;               // of a clamp: one row, tension presses
};

// Tissue that may fill the gap.
struct TissueFilling {
  Tissue tissue;
  std::vector<int> links;  // one a spot, in the order of Assembly::face
  bool is_of(const Tissue& other) const {
    return tissue.name == other.name && tissue.youngs_modulus == other.youngs_modulus;
  }
};

// A pair of spots of the fracture's faces, and of the plate's underside on the bone.
struct FaceSpot {
  std::size_t fracture = 0;
  double around = 0.0;  // rad
  bool outer = true;
  double area = 0.0;  // mm^2
};
struct UndersidePlace {
  std::size_t plate = 0, fragment = 0;
  double along = 0.0;  // on the plate, mm
  double gap = 0.0;    // as contoured, before any prebend, mm
};

// A port of the plate: where forces act on it.
struct PlatePort {
  double along = 0.0;  // on the plate, mm
  Eigen::Vector3d centre;
  Eigen::Index column = 0, motions = 0;
};

struct AssembledLoad {
  std::string name;
  std::vector<int> supports;  // links
  solver::PortLoads forces;   // one load case
  solver::System::LoadAlone alone;
  std::vector<LoadArm> arms;
  std::shared_ptr<const solver::AxialSlopes> axes;  // for its second-order effects; null: there are to be none
};

struct Assembly {
  Construct construct;
  std::shared_ptr<const BoneShape> bone_shape;
  std::vector<LaidPlate> plates;
  std::vector<Fragment> fragments;  // from proximal to distal
  std::vector<BuiltBody> bodies;    // by number, see body_numbers.h
  std::vector<CandidateScrew> screws;
  std::vector<Hold> holds;
  std::vector<TissueFilling> tissues;      // the fracture's own first, when it has one
  std::vector<solver::ContactPair> pairs;  // of `face`, then of `underside`
  std::vector<FaceSpot> face;
  // Pairs of `face` next to each place of the only fracture's edge, then next to 0 and to 180 degrees.
  std::vector<std::vector<int>> face_next_to;
  std::vector<UndersidePlace> underside;
  std::vector<std::vector<PlatePort>> plate_ports;  // of each plate
  LoadPorts load_ports;
  std::unique_ptr<solver::System> system;
  AssembledLoad on_the_table;                    // nothing but the proximal end held: while the construct is made
  std::vector<AssembledLoad> loads;              // the construct's
  std::array<AssembledLoad, 4> stiffness_loads;  // unit_loads, in that order
  YieldSections yields;                          // none while metals are to stay elastic
  std::vector<solver::TurningBody> turning;      // by number, for large turns; empty: there are to be none
};

// Links the bodies for all `candidates` (those of construct.screws among them, in any order).
// `more_tissues`: that may fill the gap besides the construct's own.
// @pre have_same_bodies of what it was made for
Assembly assemble(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                  const std::vector<Screw>& candidates, const std::vector<Tissue>& more_tissues = {});

}  // namespace gapstrain::models
