// A plain shell model for the element tests: nodes, cells, supports, one sparse solve. Not the product's
// assembler.
#pragma once

#include "solver/elements/shell_material.h"
#include "solver/elements/shell_quad.h"
#include "solver/elements/shell_triangle.h"

#include <Eigen/SparseCore>

#include <array>
#include <initializer_list>
#include <map>
#include <vector>

namespace gapstrain::tests {

// Unknowns of a node, in order.
enum Motion { ux, uy, uz, rx, ry, rz };

struct ShellModel {
  std::vector<Eigen::Vector3d> nodes, directors;
  std::vector<double> thickness;
  std::vector<std::array<int, 4>> quads;
  std::vector<std::array<int, 3>> triangles;
  solver::ShellMaterial material;
  Eigen::Vector3d axis_1 = Eigen::Vector3d::UnitX();

  int unknowns() const { return 6 * static_cast<int>(nodes.size()); }
};

solver::QuadShape quad_shape(const ShellModel& model, std::size_t cell);
solver::TriangleShape triangle_shape(const ShellModel& model, std::size_t cell);

Eigen::SparseMatrix<double> assemble_stiffness(const ShellModel& model);

// Geometric stiffness of the membrane forces that the displacements cause; quads only.
Eigen::SparseMatrix<double> assemble_geometric_stiffness(const ShellModel& model,
                                                         const Eigen::VectorXd& displacement);

// Prescribed values by unknown.
struct Supports {
  std::map<int, double> values;

  void hold(int node, std::initializer_list<Motion> motions) {
    for (const Motion motion : motions) values[6 * node + motion] = 0.0;
  }
  void prescribe(int node, Motion motion, double value) { values[6 * node + motion] = value; }
};

struct Answer {
  Eigen::VectorXd displacement;
  Eigen::VectorXd reaction;  // zero at the free unknowns but for round-off

  double at(int node, Motion motion) const { return displacement(6 * node + motion); }
};

Answer solve(const Eigen::SparseMatrix<double>& stiffness, const Supports& supports, const Eigen::VectorXd& load);
Answer solve(const ShellModel& model, const Supports& supports, const Eigen::VectorXd& load);

// (s11, s22, s12) in material axes at a node: plain mean over the quads that meet there.
Eigen::Vector3d averaged_stress(const ShellModel& model, const Eigen::VectorXd& displacement, int node,
                                double zeta);

// Lumped load of a pressure along a fixed direction: a quarter of a quad's area each. Quads only.
Eigen::VectorXd even_load(const ShellModel& model, const Eigen::Vector3d& per_area);

}  // namespace gapstrain::tests
