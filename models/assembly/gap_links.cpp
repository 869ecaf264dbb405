#include "models/assembly/gap_links.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace gapstrain::models {

namespace {

// Hat functions of `around` spots over the edge's nodes, by arc length seen along the bone.
struct EdgeWeights {
  std::vector<std::vector<int>> members;     // positions in the edge's lists, a spot each
  std::vector<std::vector<double>> weights;  // adding up to one
  std::vector<double> arc;                   // mm a spot
};

EdgeWeights edge_weights(const FractureEdge& edge, int around) {
  const std::size_t count = edge.nodes.size();
  std::vector<double> start(count + 1, 0.0);
  for (std::size_t k = 0; k < count; ++k)
    start[k + 1] = start[k] + (edge.mid_cortex[(k + 1) % count] - edge.mid_cortex[k]).tail<2>().norm();
  const double total = start[count];
  const double spacing = total / around;

  EdgeWeights result;
  result.members.resize(static_cast<std::size_t>(around));
  result.weights.resize(static_cast<std::size_t>(around));
  result.arc.resize(static_cast<std::size_t>(around), 0.0);
  for (std::size_t k = 0; k < count; ++k) {
    const double before = k == 0 ? total - start[count - 1] : start[k] - start[k - 1];
    const double node_arc = 0.5 * (before + start[k + 1] - start[k]);
    const double place = start[k] / spacing;
    const auto lower = static_cast<std::size_t>(place);
    const double share = place - static_cast<double>(lower);
    for (const auto& [spot, weight] : {std::pair{lower, 1.0 - share}, std::pair{lower + 1, share}}) {
      const std::size_t wrapped = spot % static_cast<std::size_t>(around);
      if (weight <= 0.0) continue;
      result.members[wrapped].push_back(static_cast<int>(k));
      result.weights[wrapped].push_back(weight * node_arc);
      result.arc[wrapped] += weight * node_arc;
    }
  }
  for (std::size_t spot = 0; spot < result.arc.size(); ++spot)
    for (double& weight : result.weights[spot]) weight /= result.arc[spot];
  return result;
}

}  // namespace

std::vector<GapSpot> gap_spots(std::size_t fracture, const solver::Shell& proximal_shell,
                               const FractureEdge& proximal, const solver::Shell& distal_shell,
                               const FractureEdge& distal, double obliquity, int around) {
  // Fewer nodes than spots would leave spots without a node.
  const EdgeWeights weights = edge_weights(proximal, std::min(around, static_cast<int>(proximal.nodes.size())));
  std::vector<GapSpot> spots;
  for (std::size_t spot = 0; spot < weights.arc.size(); ++spot) {
    std::vector<int> proximal_nodes, distal_nodes;
    double wall = 0.0;
    std::complex<double> direction = 0.0;  // mean of angles that may lie on both sides of 0
    for (std::size_t m = 0; m < weights.members[spot].size(); ++m) {
      const auto k = static_cast<std::size_t>(weights.members[spot][m]);
      proximal_nodes.push_back(proximal.nodes[k]);
      distal_nodes.push_back(distal.nodes[k]);
      wall += weights.weights[spot][m] * proximal_shell.mesh->thickness(proximal.nodes[k]);
      direction += weights.weights[spot][m] * std::polar(1.0, proximal.around[k]);
    }
    const double angle = std::arg(direction);
    const double place = angle < 0.0 ? angle + 2.0 * std::numbers::pi : angle;
    for (const double side : {-1.0, 1.0}) {
      const double offset = side * wall / (2.0 * std::sqrt(3.0));
      spots.push_back({solver::point_port(proximal_shell, proximal_nodes, weights.weights[spot], offset),
                       solver::point_port(distal_shell, distal_nodes, weights.weights[spot], offset), fracture,
                       0.5 * weights.arc[spot] * wall / std::cos(obliquity), place, side > 0.0});
    }
  }
  return spots;
}

Eigen::Matrix3d tissue_flexibility(const Tissue& tissue, double area, double gap_normal,
                                   const Eigen::Vector3d& normal) {
  const double nu = tissue.poissons_ratio;
  const double modulus = tissue.youngs_modulus.value();
  const double confined = modulus * (1.0 - nu) / ((1.0 + nu) * (1.0 - 2.0 * nu));
  const double shear = modulus / (2.0 * (1.0 + nu));
  const Eigen::Matrix3d along = normal * normal.transpose();
  constexpr double least_width = 0.1;  // mm
  return std::max(gap_normal, least_width) / area *
         (along / confined + (Eigen::Matrix3d::Identity() - along) / shear);
}

Eigen::Vector3d cut_normal(const Fracture& fracture) {
  const double slope = std::tan(fracture.obliquity.value());
  const double direction = fracture.direction.value();
  return Eigen::Vector3d(1.0, -slope * std::sin(direction), -slope * std::cos(direction)).normalized();
}

}  // namespace gapstrain::models
