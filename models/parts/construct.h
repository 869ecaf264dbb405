// Everything the surgeon decides, in one value.
#pragma once

#include "models/parts/bone.h"
#include "models/parts/contact.h"
#include "models/parts/estimate.h"
#include "models/parts/fracture.h"
#include "models/parts/healing.h"
#include "models/parts/layout_rules.h"
#include "models/parts/loading.h"
#include "models/parts/only.h"
#include "models/parts/plate.h"
#include "models/parts/screw.h"
#include "models/parts/step.h"
#include "models/parts/stock.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// Mesh density. Defaults are the ones the proofs are run with.
struct MeshDensity {
  double refinement = 1.0;                                               // divides every element size below
  int rim_elements = 48;                                                 // round each plate hole, at refinement 1
  static constexpr int least_rim_elements = 8, most_rim_elements = 128;  // that are allowed
  bool operator==(const MeshDensity&) const = default;
};

struct Construct {
  std::string name;
  std::optional<Mass> body_mass;  // only for plausibility
  Bone bone;
  std::vector<Plate> plates = std::vector<Plate>(1);
  std::vector<Screw> screws;
  std::vector<TemporaryHold> temporary;
  std::vector<Step> steps;  // empty: every screw is inserted and tightened in the order of `screws`
  Contact contact;
  MetalLaw metal_law = MetalLaw::elastic;        // of plates and screws
  double screw_interface = bonded_interface;     // local stiffness of screws in bone, of those without their own
  std::vector<InterfaceStage> interface_course;  // how it softens then, by rising weeks; empty: it stays
  SecondOrderEffects second_order = SecondOrderEffects::automatic;
  std::vector<Fracture> fractures = std::vector<Fracture>(1);  // by rising position: one fragment more than these
  std::vector<LoadCase> loads;
  MeshDensity mesh;
  std::optional<LayoutRules> layouts;  // what else its screws may be
  std::optional<Healing> healing;      // absent: the race between bone and plate is not run
  Stock stock;
  std::vector<Estimate> estimated;  // what of all this was not measured
};

enum class Severity { error, warning };

// One thing that is wrong or implausible, at the part it concerns ("screw[2].hole", indices from 0).
struct Problem {
  Severity severity;
  std::string where;
  std::string message;  // what was found, what is allowed, how to mend it
};

// Holds the construct against itself: a construct without errors can be built and solved.
std::vector<Problem> check(const Construct& construct);

}  // namespace gapstrain::models
