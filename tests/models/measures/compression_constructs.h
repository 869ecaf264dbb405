// A plated tube that is put together under compression.
#pragma once

#include "tests/models/constructs.h"

#include <string>
#include <vector>

namespace gapstrain::tests {

// Two locking screws in the proximal fragment (P1 outside, P2), a compression screw C in a slot of the distal one,
// a locking screw L further out, and a wire W in the outermost hole. The plate lies on the bone and the faces meet
// without a gap; nothing rubs. `steps` are left to the test.
inline models::Construct compression_tube() {
  using namespace models;
  TubeSizes sizes;
  sizes.gap = 0.0;
  sizes.standoff = 0.0;
  sizes.metal_modulus = 190000.0;
  sizes.screws = {0, 2};
  Construct construct = plated_tube(sizes);
  construct.mesh.refinement = 0.7;
  construct.contact.friction = FrictionLaw::none;
  for (std::size_t k = 0; k < construct.screws.size(); ++k) {
    Screw& screw = construct.screws[k];
    screw.label = std::vector<std::string>{"P1", "P2", "C", "L"}[k];
    if (screw.label != "C") continue;
    PlateHole& hole = only(construct.plates).holes[static_cast<std::size_t>(screw.hole - 1)];
    hole.shape = HoleShape::slot;
    hole.slot_length = 1.6 * hole.diameter;
    screw.kind = ScrewKind::compression;
    screw.preload = 300.0 * newton;
  }
  construct.screws[2].slide = 0.05 * mm;
  TemporaryHold wire;
  wire.label = "W";
  wire.kind = HoldKind::wire;
  wire.hole = 10;
  wire.diameter = 2.0 * mm;
  construct.temporary = {wire};
  return construct;
}

// Cortical screws all through on a plate that lies on the bone; the innermost distal one slides.
inline models::Construct pressed_tube() {
  using namespace models;
  TubeSizes sizes;
  sizes.gap = 0.05;
  sizes.standoff = 0.0;
  sizes.metal_modulus = 190000.0;
  Construct construct = plated_tube(sizes);
  construct.mesh.refinement = 0.6;
  for (auto& hole : only(construct.plates).holes) {
    hole.shape = HoleShape::slot;
    hole.slot_length = 1.7 * hole.diameter;
  }
  for (auto& screw : construct.screws) {
    screw.kind = ScrewKind::cortical;
    screw.preload = 400.0 * newton;
    screw.size.thread_diameter = 3.5 * mm;
    screw.size.pitch = 1.25 * mm;
    screw.material.yield_strength.reset();
  }
  construct.screws[3].kind = ScrewKind::compression;
  construct.screws[3].slide = 0.2 * mm;
  return construct;
}

// "P1" locks, "C!" inserts and tightens, "+W" places, "-W" takes out.
inline std::vector<models::Step> steps_of(const std::vector<std::string>& moves) {
  std::vector<models::Step> steps;
  for (const auto& move : moves) {
    models::Step step;
    const std::string label = move.front() == '+' || move.front() == '-' ? move.substr(1) : move;
    if (move.front() == '+')
      step.place = {label};
    else if (move.front() == '-')
      step.remove = {label};
    else
      step.insert = {label};
    if (label == "C") step.tighten = step.insert;
    steps.push_back(std::move(step));
  }
  return steps;
}

}  // namespace gapstrain::tests
