// A section of a bar that yields: how much its resultants ask of it, and what it then goes on to bear.
#pragma once

#include <Eigen/Core>

#include <string>
#include <vector>

namespace gapstrain::solver {

// Force (N) and moment (N mm) on a section in its own axes, the first one along the bar: normal force, two shear
// forces, torsion, two bending moments.
using Resultants = Eigen::Matrix<double, 6, 1>;

// Share of the full plastic resultants at which the section flows, by its flow: piecewise linear, rising, then
// with a slope of its own. Flow is plastic deformation times the full resultant it is conjugate to, N mm.
struct HardeningCurve {
  std::vector<double> flow{0.0};   // rising from 0
  std::vector<double> share{1.0};  // rising
  double slope = 1e-6;             // beyond the last one, 1/(N mm); positive
  struct Point {
    double share = 0.0, slope = 0.0;
  };
  Point at(double flow_so_far) const;
};

// A section is a linear reading of link forces. Its plastic deformation p adds of_forces^T p to their links'
// initial deformation, so that it does the work resultants . p.
struct YieldSection {
  std::string name{};
  std::vector<Eigen::Index> rows{};      // of the system
  Eigen::MatrixXd of_forces{};           // (6 x rows)
  Resultants full = Resultants::Ones();  // full plastic resultants, each by itself
  HardeningCurve curve{};
  Resultants resultants(const Eigen::VectorXd& forces) const { return of_forces * forces(rows); }
};

// What resultants ask of a section: 1 at the full plastic state, of degree one. With n, v, t, m the resultants
// over the full ones (m of both moments together, v of both shears), von Mises leaves q = sqrt(1 - v^2 - t^2) of
// the metal's strength for n and m, and these follow m q + n^2 = q^2: exact for a rectangle's axial force with
// moment about one axis, and within 2.5 % on the safe side for a solid circle. So
//   demand^2 = y^2 + v^2 + t^2,  y = (m + sqrt(m^2 + 4 n^2)) / 2.
// (Lower bound of limit analysis; P. G. Hodge 1959, Plastic analysis of structures, from memory.) The vertex at m
// = 0 is rounded off: m = sqrt(m1^2 + m2^2 + 0.02^2), which takes 1 % off the strength in pure tension.
struct Demand {
  double value = 0.0;
  Resultants gradient = Resultants::Zero();  // by the shares
  Eigen::Matrix<double, 6, 6> curvature = Eigen::Matrix<double, 6, 6>::Zero();
};
Demand demand(const Resultants& shares);

}  // namespace gapstrain::solver
