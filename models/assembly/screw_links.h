// A screw as links: head in its seat, shaft from head to the first cortex it is threaded in, shaft on to the far
// one.
#pragma once

#include "models/geometry/plate_shape.h"
#include "models/parts/construct.h"
#include "solver/bodies/link.h"
#include "solver/elements/beam.h"

#include <optional>

namespace gapstrain::models {

// A straight piece of shaft between two walls it is bonded to, or a ball seat and a wall: where it is free, and
// how soft it is as seen from the points it joins.
struct ShaftSegment {
  Eigen::Vector3d from;         // port centre on the side of the head; of a ball head the ball's centre
  Eigen::Vector3d to;           // port centre on the side of the tip
  Eigen::Vector3d free_from;    // where the shaft leaves the first wall
  Eigen::Vector3d free_to;      // where it enters the second one
  solver::Matrix6 flexibility;  // of the motion of `to` against `from`, the walls' roots and interfaces included
};

struct ScrewModel {
  solver::BeamSection section;
  ShaftSegment head_to_thread;              // to the near cortex; of a lag screw to the far one
  std::optional<ShaftSegment> near_to_far;  // absent with one cortex held
  // Locking: flexibility of the head in its hole against the rim's strain modes.
  std::optional<Eigen::Matrix<double, 6, 6>> plug;
  // Ball head: columns along the plate towards distal, across it, and from head to tip; unit.
  Eigen::Matrix3d seat;
  // What the interface gives between the shaft in the near cortex and that cortex, about its middle: part of both
  // segments' flexibility, and shared by their links. Zero when bonded.
  solver::Matrix6 near_give = solver::Matrix6::Zero();
};

// `near_wall`, `far_wall`: along the screw. Its interface is its own, else the construct's.
// @pre placement.bone has a value.
ScrewModel model_screw(const Screw& screw, const ScrewPlacement& placement, const Construct& construct,
                       double plate_thickness, double near_wall, double far_wall);

// Flexibility of a head that fills a rim, against the rim's six strain modes (solver/bodies/port.h).
//
// The head is a disk, stiffness pi a^2 t C against uniform strain and pi a^2 t^3/12 T C T against uniform
// curvature, T = diag(1, 1, 2) for kappa_12 = w,12. The shaft that stands on its underside holds it there over the
// shaft's own section, like a layer of metal of depth delta at the height h = t/2 from the middle: it resists the
// strain there, eps + h T kappa. Depths in shaft radii: 0.145 for strain alike in all directions, 0.24 for the
// rest (own three-dimensional unit cell of a disk with a shaft of its own metal, for radii of disk over shaft
// of 1.25 to 1.54). `rim_radius`, `thickness`: of the disk; `shaft_radius`: of the core, mm.
Eigen::Matrix<double, 6, 6> plug_flexibility(double rim_radius, double thickness, double shaft_radius,
                                             double youngs_modulus, double poissons_ratio);

// Where a port of six motions sits among the construct's bodies.
struct PortPlace {
  std::size_t body = 0;  // by its number, see body_numbers.h
  Eigen::Index column = 0;
};

solver::Link shaft_link(const std::string& name, const ShaftSegment& segment, PortPlace from, PortPlace to);
solver::Link plug_link(const std::string& name, const Eigen::Matrix<double, 6, 6>& flexibility, PortPlace hole);

// Motion of a ball head's shaft against its seat, in the seat's axes: along, across, and (unless `sideways_only`,
// as a wire is held) out of it. `seat_centre`: what the seat's port turns about.
solver::Link ball_link(const std::string& name, const ScrewModel& model, PortPlace seat,
                       const Eigen::Vector3d& seat_centre, PortPlace thread, bool sideways_only);

// The shaft goes on through the near cortex: what the links on either side of it put into that cortex moves both.
// Of the head's link with so many rows and of the one to the far cortex; nothing when it is bonded, or ends there.
std::optional<Eigen::MatrixXd> shared_give(const ScrewModel& model, Eigen::Index head_rows);

// The link's forces as the six that a bonded segment's link would have (on `to`, about it).
Eigen::VectorXd forces_at_thread(const ScrewModel& model, const Eigen::VectorXd& head_link);

}  // namespace gapstrain::models
