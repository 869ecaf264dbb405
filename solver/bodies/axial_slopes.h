// What axial forces do to bodies that turn under them, read off ports and given back as forces on ports.
//
// An axial force N (tension positive) on an axis that turns by slopes w' has the potential 1/2 int N w'^2 dx
// (Timoshenko and Gere, Theory of Elastic Stability, 2nd ed. 1961, ch. 2, from memory): the geometric stiffness of
// a bar. Written as V = 1/2 sum N_r (slope_r q)^2 over readings of port motions q, with N_r read off port forces,
// it adds the forces -slope_r N_r (slope_r q) to the ports, and nothing else needs to know of it: sections, stress
// and balance follow from forces on ports as always.
#pragma once

#include "solver/bodies/system.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

// Readings of one body, a row each.
struct AxialReadings {
  SparseMatrix slope;  // (readings x port motions), rad
  SparseMatrix axial;  // (readings x port forces): axial force times the length on which it acts, N mm
};

// A port on a body's axis. Its motions begin with three shifts; three turns may follow.
struct AxisPoint {
  Eigen::Vector3d place;
  Eigen::Index column = 0;
  bool has_turns = false;
};

// Where forces act on the body: three of a port's begin at its column.
struct ForcePlace {
  Eigen::Vector3d place;
  Eigen::Index column = 0;
};

// A body's axis through points one after another. Between two of them it is straight, or a cubic where both have
// turns; its first and last piece reach `before` and `beyond` further out (mm). @pre two points at least
AxialReadings read_axis(Eigen::Index motions, const std::vector<AxisPoint>& points,
                        const std::vector<ForcePlace>& forces, double before = 0.0, double beyond = 0.0);

// A rigid arm out of a port with turns, at whose end the port's forces act: V = 1/2 theta^T ((F.c) I - sym F c^T)
// theta, what the force's work lacks to second order in the turn.
AxialReadings read_arm(Eigen::Index motions, Eigen::Index column, const Eigen::Vector3d& arm);

AxialReadings join_readings(Eigen::Index motions, const std::vector<AxialReadings>& parts);

// A state of all bodies, as far as it is needed here.
struct PortState {
  std::vector<Eigen::MatrixXd> port_forces;  // all that act on ports (motions x 1), a body each
  Eigen::VectorXd amplitudes;                // (6 bodies)
};

class AxialSlopes {
 public:
  AxialSlopes() = default;
  // One entry a body. The system's bodies are borrowed.
  AxialSlopes(const System& system, std::vector<AxialReadings> readings);

  Eigen::Index size() const { return size_; }
  Eigen::VectorXd slopes(const PortState& state) const;                          // rad
  Eigen::VectorXd axial(const std::vector<Eigen::MatrixXd>& port_forces) const;  // N mm
  // -slope^T moments: on ports, of N_r times the slopes.
  PortLoads forces(const Eigen::VectorXd& moments) const;

 private:
  std::vector<AxialReadings> readings_;
  std::vector<Eigen::MatrixXd> of_forces_, of_rigid_;  // slopes: slope C, slope G
  Eigen::Index size_ = 0;
};

}  // namespace gapstrain::solver
