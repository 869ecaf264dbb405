#include "models/findings/gap_strain.h"

#include "models/build/gap_links.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

Eigen::MatrixX3d edge_motion(const BuiltBody& body, const Eigen::MatrixXd& port_forces,
                             const Eigen::MatrixXd& amplitudes) {
  const solver::Probe& probe = body.condensed->probes.front();
  const Eigen::VectorXd stacked = probe.of_port_forces * port_forces + probe.of_rigid * amplitudes;
  return Eigen::Map<const Eigen::Matrix<double, Eigen::Dynamic, 3, Eigen::RowMajor>>(stacked.data(),
                                                                                     stacked.size() / 3, 3);
}

GapPoint gap_point(double around, const Eigen::Vector3d& motion, double gap) {
  GapPoint point;
  point.around = around * radian;
  point.axial_motion = motion.x() * mm;
  point.motion_y = motion.y() * mm;
  point.motion_z = motion.z() * mm;
  point.shear_motion = std::hypot(motion.y(), motion.z()) * mm;
  point.axial_strain = motion.x() / gap;
  point.shear_strain = std::hypot(motion.y(), motion.z()) / gap;
  return point;
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

// Mean over the edge by the angle each point stands for.
Range range(const std::vector<GapPoint>& edge, double GapPoint::*figure) {
  Range result{edge.front().*figure, 0.0, edge.front().*figure};
  const auto count = edge.size();
  for (std::size_t k = 0; k < count; ++k) {
    const double before =
        k == 0 ? edge[count - 1].around.value() - 2.0 * std::numbers::pi : edge[k - 1].around.value();
    const double after =
        k + 1 == count ? edge[0].around.value() + 2.0 * std::numbers::pi : edge[k + 1].around.value();
    const double value = edge[k].*figure;
    result.min = std::min(result.min, value);
    result.max = std::max(result.max, value);
    result.mean += value * (after - before) / (4.0 * std::numbers::pi);
  }
  return result;
}

}  // namespace

PerrenWindows perren_windows(const std::vector<GapPoint>& edge) {
  PerrenWindows windows;
  const double share = 1.0 / static_cast<double>(edge.size());
  for (const auto& point : edge) {
    const double strain = std::abs(point.axial_strain);
    (strain <= 0.02   ? windows.bone
     : strain <= 0.10 ? windows.cartilage
     : strain <= 1.0  ? windows.granulation
                      : windows.none) += share;
  }
  return windows;
}

GapFindings measure_gap(const Assembly& assembly, const solver::Solution& solution) {
  const auto motion_of = [&](BodyIndex body) {
    return edge_motion(assembly.bodies[body], solution.port_forces[body], solution.amplitudes[body]);
  };
  const Eigen::MatrixX3d motions = motion_of(distal_body) - motion_of(proximal_body);
  const auto& around = assembly.fragments.proximal.edge.around;
  const Fracture& fracture = assembly.construct.fracture;
  const double gap = fracture.gap.value();
  const Eigen::Vector3d normal = cut_normal(fracture);

  GapFindings findings;
  for (std::size_t k = 0; k < around.size(); ++k) {
    const Eigen::Vector3d motion = motions.row(static_cast<Eigen::Index>(k)).transpose();
    findings.edge.push_back(gap_point(around[k], motion, gap));
    if (normal.dot(motion) <= -gap * normal.x()) findings.closes = true;
  }
  findings.near = gap_point(0.0, motion_at(0.0, around, motions), gap);
  findings.far = gap_point(std::numbers::pi, motion_at(std::numbers::pi, around, motions), gap);
  findings.axial_strain = range(findings.edge, &GapPoint::axial_strain);
  findings.shear_strain = range(findings.edge, &GapPoint::shear_strain);
  findings.windows = perren_windows(findings.edge);
  return findings;
}

}  // namespace gapstrain::models
