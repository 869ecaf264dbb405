#include "models/stress/peak_stress.h"

#include "models/stress/fatigue.h"
#include "models/stress/stress_cycle.h"
#include "solver/bodies/stress.h"

#include <algorithm>
#include <map>
#include <string>

namespace gapstrain::models {

namespace {

// Well above the rounding of single precision: every node this near to the highest is looked at again.
constexpr float near_the_highest = 0.9999F;

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

// A state at a time: the product of two matrices would first copy the rows, which costs more than it saves.
Eigen::MatrixXf PeakStress::stresses(const Eigen::MatrixXd& port_forces) const {
  const Eigen::MatrixXf forces = port_forces.cast<float>();
  Eigen::MatrixXf stress = Eigen::MatrixXf::Zero(rows_.rows(), forces.cols());
  for (const auto& [first, count] : loaded_runs(port_forces))
    for (Eigen::Index state = 0; state < forces.cols(); ++state)
      stress.col(state).noalias() += rows_.middleCols(first, count) * forces.col(state).segment(first, count);
  return stress;
}

Eigen::Vector3d PeakStress::exact(const PlateForces& states, Eigen::Index state, Eigen::Index node,
                                  Eigen::Index face) const {
  const auto& probe = plate_->probes[static_cast<std::size_t>(face)];
  return probe.of_port_forces.middleRows<3>(3 * node) * states.port_forces.col(state) +
         probe.of_rigid.middleRows<3>(3 * node) * states.amplitudes.col(state);
}

PeakStress::Peak PeakStress::peak_of(const PlateForces& states, Eigen::Index state,
                                     const Eigen::MatrixXf& stress) const {
  Eigen::ArrayXXf squares(nodes_, 2);
  for (Eigen::Index face = 0; face < 2; ++face) {
    const auto part = [&](Eigen::Index k) {
      return stress.col(state).segment((3 * face + k) * nodes_, nodes_).array();
    };
    squares.col(face) = part(0).square() + part(1).square() - part(0) * part(1) + 3.0F * part(2).square();
  }
  const float limit = near_the_highest * near_the_highest * squares.maxCoeff();
  Peak peak;
  for (Eigen::Index face = 0; face < 2; ++face)
    for (Eigen::Index node = 0; node < nodes_; ++node) {
      if (squares(node, face) < limit) continue;
      const double value = solver::von_mises(exact(states, state, node, face).transpose())(0);
      if (value <= peak.von_mises) continue;
      const int hole = hole_[static_cast<std::size_t>(node)];
      peak.von_mises = value;
      peak.hole = hole > 0 ? std::optional(hole) : std::nullopt;
    }
  return peak;
}

// As stress_cycle and reversed_amplitude have it, in single precision for all places, then exactly.
StressCycle PeakStress::worst_cycle(const PlateForces& loaded, Eigen::Index state, const Eigen::MatrixXf& stress,
                                    const PlateForces& at_rest, const Eigen::MatrixXf& rest,
                                    const Metal& metal) const {
  const auto ultimate = static_cast<float>(metal.ultimate_strength->value());
  const bool rests = at_rest.port_forces.isZero(0.0) && at_rest.amplitudes.isZero(0.0);
  Eigen::ArrayXXf reversed(nodes_, 2);
  Eigen::ArrayXf half[3], mean(nodes_);
  for (Eigen::Index face = 0; face < 2; ++face) {
    for (Eigen::Index k = 0; k < 3; ++k) {
      const auto part = stress.col(state).segment((3 * face + k) * nodes_, nodes_).array();
      const auto before = rest.col(0).segment((3 * face + k) * nodes_, nodes_).array();
      half[k] = rests ? Eigen::ArrayXf(0.5F * part) : Eigen::ArrayXf(0.5F * (part - before));
      if (k == 0) mean = rests ? half[0] : Eigen::ArrayXf(0.5F * (part + before));
      if (k == 1) mean += rests ? half[1] : Eigen::ArrayXf(0.5F * (part + before));
    }
    const Eigen::ArrayXf amplitude =
        (half[0].square() + half[1].square() - half[0] * half[1] + 3.0F * half[2].square()).sqrt();
    mean = mean.max(0.0F);
    if (metal.yield_strength)
      mean = mean.min((static_cast<float>(metal.yield_strength->value()) - amplitude).max(0.0F));
    reversed.col(face) = amplitude / (1.0F - mean / ultimate).max(1e-6F);
  }
  const float limit = near_the_highest * reversed.maxCoeff();
  StressCycle worst;
  Stress most;
  for (Eigen::Index face = 0; face < 2; ++face)
    for (Eigen::Index node = 0; node < nodes_; ++node) {
      if (reversed(node, face) < limit) continue;
      const StressCycle cycle = stress_cycle(exact(at_rest, 0, node, face), exact(loaded, state, node, face));
      const Stress equivalent = reversed_amplitude(cycle, *metal.ultimate_strength, metal.yield_strength);
      if (equivalent <= most) continue;
      most = equivalent;
      worst = cycle;
    }
  return worst;
}

std::vector<PeakStress::Peak> PeakStress::find(const PlateForces& states) const {
  const Eigen::MatrixXf stress = stresses(states.port_forces);
  std::vector<Peak> peaks;
  for (Eigen::Index state = 0; state < stress.cols(); ++state) peaks.push_back(peak_of(states, state, stress));
  return peaks;
}

std::vector<PeakStress::Peak> PeakStress::find(const PlateForces& loaded, const PlateForces& at_rest,
                                               const Metal& metal) const {
  if (!metal.fatigue_strength) return find(loaded);
  const Eigen::MatrixXf stress = stresses(loaded.port_forces), rest = stresses(at_rest.port_forces);
  std::vector<Peak> peaks;
  for (Eigen::Index state = 0; state < stress.cols(); ++state) {
    peaks.push_back(peak_of(loaded, state, stress));
    peaks.back().cycle = worst_cycle(loaded, state, stress, at_rest, rest, metal);
  }
  return peaks;
}

}  // namespace gapstrain::models
