#include "models/findings/screw_forces.h"

#include "models/findings/solve.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

// A screw's own axes: along the plate, across it, and its axis from the tip's to the head's side.
struct ScrewAxes {
  Eigen::Vector3d x, y, z;
};

ScrewAxes screw_axes(const Eigen::Vector3d& direction) {
  const Eigen::Vector3d z = -direction;
  const Eigen::Vector3d x = (Eigen::Vector3d::UnitX() - z.x() * z).normalized();
  return {x, z.cross(x), z};
}

}  // namespace

// The link's forces act on the shaft at `segment.to`, so the piece between is in balance with minus those.
ShaftForce shaft_force(const ShaftSegment& segment, const Eigen::VectorXd& link, const Eigen::Vector3d& place) {
  const Eigen::Vector3d force = -link.head<3>();
  return {force, -link.tail<3>() + (segment.to - place).cross(force)};
}

ShaftStress shaft_stress(const ShaftForce& force, const Eigen::Vector3d& axis, double radius) {
  const double area = std::numbers::pi * radius * radius;
  const double inertia = area * radius * radius / 4.0;
  const double torsion = force.moment.dot(axis);
  const double bending = (force.moment - torsion * axis).norm();
  ShaftStress stress;
  stress.direct = std::abs(force.force.dot(axis)) / area + bending * radius / inertia;
  stress.equivalent = std::hypot(stress.direct, std::sqrt(3.0) * torsion * radius / (2.0 * inertia));
  return stress;
}

ShaftPeak shaft_peak(const Assembly& assembly, const CandidateScrew& candidate, const Eigen::VectorXd& forces) {
  const auto& placement = candidate.planned.placement;
  const double radius = candidate.planned.screw.size.core_diameter.value() / 2.0;
  const Eigen::Vector3d up = -placement.direction;
  const solver::System& system = *assembly.system;
  const auto of_link = [&](int link) -> Eigen::VectorXd {
    return forces.segment(system.first_row(link), system.links()[static_cast<std::size_t>(link)].size());
  };
  ShaftPeak peak;
  const auto look_at = [&](const ShaftSegment& segment, const Eigen::VectorXd& link) {
    for (const auto& end : {segment.free_from, segment.free_to}) {
      const ShaftStress stress = shaft_stress(shaft_force(segment, link, end), up, radius);
      peak.direct = std::max(peak.direct, stress.direct);
      peak.equivalent = std::max(peak.equivalent, stress.equivalent);
    }
  };
  const ShaftSegment& head = candidate.model.head_to_thread;
  const Eigen::VectorXd head_link = forces_at_thread(candidate.model, of_link(candidate.head));
  look_at(head, head_link);
  if (candidate.far) look_at(*candidate.model.near_to_far, of_link(*candidate.far));
  peak.axial_at_head = shaft_force(head, head_link, placement.underside).force.dot(up);
  return peak;
}

std::vector<ScrewFindings> measure_screws(const Assembly& assembly, const std::vector<int>& chosen,
                                          const solver::Solution& solution) {
  constexpr int steps = 8;  // stations a free length
  std::vector<ScrewFindings> all;
  for (const int index : chosen) {
    const CandidateScrew& candidate = assembly.screws[static_cast<std::size_t>(index)];
    const auto& placement = candidate.planned.placement;
    const ScrewAxes axes = screw_axes(placement.direction);
    const double radius = candidate.planned.screw.size.core_diameter.value() / 2.0;

    ScrewFindings findings;
    findings.label = candidate.planned.screw.label;
    findings.hole = candidate.planned.screw.hole;
    ShaftStress peak;
    const auto add_stations = [&](const ShaftSegment& segment, const Eigen::VectorXd& link) {
      for (int step = 0; step <= steps; ++step) {
        const Eigen::Vector3d place =
            segment.free_from + (segment.free_to - segment.free_from) * (static_cast<double>(step) / steps);
        const ShaftForce cut = shaft_force(segment, link, place);
        const auto& [force, moment] = cut;
        // On the tip's side of the cut the outward normal is +z (towards the head), so tension is +z force.
        const double axial = force.dot(axes.z);
        const double bending = std::hypot(moment.dot(axes.x), moment.dot(axes.y));
        const double torsion = moment.dot(axes.z);
        findings.stations.push_back({(place - placement.underside).dot(placement.direction) * mm, axial * newton,
                                     std::hypot(force.dot(axes.x), force.dot(axes.y)) * newton,
                                     bending * newton_mm, torsion * newton_mm});
        const ShaftStress stress = shaft_stress(cut, axes.z, radius);
        peak.direct = std::max(peak.direct, stress.direct);
        peak.equivalent = std::max(peak.equivalent, stress.equivalent);
      }
    };
    const ShaftSegment& head = candidate.model.head_to_thread;
    const Eigen::VectorXd head_link = forces_at_thread(candidate.model, link_force(solution, candidate.head));
    add_stations(head, head_link);
    if (candidate.far) add_stations(*candidate.model.near_to_far, link_force(solution, *candidate.far));

    const auto [force, moment] = shaft_force(head, head_link, placement.underside);
    findings.axial = force.dot(axes.z) * newton;
    findings.shear_x = force.dot(axes.x) * newton;
    findings.shear_y = force.dot(axes.y) * newton;
    findings.bending_x = moment.dot(axes.x) * newton_mm;
    findings.bending_y = moment.dot(axes.y) * newton_mm;
    findings.torsion = moment.dot(axes.z) * newton_mm;
    findings.peak_bending_stress = peak.direct * mpa;
    const auto& yield = candidate.planned.screw.material.yield_strength;
    if (yield && peak.equivalent > 0.0) findings.factor_to_yield = yield->value() / peak.equivalent;
    all.push_back(std::move(findings));
  }
  return all;
}

}  // namespace gapstrain::models
