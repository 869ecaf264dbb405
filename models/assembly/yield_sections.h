// Sections of screws and plates that yield, as readings of the links' forces.
//
// A shaft yields where it leaves a wall, at either end of its free length: moments are largest there. A plate
// yields at its holes and between them. Cut at a section and turned there, a floating plate carries nothing by
// itself, so what yields moves the ports beyond the section as a rigid body: columns on their links, whose work is
// that of the section's force and moment.
#pragma once

#include "models/geometry/plate_shape.h"
#include "models/parts/construct.h"
#include "solver/bodies/link.h"
#include "solver/bodies/system.h"
#include "solver/bodies/yield_section.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace gapstrain::models {

struct CandidateScrew;
struct PlatePort;

// Where a section is.
struct YieldPlace {
  std::optional<int> screw{};  // position in Assembly::screws; none: on a plate
  std::size_t plate = 0;
  double along = 0.0;  // on the plate; or along the screw from where its axis leaves the plate, mm
};

struct YieldSections {
  std::vector<YieldPlace> places;
  std::vector<solver::YieldSection> sections;  // likewise
};

// Both ends of each free length of a shaft; none of a metal without yield strength. `index`: its position in
// Assembly::screws.
void add_screw_sections(const CandidateScrew& screw, int index, const solver::System& system,
                        YieldSections& sections);

// Either side of each hole, where the head of a screw may enter a moment, and the middle of each bridge between
// two; a hole's metal is what is left beside it, filled or not. `body`: the plate's among the system's.
void add_plate_sections(const Plate& plate, const PlateShape& shape, const std::vector<PlatePort>& ports,
                        std::size_t number, std::size_t body, const solver::System& system,
                        YieldSections& sections);

}  // namespace gapstrain::models
