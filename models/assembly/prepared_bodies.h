// The bodies of a construct, factored and condensed: what depends on its geometry alone, and costs seconds.
#pragma once

#include "models/assembly/meshes.h"
#include "models/assembly/port_book.h"
#include "models/geometry/bone_shape.h"
#include "models/geometry/plate_shape.h"
#include "models/parts/construct.h"
#include "solver/bodies/body.h"

#include <memory>
#include <string>
#include <vector>

namespace gapstrain::models {

struct BuiltBody {
  std::string name;
  // Of the stiffness that it was factored with. Fields over a whole body need it; links, and what is read off
  // forces alone, do not: nothing where bodies were read from a file without factoring them again.
  std::shared_ptr<const solver::Body> body;
  std::shared_ptr<const solver::Ports> ports;
  std::shared_ptr<const solver::Condensed> condensed;
  double stiffness = 1.0;  // of the construct's material over that of `body`
};

// A plate as it lies on the bone.
struct LaidPlate {
  std::shared_ptr<const PlateShape> shape;
  PlateMesh mesh;
  // Nodes whose stress is read for any layout without a full recovery: every rim, and a sample elsewhere. Probe 0
  // of the plate's body reads them on the top face, probe 1 on the bottom face, (3 x nodes).
  PlateSample sample;
};

struct PreparedBodies {
  Construct construct;  // for which they were made
  std::vector<Screw> candidates;
  std::shared_ptr<const BoneShape> bone_shape;
  std::vector<LaidPlate> plates;
  std::vector<Fragment> fragments;  // from proximal to distal
  std::vector<BuiltBody> bodies;    // by number, see body_numbers.h
  PortWishes wishes;
  PortBook ports;
};

// Which of a fragment's probes reads the motion of an edge at mid-cortex, (3 x nodes): one an edge that it has,
// the proximal one first. `edge`: &Fragment::proximal_edge or &Fragment::distal_edge. @pre the fragment has it
inline std::size_t edge_probe(const Fragment& fragment, std::optional<FractureEdge> Fragment::*edge) {
  return edge == &Fragment::distal_edge && fragment.proximal_edge ? 1 : 0;
}

// Whether two constructs with their candidates differ in nothing that their bodies depend on. Moduli of a body may
// all be larger or smaller by one factor; loads, contact, tissue, steps and forces of all kinds are free.
bool have_same_bodies(const Construct& one, const std::vector<Screw>& candidates_of_one, const Construct& other,
                      const std::vector<Screw>& candidates_of_other);

// The construct with its bones' and its plates' moduli scaled to those of another, for its bodies to be made with:
// constructs that have the same bodies then get the same to the last bit.
Construct with_moduli_of(const Construct& construct, const Construct& other);

// The bodies with a construct's own moduli: compliances scaled, nothing factored again.
std::vector<BuiltBody> bodies_of(const PreparedBodies& prepared, const Construct& construct);

// Candidates, then the construct's wires, each with its place.
std::vector<PlannedScrew> plan_screws(const Construct& construct, const std::vector<Screw>& candidates,
                                      const std::vector<std::shared_ptr<const PlateShape>>& plate_shapes,
                                      const BoneShape& bone_shape);

// What follows from a construct before anything is meshed: shapes, places of screws and rollers, room for all
// bodies.
PreparedBodies lay_out(const Construct& construct, const std::vector<Screw>& candidates);

// Before they are factored, by number. @pre meshes are there
std::vector<solver::Shell> shells_of(const PreparedBodies& prepared);

std::vector<std::shared_ptr<const PlateShape>> shapes_of(const std::vector<LaidPlate>& plates);

}  // namespace gapstrain::models
