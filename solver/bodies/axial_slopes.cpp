#include "solver/bodies/axial_slopes.h"

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <utility>

namespace gapstrain::solver {

namespace {

class ReadingList {
 public:
  void begin_row() { ++rows_; }
  void slope(Eigen::Index column, const Eigen::Vector3d& of_three) { add(slope_, column, of_three); }
  void axial(Eigen::Index column, const Eigen::Vector3d& of_three) { add(axial_, column, of_three); }

  AxialReadings take(Eigen::Index motions) const {
    AxialReadings readings{SparseMatrix(rows_, motions), SparseMatrix(rows_, motions)};
    readings.slope.setFromTriplets(slope_.begin(), slope_.end());
    readings.axial.setFromTriplets(axial_.begin(), axial_.end());
    return readings;
  }

 private:
  using Entries = std::vector<Eigen::Triplet<double>>;
  void add(Entries& entries, Eigen::Index column, const Eigen::Vector3d& of_three) const {
    for (int k = 0; k < 3; ++k)
      if (of_three(k) != 0.0)
        entries.emplace_back(static_cast<int>(rows_ - 1), static_cast<int>(column + k), of_three(k));
  }
  Eigen::Index rows_ = 0;
  Entries slope_, axial_;
};

// A straight piece of an axis.
class Piece {
 public:
  Piece(const AxisPoint& from, const AxisPoint& to, const std::vector<ForcePlace>& forces, ReadingList& list)
      : from_(from), to_(to), forces_(forces), list_(list) {
    length_ = (to.place - from.place).norm();
    along_ = (to.place - from.place) / length_;
    across_[0] = along_.unitOrthogonal();
    across_[1] = along_.cross(across_[0]);
  }

  // The chord turns under the axial force between two places along it (mm from its beginning).
  void read_chord(double begin, double end) {
    for (const auto& across : across_) {
      list_.begin_row();
      chord(across, 1.0);
      axial(begin, end, 1.0);
    }
  }

  // What a cubic has besides its chord: with turns t1 and t2 of its ends against the chord the mean of w'^2 is
  // that of the chord and ((t1 + t2) / 2)^2 / 5 + ((t1 - t2) / 2)^2 / 3.
  void read_bends() {
    for (const auto& across : across_) {
      // A turn about theta tilts the axis by theta x along, of which the share across is theta . (along x across).
      const Eigen::Vector3d turn = along_.cross(across);
      list_.begin_row();
      chord(across, -1.0);
      list_.slope(from_.column + 3, 0.5 * turn);
      list_.slope(to_.column + 3, 0.5 * turn);
      axial(0.0, length_, 1.0 / 5.0);
      list_.begin_row();
      list_.slope(from_.column + 3, 0.5 * turn);
      list_.slope(to_.column + 3, -0.5 * turn);
      axial(0.0, length_, 1.0 / 3.0);
    }
  }

  double length() const { return length_; }

 private:
  void chord(const Eigen::Vector3d& across, double factor) {
    list_.slope(from_.column, -factor / length_ * across);
    list_.slope(to_.column, factor / length_ * across);
  }

  // int N dx: each force beyond a place pulls there.
  void axial(double begin, double end, double factor) {
    for (const auto& force : forces_) {
      const double at = (force.place - from_.place).dot(along_);
      list_.axial(force.column, factor * std::clamp(at - begin, 0.0, end - begin) * along_);
    }
  }

  const AxisPoint &from_, &to_;
  const std::vector<ForcePlace>& forces_;
  ReadingList& list_;
  double length_ = 0.0;
  Eigen::Vector3d along_;
  std::array<Eigen::Vector3d, 2> across_;
};

}  // namespace

AxialReadings read_axis(Eigen::Index motions, const std::vector<AxisPoint>& points,
                        const std::vector<ForcePlace>& forces, double before, double beyond) {
  assert(points.size() >= 2);
  ReadingList list;
  for (std::size_t k = 0; k + 1 < points.size(); ++k) {
    Piece piece(points[k], points[k + 1], forces, list);
    piece.read_chord(k == 0 ? -before : 0.0, piece.length() + (k + 2 == points.size() ? beyond : 0.0));
    if (points[k].has_turns && points[k + 1].has_turns) piece.read_bends();
  }
  return list.take(motions);
}

AxialReadings read_arm(Eigen::Index motions, Eigen::Index column, const Eigen::Vector3d& arm) {
  ReadingList list;
  for (int k = 0; k < 3; ++k) {
    const Eigen::Vector3d axis = Eigen::Vector3d::Unit(k);
    const Eigen::Matrix3d tensor =
        arm(k) * Eigen::Matrix3d::Identity() - 0.5 * (axis * arm.transpose() + arm * axis.transpose());
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> spectrum(tensor);
    for (int i = 0; i < 3; ++i) {
      if (std::abs(spectrum.eigenvalues()(i)) <= 1e-12 * arm.norm()) continue;
      list.begin_row();
      list.slope(column + 3, spectrum.eigenvectors().col(i));
      list.axial(column, spectrum.eigenvalues()(i) * axis);
    }
  }
  return list.take(motions);
}

AxialReadings join_readings(Eigen::Index motions, const std::vector<AxialReadings>& parts) {
  std::vector<Eigen::Triplet<double>> slope, axial;
  Eigen::Index rows = 0;
  const auto append = [&](const SparseMatrix& matrix, std::vector<Eigen::Triplet<double>>& entries) {
    for (Eigen::Index column = 0; column < matrix.outerSize(); ++column)
      for (SparseMatrix::InnerIterator entry(matrix, column); entry; ++entry)
        entries.emplace_back(static_cast<int>(rows + entry.row()), static_cast<int>(column), entry.value());
  };
  for (const auto& part : parts) {
    append(part.slope, slope);
    append(part.axial, axial);
    rows += part.slope.rows();
  }
  AxialReadings joined{SparseMatrix(rows, motions), SparseMatrix(rows, motions)};
  joined.slope.setFromTriplets(slope.begin(), slope.end());
  joined.axial.setFromTriplets(axial.begin(), axial.end());
  return joined;
}

AxialSlopes::AxialSlopes(const System& system, std::vector<AxialReadings> readings)
    : readings_(std::move(readings)) {
  assert(readings_.size() == system.bodies().size());
  for (std::size_t b = 0; b < readings_.size(); ++b) {
    of_forces_.emplace_back(readings_[b].slope * system.bodies()[b]->compliance);
    of_rigid_.emplace_back(readings_[b].slope * system.bodies()[b]->rigid);
    size_ += readings_[b].slope.rows();
  }
}

Eigen::VectorXd AxialSlopes::slopes(const PortState& state) const {
  Eigen::VectorXd slopes(size_);
  Eigen::Index first = 0;
  for (std::size_t b = 0; b < readings_.size(); ++b) {
    const Eigen::Index rows = readings_[b].slope.rows();
    slopes.segment(first, rows) = of_forces_[b] * state.port_forces[b].col(0) +
                                  of_rigid_[b] * state.amplitudes.segment<6>(static_cast<Eigen::Index>(6 * b));
    first += rows;
  }
  return slopes;
}

Eigen::VectorXd AxialSlopes::axial(const std::vector<Eigen::MatrixXd>& port_forces) const {
  Eigen::VectorXd axial(size_);
  Eigen::Index first = 0;
  for (std::size_t b = 0; b < readings_.size(); ++b) {
    const Eigen::Index rows = readings_[b].axial.rows();
    axial.segment(first, rows) = readings_[b].axial * port_forces[b].col(0);
    first += rows;
  }
  return axial;
}

PortLoads AxialSlopes::forces(const Eigen::VectorXd& moments) const {
  PortLoads forces;
  Eigen::Index first = 0;
  for (const auto& body : readings_) {
    const Eigen::Index rows = body.slope.rows();
    forces.emplace_back(-(body.slope.transpose() * moments.segment(first, rows)));
    first += rows;
  }
  return forces;
}

}  // namespace gapstrain::solver
