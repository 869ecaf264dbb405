#include "tests/models/catalogue/transformed.h"

#include <algorithm>
#include <cassert>
#include <numbers>
#include <utility>

namespace gapstrain::tests {

using namespace models;  // NOLINT: this file is nothing but parts

namespace {

// Whether a bow towards lateral, rather than one towards cranial, is along y of a plate on this face.
bool is_lateral_sideways(Aspect aspect) { return aspect == Aspect::cranial || aspect == Aspect::caudal; }

}  // namespace

Construct mirrored(const Construct& construct) {
  Construct other = construct;
  for (auto& station : other.bone.stations) {
    Length& sideways =
        is_lateral_sideways(only(construct.plates).aspect) ? station.bow_lateral : station.bow_cranial;
    sideways = -sideways;
  }
  for (auto& screw : other.screws) screw.tilt_across = -screw.tilt_across;
  Fracture& fracture = only(other.fractures);
  fracture.direction = -fracture.direction;
  for (auto& load : other.loads) {
    assert(!load.line && load.forces.empty() && !load.four_point);
    load.ball_offset_y = -load.ball_offset_y;
    load.transverse_y = -load.transverse_y;
    load.bending_z = -load.bending_z;
    load.torsion = -load.torsion;
  }
  return other;
}

Construct reversed(const Construct& construct) {
  Construct other = construct;
  const Length bone = construct.bone.length, length = only(construct.plates).length;
  for (auto& station : other.bone.stations) {
    station.position = bone - station.position;
    Length& sideways =
        is_lateral_sideways(only(construct.plates).aspect) ? station.bow_lateral : station.bow_cranial;
    sideways = -sideways;
  }
  std::reverse(other.bone.stations.begin(), other.bone.stations.end());
  Plate& plate = only(other.plates);
  plate.proximal_end = bone - plate.proximal_end - length;
  for (auto& section : plate.sections) section.position = length - section.position;
  for (auto& hole : plate.holes) hole.position = length - hole.position;
  std::reverse(plate.sections.begin(), plate.sections.end());
  std::reverse(plate.holes.begin(), plate.holes.end());
  for (auto& screw : other.screws) {
    assert(screw.hole > 0);
    screw.hole = static_cast<int>(plate.holes.size()) + 1 - screw.hole;
    screw.tilt_along = -screw.tilt_along;
    screw.tilt_across = -screw.tilt_across;
  }
  Fracture& fracture = only(other.fractures);
  fracture.position = bone - fracture.position;
  fracture.direction = std::numbers::pi * radian - fracture.direction;
  for (auto& load : other.loads) {
    assert(!load.line && load.forces.empty() && !load.four_point);
    std::swap(load.supports.proximal, load.supports.distal);
    load.ball_offset_y = -load.ball_offset_y;
    load.transverse_y = -load.transverse_y;
    load.bending_z = -load.bending_z;
  }
  return other;
}

Construct scaled(const Construct& construct, double size) {
  Construct other = construct;
  const double force = size * size, moment = force * size;
  other.bone.length *= size;
  for (auto& station : other.bone.stations)
    for (Length* length : {&station.position, &station.width_mediolateral, &station.width_craniocaudal,
                           &station.cortex, &station.bow_lateral, &station.bow_cranial})
      *length *= size;
  Plate& plate = only(other.plates);
  for (Length* length : {&plate.length, &plate.proximal_end, &plate.standoff, &plate.prebend}) *length *= size;
  for (auto& section : plate.sections)
    for (Length* length : {&section.position, &section.width, &section.thickness}) *length *= size;
  for (auto& hole : plate.holes)
    for (Length* length : {&hole.position, &hole.diameter, &hole.slot_length}) *length *= size;
  for (auto& screw : other.screws) {
    for (Length* length : {&screw.size.thread_diameter, &screw.size.core_diameter, &screw.size.pitch})
      *length *= size;
    if (screw.slide) *screw.slide *= size;
    if (screw.preload) *screw.preload *= force;
    if (screw.insertion_torque) *screw.insertion_torque *= moment;
  }
  only(other.fractures).position *= size;
  only(other.fractures).gap *= size;
  for (auto& load : other.loads) {
    for (Length* length : {&load.ball_distance, &load.ball_offset_y, &load.ball_offset_z}) *length *= size;
    for (Force* part : {&load.axial_compression, &load.transverse_y, &load.transverse_z}) *part *= force;
    for (Moment* part : {&load.bending_y, &load.bending_z, &load.torsion}) *part *= moment;
  }
  return other;
}

Construct refined(const Construct& construct, double times) {
  Construct other = construct;
  other.mesh.refinement *= times;
  return other;
}

}  // namespace gapstrain::tests
