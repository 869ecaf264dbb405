#include "solver/bodies/port.h"

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>

#include <algorithm>
#include <unordered_map>
#include <unordered_set>

namespace gapstrain::solver {

namespace {

// Motions (u, theta) of one node at `arm` from the centre, one column a mode, global axes. Modes 6 to 11 are
// uniform membrane strains u = (x, 0), (0, y), (y, x)/2 and uniform curvatures w = x^2/2, y^2/2, x y with the
// rotations theta = (dw/dy, -dw/dx) that keep the wall's normal straight.
Eigen::Matrix<double, 6, Eigen::Dynamic> node_modes(const Eigen::Vector3d& arm, const Eigen::Matrix3d& frame,
                                                    RimModes modes) {
  Eigen::Matrix<double, 6, Eigen::Dynamic> motion =
      Eigen::Matrix<double, 6, Eigen::Dynamic>::Zero(6, modes == RimModes::rigid ? 6 : 12);
  motion.topLeftCorner<3, 3>().setIdentity();
  for (int axis = 0; axis < 3; ++axis) motion.block<3, 1>(0, 3 + axis) = Eigen::Vector3d::Unit(axis).cross(arm);
  motion.block<3, 3>(3, 3).setIdentity();
  if (modes == RimModes::rigid) return motion;

  const double x = arm.dot(frame.col(0));
  const double y = arm.dot(frame.col(1));
  Eigen::Matrix<double, 3, 6> translation = Eigen::Matrix<double, 3, 6>::Zero();
  translation.col(0) << x, 0.0, 0.0;
  translation.col(1) << 0.0, y, 0.0;
  translation.col(2) << y / 2.0, x / 2.0, 0.0;
  translation.row(2).tail<3>() << x * x / 2.0, y * y / 2.0, x * y;
  Eigen::Matrix<double, 3, 6> rotation = Eigen::Matrix<double, 3, 6>::Zero();
  rotation.col(3) << 0.0, -x, 0.0;
  rotation.col(4) << y, 0.0, 0.0;
  rotation.col(5) << x, -y, 0.0;
  motion.block<3, 6>(0, 6) = frame * translation;
  motion.block<3, 6>(3, 6) = frame * rotation;
  return motion;
}

template <typename Cells>
std::vector<int> cells_within(const Cells& cells, const std::vector<char>& inside) {
  std::vector<int> result;
  for (std::size_t index = 0; index < cells.size(); ++index) {
    if (std::all_of(cells[index].begin(), cells[index].end(),
                    [&](int node) { return inside[static_cast<std::size_t>(node)] != 0; }))
      result.push_back(static_cast<int>(index));
  }
  return result;
}

// Nodes of the patch that other cells use as well.
std::vector<char> border_nodes(const mesh::ShellMesh& mesh, const std::vector<char>& inside) {
  std::vector<char> border(inside.size(), 0);
  const auto mark = [&](const auto& cells) {
    for (const auto& cell : cells) {
      if (std::all_of(cell.begin(), cell.end(),
                      [&](int node) { return inside[static_cast<std::size_t>(node)] != 0; }))
        continue;
      for (const int node : cell) border[static_cast<std::size_t>(node)] = 1;
    }
  };
  mark(mesh.quads);
  mark(mesh.triangles);
  return border;
}

SparseMatrix block(const SparseMatrix& matrix, const std::vector<int>& row_position, Eigen::Index rows,
                   const std::vector<int>& column_position, Eigen::Index columns) {
  std::vector<Eigen::Triplet<double>> triplets;
  for (Eigen::Index column = 0; column < matrix.outerSize(); ++column) {
    for (SparseMatrix::InnerIterator entry(matrix, column); entry; ++entry) {
      const int row_to = row_position[static_cast<std::size_t>(entry.row())];
      const int column_to = column_position[static_cast<std::size_t>(entry.col())];
      if (row_to >= 0 && column_to >= 0) triplets.emplace_back(row_to, column_to, entry.value());
    }
  }
  SparseMatrix result(rows, columns);
  result.setFromTriplets(triplets.begin(), triplets.end());
  return result;
}

// Nodes within reach of the centre, and whatever lies within two cells of the port's own nodes: a patch must reach
// into the body on a coarse mesh as well.
std::vector<char> patch_nodes(const mesh::ShellMesh& mesh, const std::vector<int>& port,
                              const Eigen::Vector3d& centre, double reach) {
  std::vector<char> inside(static_cast<std::size_t>(mesh.nodes.rows()), 0);
  for (const int node : port) inside[static_cast<std::size_t>(node)] = 1;
  const auto add_neighbours = [&](const auto& cells, const std::vector<char>& of) {
    for (const auto& cell : cells)
      if (std::any_of(cell.begin(), cell.end(), [&](int node) { return of[static_cast<std::size_t>(node)] != 0; }))
        for (const int node : cell) inside[static_cast<std::size_t>(node)] = 1;
  };
  for (int layer = 0; layer < 2; ++layer) {
    const std::vector<char> before = inside;
    add_neighbours(mesh.quads, before);
    add_neighbours(mesh.triangles, before);
  }
  for (Eigen::Index node = 0; node < mesh.nodes.rows(); ++node)
    if ((mesh.nodes.row(node).transpose() - centre).norm() <= reach) inside[static_cast<std::size_t>(node)] = 1;
  return inside;
}

}  // namespace

Port reaction_port(const Shell& shell, const std::vector<int>& nodes, const Eigen::Vector3d& centre, double reach,
                   const Eigen::Matrix3d& frame, RimModes modes) {
  const auto& mesh = *shell.mesh;
  const std::vector<char> inside = patch_nodes(mesh, nodes, centre, reach);
  const auto patch = assemble_patch(shell, cells_within(mesh.quads, inside), cells_within(mesh.triangles, inside));
  const auto border = border_nodes(mesh, inside);

  // Sort the patch's unknowns into those of the port, the free ones and the clamped border.
  const std::unordered_set<int> port_nodes(nodes.begin(), nodes.end());
  std::vector<int> port_position(6 * patch.nodes.size(), -1), free_position(6 * patch.nodes.size(), -1);
  std::vector<int> port_order;
  int free_count = 0;
  bool clamped = false;
  for (std::size_t local = 0; local < patch.nodes.size(); ++local) {
    const int node = patch.nodes[local];
    const bool is_port = port_nodes.contains(node);
    if (!is_port && border[static_cast<std::size_t>(node)] != 0) {
      clamped = true;
      continue;
    }
    for (std::size_t k = 0; k < 6; ++k) {
      if (is_port)
        port_position[6 * local + k] = static_cast<int>(6 * port_order.size() + k);
      else
        free_position[6 * local + k] = free_count++;
    }
    if (is_port) port_order.push_back(node);
  }
  if (!clamped || port_order.size() != port_nodes.size())
    throw NotElasticError("a port's patch is the whole body, or its nodes are on no cell");

  const auto port_size = static_cast<Eigen::Index>(6 * port_order.size());
  const SparseMatrix full = patch.stiffness.selfadjointView<Eigen::Lower>();
  const SparseMatrix k_rr = block(full, port_position, port_size, port_position, port_size);
  Eigen::MatrixXd imposed(port_size, modes == RimModes::rigid ? 6 : 12);
  for (std::size_t local = 0; local < port_order.size(); ++local) {
    const Eigen::Vector3d arm = mesh.nodes.row(port_order[local]).transpose() - centre;
    imposed.middleRows<6>(static_cast<Eigen::Index>(6 * local)) = node_modes(arm, frame, modes);
  }
  Eigen::MatrixXd reaction = k_rr * imposed;
  if (free_count > 0) {
    const SparseMatrix k_ii = block(full, free_position, free_count, free_position, free_count);
    const SparseMatrix k_ri = block(full, port_position, port_size, free_position, free_count);
    const Eigen::SimplicialLDLT<SparseMatrix> factor(k_ii);
    if (factor.info() != Eigen::Success)
      throw NotElasticError("the patch around a port is not held by its border");
    reaction -= k_ri * factor.solve(k_ri.transpose() * imposed);
  }

  const Eigen::MatrixXd work = imposed.transpose() * reaction;
  const Eigen::MatrixXd spread = work.ldlt().solve(reaction.transpose()).transpose();
  std::vector<Eigen::Triplet<double>> triplets;
  for (Eigen::Index column = 0; column < spread.cols(); ++column)
    for (Eigen::Index row = 0; row < port_size; ++row)
      triplets.emplace_back(6 * port_order[static_cast<std::size_t>(row / 6)] + static_cast<int>(row % 6),
                            static_cast<int>(column), spread(row, column));
  Port port{SparseMatrix(shell.unknowns(), spread.cols()), centre};
  port.spread.setFromTriplets(triplets.begin(), triplets.end());
  return port;
}

Port point_port(const Shell& shell, const std::vector<int>& nodes, const std::vector<double>& weights,
                double offset) {
  return point_port(shell, nodes, weights, std::vector<double>(nodes.size(), offset));
}

Port point_port(const Shell& shell, const std::vector<int>& nodes, const std::vector<double>& weights,
                const std::vector<double>& offsets) {
  Port port{SparseMatrix(shell.unknowns(), 3), Eigen::Vector3d::Zero()};
  std::vector<Eigen::Triplet<double>> triplets;
  for (std::size_t k = 0; k < nodes.size(); ++k) {
    const Eigen::Vector3d arm = offsets[k] * shell.mesh->directors.row(nodes[k]).transpose();
    port.centre += weights[k] * (shell.mesh->nodes.row(nodes[k]).transpose() + arm);
    for (int axis = 0; axis < 3; ++axis) {
      triplets.emplace_back(6 * nodes[k] + axis, axis, weights[k]);
      // A unit force at the arm's end turns the node by arm x e_axis.
      const Eigen::Vector3d moment = weights[k] * arm.cross(Eigen::Vector3d::Unit(axis));
      for (int turn = 0; turn < 3; ++turn) triplets.emplace_back(6 * nodes[k] + 3 + turn, axis, moment(turn));
    }
  }
  port.spread.setFromTriplets(triplets.begin(), triplets.end());
  return port;
}

}  // namespace gapstrain::solver
