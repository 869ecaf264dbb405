#include "models/measures/screw_forces.h"

#include "models/measures/solve.h"
#include "models/stress/fatigue.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <array>
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

// The head's link, as one that a bonded segment would have.
Eigen::VectorXd head_force(const CandidateScrew& candidate, const solver::Solution& solution) {
  return forces_at_thread(candidate.model, link_force(solution, candidate.head));
}

// Of a link in forces in all rows.
Eigen::VectorXd link_force(const Assembly& assembly, int link, const Eigen::VectorXd& forces) {
  const solver::System& system = *assembly.system;
  return forces.segment(system.first_row(link), system.links()[static_cast<std::size_t>(link)].size());
}

ShaftForce force_at_head(const CandidateScrew& candidate, const Eigen::VectorXd& head_link) {
  return shaft_force(candidate.model.head_to_thread, head_link, candidate.planned.placement.underside);
}

// `head`: the head's link, as one that a bonded segment would have; `far`: the one to the far cortex, where the
// screw has it.
ScrewCuts cuts_of(const CandidateScrew& candidate, const Eigen::VectorXd& head, const Eigen::VectorXd& far) {
  const ShaftSegment& to_thread = candidate.model.head_to_thread;
  ScrewCuts cuts{force_at_head(candidate, head), {shaft_force(to_thread, head, to_thread.free_to)}};
  if (candidate.far) {
    const ShaftSegment& between = *candidate.model.near_to_far;
    for (const Eigen::Vector3d& place : {between.free_from, between.free_to})
      cuts.cortices.push_back(shaft_force(between, far, place));
  }
  return cuts;
}

// What is passed on to the first wall and not on to the next stays in it.
std::vector<CortexForce> cortex_forces(const CandidateScrew& candidate, const Eigen::Vector3d& up,
                                       const Eigen::Vector3d& from_head, const Eigen::Vector3d& to_far) {
  const auto& bone = *candidate.planned.placement.bone;
  const auto cortex = [&](bool far, const WallCrossing& wall, const Eigen::Vector3d& force) {
    const double pull = force.dot(up);
    return CortexForce{far, (wall.outer - wall.inner).norm() * mm, pull * newton,
                       (force - pull * up).norm() * newton};
  };
  if (candidate.planned.screw.kind == ScrewKind::lag) return {cortex(true, bone.far, from_head)};
  std::vector<CortexForce> all{cortex(false, bone.near, from_head - to_far)};
  if (candidate.far) all.push_back(cortex(true, bone.far, to_far));
  return all;
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

double core_stress(const ScrewStation& cut, const ScrewSize& size) {
  const Eigen::Vector3d axis = Eigen::Vector3d::UnitZ();
  const ShaftForce force{cut.axial.value() * axis, {cut.bending.value(), 0.0, cut.torsion.value()}};
  return shaft_stress(force, axis, size.core_diameter.value() / 2.0).equivalent;
}

ShaftPeak shaft_peak(const Assembly& assembly, const CandidateScrew& candidate, const Eigen::VectorXd& forces) {
  const auto& placement = candidate.planned.placement;
  const double radius = candidate.planned.screw.size.core_diameter.value() / 2.0;
  const Eigen::Vector3d up = -placement.direction;
  ShaftPeak peak;
  const auto look_at = [&](const ShaftSegment& segment, const Eigen::VectorXd& link) {
    for (const auto& end : {segment.free_from, segment.free_to}) {
      const ShaftStress stress = shaft_stress(shaft_force(segment, link, end), up, radius);
      peak.direct = std::max(peak.direct, stress.direct);
      peak.equivalent = std::max(peak.equivalent, stress.equivalent);
    }
  };
  const ShaftSegment& head = candidate.model.head_to_thread;
  const Eigen::VectorXd head_link =
      forces_at_thread(candidate.model, link_force(assembly, candidate.head, forces));
  look_at(head, head_link);
  if (candidate.far) look_at(*candidate.model.near_to_far, link_force(assembly, *candidate.far, forces));
  peak.axial_at_head = force_at_head(candidate, head_link).force.dot(up);
  return peak;
}

std::vector<CortexForce> cortex_forces(const Assembly& assembly, const CandidateScrew& candidate,
                                       const Eigen::VectorXd& forces) {
  const Eigen::VectorXd head_link =
      forces_at_thread(candidate.model, link_force(assembly, candidate.head, forces));
  Eigen::Vector3d to_far = Eigen::Vector3d::Zero();
  if (candidate.far) {
    const ShaftSegment& between = *candidate.model.near_to_far;
    to_far = shaft_force(between, link_force(assembly, *candidate.far, forces), between.to).force;
  }
  return cortex_forces(candidate, -candidate.planned.placement.direction,
                       force_at_head(candidate, head_link).force, to_far);
}

CoreSection core_section(const PlannedScrew& planned) {
  const Screw& screw = planned.screw;
  return {-planned.placement.direction, screw.size.core_diameter.value() / 2.0, screw.material};
}

ScrewCycles screw_cycles(const ScrewCuts& at_rest, const ScrewCuts& loaded, const CoreSection& core) {
  const Metal& metal = core.metal;
  const auto cycle = [&](const ShaftForce& rest, const ShaftForce& load) {
    return shaft_cycle(rest, load, core.axis, core.radius, metal);
  };
  ScrewCycles cycles{cycle(at_rest.head, loaded.head), {}};
  Stress most = -1.0 * mpa;
  for (std::size_t k = 0; k < loaded.cortices.size(); ++k) {
    const StressCycle here = cycle(at_rest.cortices[k], loaded.cortices[k]);
    const Stress reversed = ranked_amplitude(here, metal);
    if (reversed <= most) continue;
    most = reversed;
    cycles.thread = here;
  }
  return cycles;
}

ScrewCycles screw_cycles(const Assembly& assembly, const CandidateScrew& candidate, const Eigen::VectorXd& at_rest,
                         const Eigen::VectorXd& loaded) {
  const auto cuts = [&](const Eigen::VectorXd& forces) {
    return cuts_of(candidate, forces_at_thread(candidate.model, link_force(assembly, candidate.head, forces)),
                   candidate.far ? link_force(assembly, *candidate.far, forces) : Eigen::VectorXd());
  };
  return screw_cycles(cuts(at_rest), cuts(loaded), core_section(candidate.planned));
}

StressCycle shaft_cycle(const ShaftForce& at_rest, const ShaftForce& loaded, const Eigen::Vector3d& axis,
                        double radius, const Metal& metal) {
  constexpr int places = 72;  // round the shaft: no amplitude is missed by more than 0.1 %
  const double area = std::numbers::pi * radius * radius;
  const double inertia = area * radius * radius / 4.0;
  const auto half = [](const ShaftForce& one, const ShaftForce& other, double sign) -> ShaftForce {
    return {0.5 * (one.force + sign * other.force), 0.5 * (one.moment + sign * other.moment)};
  };
  const ShaftForce amplitude = half(loaded, at_rest, -1.0), mean = half(loaded, at_rest, 1.0);
  const double shear = amplitude.moment.dot(axis) * radius / (2.0 * inertia);
  // From the fibre that the amplitude's own bending strains most.
  const Eigen::Vector3d bending = amplitude.moment - amplitude.moment.dot(axis) * axis;
  const Eigen::Vector3d other = axis.unitOrthogonal();
  const Eigen::Vector3d first = bending.norm() > 0.0 ? axis.cross(bending).normalized() : other;
  const Eigen::Vector3d second = axis.cross(first);
  // Along the axis at a place of the surface, turned from the first one: all over, and of bending with the cosine
  // and the sine.
  const auto fibre = [&](const ShaftForce& force) {
    const auto bent = [&](const Eigen::Vector3d& arm) {
      return axis.dot(force.moment.cross(radius * arm)) / inertia;
    };
    return Eigen::Vector3d(force.force.dot(axis) / area, bent(first), bent(second));
  };
  const Eigen::Vector3d of_amplitude = fibre(amplitude), of_mean = fibre(mean), of_rest = fibre(at_rest);
  // Of a shaft that nothing strains at rest the mean goes with the amplitude: the worst is one of the two fibres
  // that bending strains most.
  constexpr double nothing = 1e-9;  // of what there is under the load
  const bool is_at_rest = at_rest.force.norm() <= nothing * loaded.force.norm() &&
                          at_rest.moment.norm() <= nothing * loaded.moment.norm();
  constexpr std::size_t half_a_turn = places / 2;
  static const auto turns = [] {
    std::array<Eigen::Vector3d, places> all;
    for (int k = 0; k < places; ++k) {
      const double turn = 2.0 * std::numbers::pi * k / places;
      all[static_cast<std::size_t>(k)] = {1.0, std::cos(turn), std::sin(turn)};
    }
    return all;
  }();
  StressCycle worst;
  Stress most = -1.0 * mpa;
  for (std::size_t k = 0; k < turns.size(); k += is_at_rest ? half_a_turn : 1) {
    const Eigen::Vector3d& turn = turns[k];
    const double direct = of_amplitude.dot(turn);
    const StressCycle cycle{std::sqrt(direct * direct + 3.0 * shear * shear) * mpa, of_mean.dot(turn) * mpa,
                            of_rest.dot(turn) * mpa};
    const Stress reversed = ranked_amplitude(cycle, metal);
    if (reversed <= most) continue;
    most = reversed;
    worst = cycle;
  }
  return worst;
}

std::vector<ScrewCuts> measure_screw_cuts(const Assembly& assembly, const std::vector<int>& chosen,
                                          const solver::Solution& solution) {
  std::vector<ScrewCuts> cuts;
  for (const int index : chosen) {
    const CandidateScrew& candidate = assembly.screws[static_cast<std::size_t>(index)];
    cuts.push_back(cuts_of(candidate, head_force(candidate, solution),
                           candidate.far ? link_force(solution, *candidate.far) : Eigen::VectorXd()));
  }
  return cuts;
}

std::vector<ScrewCycles> measure_screw_cycles(const Assembly& assembly, const std::vector<int>& chosen,
                                              const solver::Solution& at_rest, const solver::Solution& loaded) {
  const auto resting = measure_screw_cuts(assembly, chosen, at_rest);
  const auto bearing = measure_screw_cuts(assembly, chosen, loaded);
  std::vector<ScrewCycles> cycles;
  for (std::size_t k = 0; k < chosen.size(); ++k)
    cycles.push_back(screw_cycles(resting[k], bearing[k],
                                  core_section(assembly.screws[static_cast<std::size_t>(chosen[k])].planned)));
  return cycles;
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
    findings.screw = candidate.planned.screw.id;
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
    const Eigen::VectorXd head_link = head_force(candidate, solution);
    add_stations(head, head_link);
    Eigen::Vector3d to_far = Eigen::Vector3d::Zero();
    if (candidate.far) {
      const ShaftSegment& between = *candidate.model.near_to_far;
      const Eigen::VectorXd far_link = link_force(solution, *candidate.far);
      add_stations(between, far_link);
      to_far = shaft_force(between, far_link, between.to).force;
    }

    const auto [force, moment] = force_at_head(candidate, head_link);
    findings.cortices = cortex_forces(candidate, axes.z, force, to_far);
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
