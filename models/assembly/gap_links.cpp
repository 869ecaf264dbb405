#include "models/assembly/gap_links.h"

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <numbers>
#include <numeric>

namespace gapstrain::models {

namespace {

// A spot's share of the edge's nodes: what of them lies under its hat function.
struct SpotMembers {
  std::vector<int> members;     // positions in the edge's lists
  std::vector<double> weights;  // of the hat function
};

// Lengths round the edge seen along the bone, from each of these places to the next.
std::vector<double> sides_of(const std::vector<Eigen::Vector3d>& places) {
  std::vector<double> sides;
  for (std::size_t k = 0; k < places.size(); ++k)
    sides.push_back((places[(k + 1) % places.size()] - places[k]).tail<2>().norm());
  return sides;
}

// Hat functions of `around` spots over the edge's nodes, by arc length at mid-cortex. The first spot lies on the
// plate's side, wherever the mesh has its nodes: what is asked of near and far cortex does not turn with the mesh.
std::vector<SpotMembers> hat_functions(const FractureEdge& edge, int around) {
  const std::size_t count = edge.nodes.size();
  const std::vector<double> sides = sides_of(edge.mid_cortex);
  const double before_zero = 2.0 * std::numbers::pi - edge.around.back();
  const double first = sides.back() * edge.around.front() / (before_zero + edge.around.front());
  const double spacing = std::accumulate(sides.begin(), sides.end(), 0.0) / around;
  std::vector<SpotMembers> spots(static_cast<std::size_t>(around));
  double place = first;
  for (std::size_t k = 0; k < count; place += sides[k++]) {
    const double lower = std::floor(place / spacing), share = place / spacing - lower;
    for (const auto& [spot, weight] : {std::pair{lower, 1.0 - share}, std::pair{lower + 1.0, share}}) {
      if (weight <= 0.0) continue;
      SpotMembers& members = spots[static_cast<std::size_t>(spot) % spots.size()];
      members.members.push_back(static_cast<int>(k));
      members.weights.push_back(weight);
    }
  }
  return spots;
}

// Arc length that each node stands for, at the edge's places moved along the nodes' directors: of each side what
// is square to the directors between its nodes, as the cells' own volume has it.
std::vector<double> node_arcs(const solver::Shell& shell, const FractureEdge& edge, double share_of_wall) {
  const auto director = [&](std::size_t k) -> Eigen::Vector3d { return shell.mesh->directors.row(edge.nodes[k]); };
  const auto place = [&](std::size_t k) -> Eigen::Vector3d {
    return shell.mesh->nodes.row(edge.nodes[k]).transpose() +
           share_of_wall * shell.mesh->thickness(edge.nodes[k]) * director(k);
  };
  const std::size_t count = edge.nodes.size();
  std::vector<double> arcs(count, 0.0);
  for (std::size_t k = 0; k < count; ++k) {
    const std::size_t next = (k + 1) % count;
    const Eigen::Vector2d side = (place(next) - place(k)).tail<2>();
    const Eigen::Vector2d outward = 0.5 * (director(k) + director(next)).tail<2>();
    const double half = 0.5 * std::abs(side.x() * outward.y() - side.y() * outward.x());
    arcs[k] += half;
    arcs[next] += half;
  }
  return arcs;
}

// Along the nodes' directors, to a depth in the wall, from where an even pressure on the sides of the edge next to
// a node bears: nearer to the canal than the node by a twelfth of side times turn, for between nodes that turn
// about the wall's normal cells bulge (Allman's sides, solver/elements). Measured from the nodes even compression
// would bend the wall: 2 % of uneven pressure at 36 nodes round a tube, 6 % round an ellipse.
std::vector<double> offsets(const solver::Shell& shell, const FractureEdge& edge, const std::vector<int>& members,
                            double share_of_wall) {
  const std::size_t count = edge.nodes.size();
  const auto side_times_turn = [&](std::size_t from, std::size_t to) -> double {
    const int one = edge.nodes[from], other = edge.nodes[to];
    return (shell.mesh->nodes.row(other) - shell.mesh->nodes.row(one))
        .dot(shell.mesh->directors.row(other) - shell.mesh->directors.row(one));
  };
  std::vector<double> all;
  for (const int member : members) {
    const auto k = static_cast<std::size_t>(member);
    const double inward =
        (side_times_turn((k + count - 1) % count, k) + side_times_turn(k, (k + 1) % count)) / 24.0;
    all.push_back(share_of_wall * shell.mesh->thickness(edge.nodes[k]) - inward);
  }
  return all;
}

constexpr std::size_t through_wall = 2;  // spots at one place round the edge, one after another

// The spots at this one's place round the edge of their fracture and at the places on either side.
std::vector<std::size_t> spots_beside(const std::vector<GapSpot>& spots, std::size_t spot) {
  std::size_t first = spot, end = spot + 1;
  while (first > 0 && spots[first - 1].fracture == spots[spot].fracture) --first;
  while (end < spots.size() && spots[end].fracture == spots[spot].fracture) ++end;
  const std::size_t around = (end - first) / through_wall, place = (spot - first) / through_wall;
  std::vector<std::size_t> beside;
  for (const std::size_t step : {around - 1, std::size_t{0}, std::size_t{1}})
    for (std::size_t depth = 0; depth < through_wall; ++depth)
      beside.push_back(first + (place + step) % around * through_wall + depth);
  return beside;
}

Eigen::Matrix3d cross_with(const Eigen::Vector3d& arm) {
  Eigen::Matrix3d cross;
  cross << 0.0, -arm.z(), arm.y(), arm.z(), 0.0, -arm.x(), -arm.y(), arm.x(), 0.0;
  return cross;
}

}  // namespace

std::vector<solver::LinkEnd> gap_ends(const std::vector<GapSpot>& spots,
                                      const std::vector<std::array<SpotPlace, 2>>& places, std::size_t spot,
                                      const Eigen::MatrixXd& directions) {
  const auto& [proximal, distal] = places[spot];
  std::vector<solver::LinkEnd> ends{{distal.body, distal.column, directions},
                                    {proximal.body, proximal.column, -directions}};
  const Eigen::Vector3d across = spots[spot].distal.centre - spots[spot].proximal.centre;
  constexpr double nothing = 1e-9;  // mm: faces on each other need no arms
  if (across.norm() < nothing) return ends;
  // u_d - u_p - w x across, with w half of the sum of both faces' (sum of r r - r r^T)^-1 (sum of r x u).
  const std::vector<std::size_t> beside = spots_beside(spots, spot);
  for (const bool is_distal : {false, true}) {
    const auto centre = [&](std::size_t k) -> const Eigen::Vector3d& {
      return is_distal ? spots[k].distal.centre : spots[k].proximal.centre;
    };
    Eigen::Vector3d middle = Eigen::Vector3d::Zero();
    for (const std::size_t k : beside) middle += centre(k) / static_cast<double>(beside.size());
    Eigen::Matrix3d spread = Eigen::Matrix3d::Zero();
    for (const std::size_t k : beside) spread -= cross_with(centre(k) - middle) * cross_with(centre(k) - middle);
    const Eigen::MatrixXd turned = 0.5 * spread.inverse() * cross_with(across) * directions;
    for (const std::size_t k : beside) {
      const SpotPlace& place = places[k][is_distal ? 1 : 0];
      ends.push_back({place.body, place.column, cross_with(centre(k) - middle) * turned});
    }
  }
  return ends;
}

std::vector<GapSpot> gap_spots(std::size_t fracture, const solver::Shell& proximal_shell,
                               const FractureEdge& proximal, const solver::Shell& distal_shell,
                               const FractureEdge& distal, double obliquity, int around) {
  // Gauss points through the wall, each with the arc length at its own depth: a wall that is bent round the canal
  // has more of its face outside. With equal halves even compression read 10 % uneven.
  const double gauss = 0.5 / std::sqrt(3.0);  // of the wall, off its middle
  const std::array<std::pair<double, std::vector<double>>, 2> sides{
      std::pair{-gauss, node_arcs(proximal_shell, proximal, -gauss)},
      std::pair{gauss, node_arcs(proximal_shell, proximal, gauss)}};
  std::vector<GapSpot> spots;
  // Fewer nodes than spots would leave spots without a node.
  for (const auto& hat : hat_functions(proximal, std::min(around, static_cast<int>(proximal.nodes.size())))) {
    std::vector<int> proximal_nodes, distal_nodes;
    std::complex<double> direction = 0.0;  // mean of angles that may lie on both sides of 0
    for (std::size_t m = 0; m < hat.members.size(); ++m) {
      const auto k = static_cast<std::size_t>(hat.members[m]);
      proximal_nodes.push_back(proximal.nodes[k]);
      distal_nodes.push_back(distal.nodes[k]);
      direction +=
          hat.weights[m] * (sides[0].second[k] + sides[1].second[k]) * std::polar(1.0, proximal.around[k]);
    }
    const double angle = std::arg(direction);
    constexpr double rounding = 1e-9;  // the first spot is at 0, not just short of a whole turn
    const double place = angle < -rounding ? angle + 2.0 * std::numbers::pi : std::max(angle, 0.0);
    for (const auto& [depth, arcs] : sides) {
      std::vector<double> weights;
      double arc = 0.0, area = 0.0;
      for (std::size_t m = 0; m < hat.members.size(); ++m) {
        const auto k = static_cast<std::size_t>(hat.members[m]);
        weights.push_back(hat.weights[m] * arcs[k]);
        arc += weights.back();
        area += 0.5 * weights.back() * proximal_shell.mesh->thickness(proximal.nodes[k]);
      }
      for (double& weight : weights) weight /= arc;
      spots.push_back({solver::point_port(proximal_shell, proximal_nodes, weights,
                                          offsets(proximal_shell, proximal, hat.members, depth)),
                       solver::point_port(distal_shell, distal_nodes, weights,
                                          offsets(distal_shell, distal, hat.members, depth)),
                       fracture, area / std::cos(obliquity), place, depth > 0.0});
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
