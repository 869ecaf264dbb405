#include "models/assembly/yield_sections.h"

#include "models/assembly/assembly.h"
#include "models/assembly/plate_bends.h"
#include "models/assembly/yield_curve.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace gapstrain::models {

namespace {

using Matrix6d = Eigen::Matrix<double, 6, 6>;

// Components along the axes of a section (columns), of force and of moment.
Matrix6d in_axes(const Eigen::Matrix3d& axes) {
  Matrix6d both = Matrix6d::Zero();
  both.topLeftCorner<3, 3>() = both.bottomRightCorner<3, 3>() = axes.transpose();
  return both;
}

// Of a solid round shaft.
solver::Resultants full_resultants(double diameter, double yield) {
  const double area = std::numbers::pi * diameter * diameter / 4.0, cube = std::pow(diameter, 3);
  const double shear = yield / std::sqrt(3.0);
  solver::Resultants full;
  full << yield * area, shear * area, shear * area, shear * std::numbers::pi * cube / 12.0, yield * cube / 6.0,
      yield * cube / 6.0;
  return full;
}

// Of two equal strips with a gap between them (a hole), or of one.
solver::Resultants full_resultants(double width, double hole, double thickness, double yield) {
  const double metal = width - hole, strips = hole > 0.0 ? 2.0 : 1.0;
  const double broad = std::max(metal / strips, thickness), thin = std::min(metal / strips, thickness);
  const double shear = yield / std::sqrt(3.0), area = metal * thickness;
  solver::Resultants full;
  full << yield * area, shear * area, shear * area, strips * shear * thin * thin / 2.0 * (broad - thin / 3.0),
      yield * metal * thickness * thickness / 4.0, yield * thickness * (width * width - hole * hole) / 4.0;
  return full;
}

// Section forces by the forces of a shaft's link.
Eigen::MatrixXd shaft_reading(const CandidateScrew& screw, const ShaftSegment& segment, Eigen::Index rows,
                              const Eigen::Vector3d& place) {
  const Eigen::Vector3d axis = screw.planned.placement.direction;
  Eigen::Matrix3d axes;
  axes << axis, screw.model.seat.col(0), screw.model.seat.col(1);
  const Matrix6d at_place = -solver::rigid_transfer(place, segment.to).transpose();
  Eigen::MatrixXd by_link(6, rows);
  for (Eigen::Index row = 0; row < rows; ++row) {
    const Eigen::VectorXd unit = Eigen::VectorXd::Unit(rows, row);
    by_link.col(row) = rows == 6 ? unit : forces_at_thread(screw.model, unit);
  }
  return in_axes(axes) * at_place * by_link;
}

// Half of a hole's length, in slices of the width beside it; `first`: along the plate from its centre.
std::vector<BarSlice> beside_hole(const PlateHole& hole, double width, double thickness, double yield) {
  constexpr int slices = 24;
  const double radius = hole.diameter.value() / 2.0, half = hole.slot_length.value() / 2.0;
  const double straight = std::max(half - radius, 0.0);
  std::vector<BarSlice> all;
  const auto add = [&](double length, double open) {
    all.push_back(
        {solver::BarSection::rectangle, length, thickness, yield * (width - open) * thickness * thickness / 4.0});
  };
  if (straight > 0.0) add(straight, 2.0 * radius);
  for (int k = 0; k < slices; ++k) {
    const double from_centre = radius * (k + 0.5) / slices;
    add(radius / slices, 2.0 * std::sqrt(radius * radius - from_centre * from_centre));
  }
  return all;
}

// Motion of a plate's ports (all its port motions x 6) as what lies beyond a place moves against the rest: along
// the section's axes, and about them.
Eigen::MatrixXd motion_beyond(const std::vector<PlatePort>& ports, Eigen::Index motions, double along,
                              const Eigen::Vector3d& centre, const Eigen::Matrix3d& axes) {
  Eigen::MatrixXd motion = Eigen::MatrixXd::Zero(motions, 6);
  for (const auto& port : ports) {
    if (port.along <= along) continue;
    motion.block<3, 3>(port.column, 0) = axes;
    for (int k = 0; k < 3; ++k) motion.block<3, 1>(port.column, 3 + k) = axes.col(k).cross(port.centre - centre);
    if (port.motions > 3) motion.block<3, 3>(port.column + 3, 3) = axes;
  }
  return motion;
}

// How the section's resultants read off all link forces: the work of each link's force on that motion.
void read_links(const solver::System& system, std::size_t body, const Eigen::MatrixXd& motion,
                solver::YieldSection& section) {
  std::vector<std::pair<Eigen::Index, Eigen::VectorXd>> columns;
  for (std::size_t link = 0; link < system.links().size(); ++link)
    for (const auto& end : system.links()[link].ends) {
      if (end.body != body) continue;
      const auto moved = motion.middleRows(end.column, end.transfer.rows());
      if (moved.isZero(0.0)) continue;
      const Eigen::MatrixXd reading = -(moved.transpose() * end.transfer);
      for (Eigen::Index k = 0; k < reading.cols(); ++k)
        columns.emplace_back(system.first_row(static_cast<int>(link)) + k, reading.col(k));
    }
  section.of_forces.resize(6, static_cast<Eigen::Index>(columns.size()));
  for (std::size_t k = 0; k < columns.size(); ++k) {
    section.rows.push_back(columns[k].first);
    section.of_forces.col(static_cast<Eigen::Index>(k)) = columns[k].second;
  }
}

}  // namespace

void add_screw_sections(const CandidateScrew& screw, int index, const solver::System& system,
                        YieldSections& sections) {
  const Screw& part = screw.planned.screw;
  if (!part.material.yield_strength) return;
  const double diameter = part.size.core_diameter.value();
  const solver::Resultants full = full_resultants(diameter, part.material.yield_strength->value());
  const auto add = [&](int link, const ShaftSegment& segment, const Eigen::Vector3d& place, double length) {
    const Eigen::Index size = system.links()[static_cast<std::size_t>(link)].size();
    solver::YieldSection section{
        part.label,
        {},
        shaft_reading(screw, segment, size, place),
        full,
        bending_curve({{solver::BarSection::circle, length, diameter, full(4)}}, part.material)};
    for (Eigen::Index k = 0; k < size; ++k) section.rows.push_back(system.first_row(link) + k);
    const auto& placement = screw.planned.placement;
    sections.places.push_back({index, part.plate, (place - placement.underside).dot(placement.direction)});
    sections.sections.push_back(std::move(section));
  };
  const auto add_both_ends = [&](int link, const ShaftSegment& segment, bool has_moment_at_head) {
    // A plastic hinge of a stout bar is about as long as the bar is deep (common practice, no source); of a short
    // one each end has half, but no less than a tenth of its depth: walls give way at their faces as well (ours).
    const double free = (segment.free_to - segment.free_from).norm();
    const double length = std::clamp(has_moment_at_head ? 0.5 * free : free, 0.1 * diameter, diameter);
    if (has_moment_at_head) add(link, segment, segment.free_from, length);
    add(link, segment, segment.free_to, length);
  };
  add_both_ends(screw.head, screw.model.head_to_thread, !is_tightened(part));  // a ball passes no moment on
  if (screw.far) add_both_ends(*screw.far, *screw.model.near_to_far, true);
}

void add_plate_sections(const Plate& plate, const PlateShape& shape, const std::vector<PlatePort>& ports,
                        std::size_t number, std::size_t body, const solver::System& system,
                        YieldSections& sections) {
  if (!plate.material.yield_strength) return;
  constexpr double beside = 1e-6;  // mm
  const double yield = plate.material.yield_strength->value();
  const Eigen::Index motions = system.bodies()[body]->compliance.rows();
  const auto add = [&](double along, double place, double open, const std::vector<BarSlice>& slices) {
    const auto surface = shape.mid_surface(place, 0.0);
    const Eigen::Matrix3d axes = section_axes(shape, place);
    solver::YieldSection section;
    section.name = "plate";
    section.full = full_resultants(shape.width(place), open, shape.thickness(place), yield);
    section.curve = bending_curve(slices, plate.material);
    read_links(system, body, motion_beyond(ports, motions, along, surface.position, axes), section);
    sections.places.push_back({std::nullopt, number, place});
    sections.sections.push_back(std::move(section));
  };
  double bridge_from = 0.0;
  const auto add_bridge = [&](double to) {
    if (to <= bridge_from) return;
    const double middle = 0.5 * (bridge_from + to);
    const double thickness = shape.thickness(middle);
    add(middle, middle, 0.0,
        {{solver::BarSection::rectangle, to - bridge_from, thickness,
          yield * shape.width(middle) * thickness * thickness / 4.0}});
  };
  for (const auto& hole : plate.holes) {
    const double centre = hole.position.value(), half = hole.slot_length.value() / 2.0;
    if (&hole != &plate.holes.front()) add_bridge(centre - half);
    const auto slices = beside_hole(hole, shape.width(centre), shape.thickness(centre), yield);
    for (const double side : {-beside, beside}) add(centre + side, centre, hole.diameter.value(), slices);
    bridge_from = centre + half;
  }
}

}  // namespace gapstrain::models
