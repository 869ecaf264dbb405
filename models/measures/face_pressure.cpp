#include "models/measures/face_pressure.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <vector>

namespace gapstrain::models {

namespace {

constexpr double sector = 30.0 * std::numbers::pi / 180.0;  // to either side of near and far

// Of what each spot stands for round the bone, half-way to its neighbours, the share that lies within the sector.
std::vector<double> shares_within(const std::vector<FaceSpot>& face, double middle) {
  const auto from_middle = [&](double around) { return std::remainder(around - middle, 2.0 * std::numbers::pi); };
  std::vector<double> shares;
  for (const auto& spot : face) {
    double before = -2.0 * std::numbers::pi, after = 2.0 * std::numbers::pi;  // to the next spot on either side
    for (const auto& other : face) {
      const double away = std::remainder(other.around - spot.around, 2.0 * std::numbers::pi);
      if (std::abs(away) < 1e-9) continue;  // the other half of the wall
      (away < 0.0 ? before : after) = away < 0.0 ? std::max(before, away) : std::min(after, away);
    }
    const double here = from_middle(spot.around);
    const double from = here + 0.5 * before, to = here + 0.5 * after;
    shares.push_back(std::max(0.0, std::min(to, sector) - std::max(from, -sector)) / (to - from));
  }
  return shares;
}

}  // namespace

FaceFindings measure_face(const Assembly& assembly, const ConstructState& state) {
  const Eigen::VectorXd slipped = slips(assembly, state);
  const auto& pressed = state.pressed;
  FaceFindings findings;
  Eigen::Vector2d traction = Eigen::Vector2d::Zero();
  double area = 0.0, touching = 0.0, near = 0.0, near_area = 0.0, far = 0.0, far_area = 0.0;
  const auto near_shares = shares_within(assembly.face, 0.0),
             far_shares = shares_within(assembly.face, std::numbers::pi);
  for (std::size_t k = 0; k < assembly.face.size(); ++k) {
    const FaceSpot& spot = assembly.face[k];
    const auto pair = static_cast<Eigen::Index>(k);
    const double force = pressed.pressure(pair);
    FacePoint point{spot.around * radian, spot.outer, force / spot.area * mpa, pressed.gap(pair) * mm,
                    slipped(pair) * mm};
    findings.force += force * newton;
    traction += pressed.traction.row(pair).transpose();
    area += spot.area;
    if (force > 0.0) touching += spot.area;
    near += near_shares[k] * force;
    near_area += near_shares[k] * spot.area;
    far += far_shares[k] * force;
    far_area += far_shares[k] * spot.area;
    findings.peak = std::max(findings.peak, point.pressure);
    findings.largest_slip = std::max(findings.largest_slip, point.slip);
    findings.points.push_back(point);
  }
  findings.friction = traction.norm() * newton;
  findings.touching = touching / area;
  if (near_area > 0.0) findings.near = near / near_area * mpa;
  if (far_area > 0.0) findings.far = far / far_area * mpa;
  return findings;
}

UndersideFindings measure_underside(const Assembly& assembly, const ConstructState& state) {
  const auto first = static_cast<Eigen::Index>(assembly.face.size());
  const std::size_t fragments = assembly.fragments.size();
  std::vector<Eigen::Vector3d> carried(fragments, Eigen::Vector3d::Zero());
  std::vector<double> pressure(fragments, 0.0);
  UndersideFindings findings;
  for (std::size_t k = 0; k < assembly.underside.size(); ++k) {
    const auto pair = first + static_cast<Eigen::Index>(k);
    const std::size_t fragment = assembly.underside[k].fragment;
    const auto& tangent =
        assembly.system->links()[static_cast<std::size_t>(assembly.pairs[assembly.face.size() + k].tangent)];
    carried[fragment] += tangent.ends[0].transfer * state.pressed.traction.row(pair).transpose();
    pressure[fragment] += state.pressed.pressure(pair);
    const Length gap = state.pressed.gap(pair) * mm;
    findings.clearance = findings.clearance ? std::min(*findings.clearance, gap) : gap;
  }
  findings.pressure = std::accumulate(pressure.begin(), pressure.end(), 0.0) * newton;
  const double coefficient = assembly.construct.contact.plate_on_bone;
  for (std::size_t fragment = 0; fragment < fragments; ++fragment)
    if (pressure[fragment] > 0.0 && coefficient > 0.0)
      findings.friction_use = std::max(findings.friction_use.value_or(0.0),
                                       carried[fragment].norm() / (coefficient * pressure[fragment]));
  return findings;
}

Length underside_slip(const Assembly& assembly, const ConstructState& from, const ConstructState& to,
                      std::size_t fragment) {
  const Eigen::VectorXd moved = deformations_with_bends(assembly, to) - deformations_with_bends(assembly, from);
  double largest = 0.0;
  for (std::size_t k = 0; k < assembly.underside.size(); ++k) {
    const std::size_t pair = assembly.face.size() + k;
    if (assembly.underside[k].fragment != fragment || from.pressed.closed[pair] == 0 ||
        to.pressed.closed[pair] == 0)
      continue;
    largest = std::max(largest, moved.segment<2>(assembly.system->first_row(assembly.pairs[pair].tangent)).norm());
  }
  return largest * mm;
}

}  // namespace gapstrain::models
