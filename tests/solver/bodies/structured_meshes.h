// Plain structured shell meshes for tests of bodies.
#pragma once

#include "mesh/shell_mesh.h"

#include <Eigen/Geometry>

#include <cmath>
#include <memory>
#include <numbers>

namespace gapstrain::tests {

// Flat strip x in [0, length], y in [-width/2, width/2], groups "end:0" and "end:1" by rising y.
inline std::shared_ptr<mesh::ShellMesh> strip(double length, double width, double thickness, int along,
                                              int across) {
  auto mesh = std::make_shared<mesh::ShellMesh>();
  const int count = (along + 1) * (across + 1);
  mesh->nodes.resize(count, 3);
  mesh->directors = Eigen::RowVector3d::UnitZ().replicate(count, 1);
  mesh->thickness = Eigen::VectorXd::Constant(count, thickness);
  const auto node = [&](int i, int j) { return i * (across + 1) + j; };
  for (int i = 0; i <= along; ++i)
    for (int j = 0; j <= across; ++j)
      mesh->nodes.row(node(i, j)) << length * i / along, width * (static_cast<double>(j) / across - 0.5), 0.0;
  for (int i = 0; i < along; ++i)
    for (int j = 0; j < across; ++j)
      mesh->quads.push_back({node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)});
  for (int j = 0; j <= across; ++j) {
    mesh->groups["end:0"].push_back(node(0, j));
    mesh->groups["end:1"].push_back(node(along, j));
  }
  return mesh;
}

// Round tube about x from `start`, groups "end:0" and "end:1" round from +z towards +y.
inline std::shared_ptr<mesh::ShellMesh> tube(double radius, double thickness, double start, double length,
                                             int around, int along) {
  auto mesh = std::make_shared<mesh::ShellMesh>();
  const int count = around * (along + 1);
  mesh->nodes.resize(count, 3);
  mesh->directors.resize(count, 3);
  mesh->thickness = Eigen::VectorXd::Constant(count, thickness);
  const auto node = [&](int i, int j) { return i * around + j % around; };
  for (int i = 0; i <= along; ++i) {
    for (int j = 0; j < around; ++j) {
      const double angle = 2.0 * std::numbers::pi * j / around;
      mesh->directors.row(node(i, j)) << 0.0, std::sin(angle), std::cos(angle);
      mesh->nodes.row(node(i, j)) << start + length * i / along, radius * std::sin(angle),
          radius * std::cos(angle);
    }
  }
  for (int i = 0; i < along; ++i)
    for (int j = 0; j < around; ++j)
      mesh->quads.push_back({node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)});
  for (int j = 0; j < around; ++j) {
    mesh->groups["end:0"].push_back(node(0, j));
    mesh->groups["end:1"].push_back(node(along, j));
  }
  return mesh;
}

// Flat ring between radii a and b, evenly round, cells growing outward in proportion. Groups "rim" and "border".
inline std::shared_ptr<mesh::ShellMesh> ring(double a, double b, double thickness, int around, int outward) {
  auto mesh = std::make_shared<mesh::ShellMesh>();
  const int count = around * (outward + 1);
  mesh->nodes.resize(count, 3);
  mesh->directors = Eigen::RowVector3d::UnitZ().replicate(count, 1);
  mesh->thickness = Eigen::VectorXd::Constant(count, thickness);
  const auto node = [&](int i, int j) { return i * around + j % around; };
  for (int i = 0; i <= outward; ++i) {
    const double radius = a * std::pow(b / a, static_cast<double>(i) / outward);
    for (int j = 0; j < around; ++j) {
      const double angle = 2.0 * std::numbers::pi * j / around;
      mesh->nodes.row(node(i, j)) << radius * std::cos(angle), radius * std::sin(angle), 0.0;
    }
  }
  for (int i = 0; i < outward; ++i)
    for (int j = 0; j < around; ++j)
      mesh->quads.push_back({node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)});
  for (int j = 0; j < around; ++j) {
    mesh->groups["rim"].push_back(node(0, j));
    mesh->groups["border"].push_back(node(outward, j));
  }
  return mesh;
}

// The same body turned and moved as a whole.
inline std::shared_ptr<mesh::ShellMesh> moved(const mesh::ShellMesh& mesh, const Eigen::Isometry3d& motion) {
  auto result = std::make_shared<mesh::ShellMesh>(mesh);
  result->nodes = (motion * mesh.nodes.transpose()).transpose();
  result->directors = (motion.linear() * mesh.directors.transpose()).transpose();
  return result;
}

}  // namespace gapstrain::tests
