#include "models/measures/gap_strain.h"

#include "solver/motion/rotation.h"

#include <Eigen/Cholesky>
#include <Eigen/Geometry>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

// Of an edge's nodes, and the turn of the rigid motion that is nearest to theirs.
struct EdgeMotion {
  Eigen::MatrixX3d shifts;
  Eigen::Vector3d turn;
};

EdgeMotion edge_motion(const BuiltBody& body, std::size_t number_of_probe, const Eigen::VectorXd& port_forces,
                       const Eigen::VectorXd& amplitudes) {
  const solver::Probe& probe = body.condensed->probes[number_of_probe];
  const Eigen::VectorXd stacked = probe.of_port_forces * port_forces + probe.of_rigid * amplitudes;
  const Eigen::Matrix<double, 6, 6> normal = probe.of_rigid.transpose() * probe.of_rigid;
  return {Eigen::Map<const Eigen::Matrix<double, Eigen::Dynamic, 3, Eigen::RowMajor>>(stacked.data(),
                                                                                      stacked.size() / 3, 3),
          body.condensed->turn * normal.ldlt().solve(probe.of_rigid.transpose() * stacked)};
}

// An edge of a construct that turns far.
struct PlacedEdge {
  Eigen::MatrixX3d from, places;
  Eigen::Matrix3d frame;
};

PlacedEdge place_edge(const Assembly& assembly, const ConstructState& state, std::size_t fragment,
                      std::optional<FractureEdge> Fragment::*edge) {
  const std::size_t body = body_of_fragment(assembly.construct, fragment);
  const auto moved = edge_motion(assembly.bodies[body], edge_probe(assembly.fragments[fragment], edge),
                                 state.pressed.solution.port_forces[body],
                                 state.pressed.amplitudes.segment<6>(6 * static_cast<Eigen::Index>(body)));
  const solver::PlacedBody& nodes = state.large->nodes[body];
  const auto& from = (assembly.fragments[fragment].*edge)->mid_cortex;
  PlacedEdge placed{Eigen::MatrixX3d(moved.shifts.rows(), 3), Eigen::MatrixX3d(moved.shifts.rows(), 3),
                    nodes.front().frame * solver::rotation_by(moved.turn - nodes.front().linear.tail<3>())};
  for (std::size_t k = 0; k < from.size(); ++k) {
    const auto row = static_cast<Eigen::Index>(k);
    placed.from.row(row) = from[k].transpose();
    placed.places.row(row) =
        solver::place_point(nodes, from[k], moved.shifts.row(row).transpose()).place.transpose();
  }
  return placed;
}

// The gap at a place of the edge as the steps left it, and whether its faces touch, before the load or under it.
struct Opening {
  double gap = 0.0;  // along the bone, mm
  bool touches = false;
};

GapPoint gap_point(double around, const Eigen::Vector3d& motion, const Opening& opening) {
  GapPoint point;
  point.around = around * radian;
  point.axial_motion = motion.x() * mm;
  point.motion_y = motion.y() * mm;
  point.motion_z = motion.z() * mm;
  point.shear_motion = std::hypot(motion.y(), motion.z()) * mm;
  if (opening.touches || opening.gap <= 0.0) return point;
  point.axial_strain = motion.x() / opening.gap;
  point.shear_strain = std::hypot(motion.y(), motion.z()) / opening.gap;
  return point;
}

// Whether any of these pairs touches in either state; a place counts as closed with either half of its wall.
bool touches(const std::vector<int>& pairs, const solver::PressedForces& made,
             const solver::PressedForces& loaded) {
  return std::any_of(pairs.begin(), pairs.end(), [&](int pair) {
    const auto k = static_cast<std::size_t>(pair);
    return made.closed[k] != 0 || loaded.closed[k] != 0;
  });
}

// Motion at an angle between nodes: cubic through the four nodes around it (the motion is smooth round the edge,
// and straight lines between nodes would cost 0.4 % at 36 nodes).
Eigen::Vector3d motion_at(double around, const std::vector<double>& angles, const Eigen::MatrixX3d& motions) {
  const auto count = static_cast<int>(angles.size());
  const int next = static_cast<int>(std::upper_bound(angles.begin(), angles.end(), around) - angles.begin());
  Eigen::Vector3d result = Eigen::Vector3d::Zero();
  const auto angle = [&](int k) {
    const int wrapped = (k % count + count) % count;
    return angles[static_cast<std::size_t>(wrapped)] +
           2.0 * std::numbers::pi * std::floor(static_cast<double>(k) / count);
  };
  for (int j = next - 2; j <= next + 1; ++j) {
    double weight = 1.0;
    for (int k = next - 2; k <= next + 1; ++k)
      if (k != j) weight *= (around - angle(k)) / (angle(j) - angle(k));
    result += weight * motions.row((j % count + count) % count).transpose();
  }
  return result;
}

// Of the points that have the figure; mean by the angle each point stands for.
std::optional<Range> range(const std::vector<GapPoint>& edge, std::optional<double> GapPoint::*figure) {
  std::optional<Range> result;
  double total = 0.0;
  const auto count = edge.size();
  for (std::size_t k = 0; k < count; ++k) {
    if (!(edge[k].*figure)) continue;
    const double before =
        k == 0 ? edge[count - 1].around.value() - 2.0 * std::numbers::pi : edge[k - 1].around.value();
    const double after =
        k + 1 == count ? edge[0].around.value() + 2.0 * std::numbers::pi : edge[k + 1].around.value();
    const double value = *(edge[k].*figure), weight = 0.5 * (after - before);
    if (!result) result = Range{value, 0.0, value};
    result->min = std::min(result->min, value);
    result->max = std::max(result->max, value);
    result->mean += value * weight;
    total += weight;
  }
  if (result) result->mean /= total;
  return result;
}

}  // namespace

PerrenWindows perren_windows(const std::vector<GapPoint>& edge) {
  PerrenWindows windows;
  const double share = 1.0 / static_cast<double>(edge.size());
  for (const auto& point : edge) {
    if (!point.axial_strain) {
      windows.closed += share;
      continue;
    }
    const double strain = std::abs(*point.axial_strain);
    (strain <= 0.02   ? windows.bone
     : strain <= 0.10 ? windows.cartilage
     : strain <= 1.0  ? windows.granulation
                      : windows.none) += share;
  }
  return windows;
}

Eigen::MatrixX3d edge_motions(const Assembly& assembly, const std::vector<Eigen::MatrixXd>& port_forces,
                              const Eigen::VectorXd& amplitudes) {
  const auto motion_of = [&](std::size_t fragment, std::optional<FractureEdge> Fragment::*edge) {
    const std::size_t body = body_of_fragment(assembly.construct, fragment);
    return edge_motion(assembly.bodies[body], edge_probe(assembly.fragments[fragment], edge), port_forces[body],
                       amplitudes.segment<6>(6 * static_cast<Eigen::Index>(body)));
  };
  assert(assembly.fragments.size() == 2);  // one fracture
  const EdgeMotion distal = motion_of(1, &Fragment::proximal_edge);
  const EdgeMotion proximal = motion_of(0, &Fragment::distal_edge);
  Eigen::MatrixX3d motions = distal.shifts - proximal.shifts;
  // Seen by somebody who turns with both edges: else a turn of the whole construct would count as shear of its
  // gap.
  const Eigen::Vector3d turn = 0.5 * (distal.turn + proximal.turn);
  const Eigen::Vector3d across(only(assembly.construct.fractures).gap.value(), 0.0, 0.0);
  motions.rowwise() -= turn.cross(across).transpose();
  return motions;
}

Eigen::MatrixX3d edge_motions(const Assembly& assembly, const ConstructState& state) {
  if (!state.large) return edge_motions(assembly, state.pressed.solution.port_forces, state.pressed.amplitudes);
  const PlacedEdge distal = place_edge(assembly, state, 1, &Fragment::proximal_edge);
  const PlacedEdge proximal = place_edge(assembly, state, 0, &Fragment::distal_edge);
  const Eigen::Vector3d between = solver::turn_of(proximal.frame.transpose() * distal.frame);
  const Eigen::Matrix3d seen_from = proximal.frame * solver::rotation_by(0.5 * between);
  return (distal.places - proximal.places) * seen_from - (distal.from - proximal.from);
}

GapFindings measure_gap(const Assembly& assembly, const solver::PressedForces& made,
                        const solver::PressedForces& loaded, const Eigen::MatrixX3d& before,
                        const Eigen::MatrixX3d& after) {
  const Eigen::MatrixX3d motions = after - before;
  const auto& around = assembly.fragments.front().distal_edge->around;
  const double gap = only(assembly.construct.fractures).gap.value();
  const auto opening = [&](std::size_t place, const Eigen::Vector3d& motion_before) {
    return Opening{gap + motion_before.x(), touches(assembly.face_next_to[place], made, loaded)};
  };

  GapFindings findings;
  for (std::size_t k = 0; k < around.size(); ++k) {
    const auto row = static_cast<Eigen::Index>(k);
    const Eigen::Vector3d motion = motions.row(row).transpose();
    findings.edge.push_back(gap_point(around[k], motion, opening(k, before.row(row).transpose())));
    findings.largest_motion = std::max(findings.largest_motion, motion.norm() * mm);
  }
  const auto at = [&](double angle, std::size_t place) {
    return gap_point(angle, motion_at(angle, around, motions), opening(place, motion_at(angle, around, before)));
  };
  findings.near = at(0.0, around.size());
  findings.far = at(std::numbers::pi, around.size() + 1);
  findings.axial_strain = range(findings.edge, &GapPoint::axial_strain);
  findings.shear_strain = range(findings.edge, &GapPoint::shear_strain);
  findings.windows = perren_windows(findings.edge);
  return findings;
}

GapFindings measure_gap(const Assembly& assembly, const ConstructState& made, const ConstructState& loaded) {
  return measure_gap(assembly, made.pressed, loaded.pressed, edge_motions(assembly, made),
                     edge_motions(assembly, loaded));
}

}  // namespace gapstrain::models
