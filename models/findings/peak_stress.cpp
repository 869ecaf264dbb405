#include "models/findings/peak_stress.h"

#include "solver/bodies/stress.h"

#include <algorithm>
#include <map>
#include <string>

namespace gapstrain::models {

namespace {

// Runs of columns that carry any force: those of a few holes and of the spots that touch.
std::vector<std::pair<Eigen::Index, Eigen::Index>> loaded_runs(const Eigen::MatrixXd& port_forces) {
  std::vector<std::pair<Eigen::Index, Eigen::Index>> runs;
  for (Eigen::Index column = 0; column < port_forces.rows(); ++column) {
    if (port_forces.row(column).isZero(0.0)) continue;
    if (!runs.empty() && runs.back().first + runs.back().second == column)
      ++runs.back().second;
    else
      runs.emplace_back(column, 1);
  }
  return runs;
}

}  // namespace

PeakStress::PeakStress(const PlateMesh& mesh, const PlateSample& sample, const BuiltBody& plate,
                       PlatePlaces places)
    : plate_(plate.condensed) {
  std::map<int, int> rim;  // node -> hole
  for (const auto& [name, nodes] : mesh.mesh->groups)
    if (name.starts_with("hole:"))
      for (const int node : nodes) rim[node] = std::stoi(name.substr(5)) + 1;
  for (const int node : sample.nodes) hole_.push_back(rim.contains(node) ? rim.at(node) : 0);
  if (places == PlatePlaces::likely) hole_.resize(sample.likely);
  nodes_ = static_cast<Eigen::Index>(hole_.size());

  const Eigen::Index motions = plate_->compliance.cols();
  rows_.resize(6 * nodes_, motions);
  for (Eigen::Index motion = 0; motion < motions; ++motion)
    for (Eigen::Index face = 0; face < 2; ++face) {
      const auto column = plate_->probes[static_cast<std::size_t>(face)].of_port_forces.col(motion);
      for (Eigen::Index node = 0; node < nodes_; ++node)
        for (Eigen::Index k = 0; k < 3; ++k)
          rows_((3 * face + k) * nodes_ + node, motion) = static_cast<float>(column(3 * node + k));
    }
}

std::vector<PeakStress::Peak> PeakStress::find(const Eigen::MatrixXd& port_forces,
                                               const Eigen::MatrixXd& amplitudes) const {
  // Well above the rounding of single precision: every node this near to the highest is looked at again.
  constexpr float near = 0.9999F;
  const Eigen::MatrixXf forces = port_forces.cast<float>();
  Eigen::MatrixXf stress = Eigen::MatrixXf::Zero(rows_.rows(), forces.cols());
  // A load at a time: the product of two matrices would first copy the rows, which costs more than it saves.
  for (const auto& [first, count] : loaded_runs(port_forces))
    for (Eigen::Index load = 0; load < forces.cols(); ++load)
      stress.col(load).noalias() += rows_.middleCols(first, count) * forces.col(load).segment(first, count);

  const auto& probes = plate_->probes;
  std::vector<Peak> peaks;
  for (Eigen::Index load = 0; load < forces.cols(); ++load) {
    Eigen::ArrayXXf squares(nodes_, 2);
    for (Eigen::Index face = 0; face < 2; ++face) {
      const auto part = [&](Eigen::Index k) {
        return stress.col(load).segment((3 * face + k) * nodes_, nodes_).array();
      };
      squares.col(face) = part(0).square() + part(1).square() - part(0) * part(1) + 3.0F * part(2).square();
    }
    const float limit = near * near * squares.maxCoeff();
    Peak peak;
    for (Eigen::Index face = 0; face < 2; ++face)
      for (Eigen::Index node = 0; node < nodes_; ++node) {
        if (squares(node, face) < limit) continue;
        const auto& probe = probes[static_cast<std::size_t>(face)];
        const Eigen::RowVector3d exact = (probe.of_port_forces.middleRows<3>(3 * node) * port_forces.col(load) +
                                          probe.of_rigid.middleRows<3>(3 * node) * amplitudes.col(load))
                                             .transpose();
        const double value = solver::von_mises(exact)(0);
        if (value <= peak.von_mises) continue;
        const int hole = hole_[static_cast<std::size_t>(node)];
        peak = {value, hole > 0 ? std::optional(hole) : std::nullopt};
      }
    peaks.push_back(peak);
  }
  return peaks;
}

}  // namespace gapstrain::models
