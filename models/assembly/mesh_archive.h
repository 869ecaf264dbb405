// Matrices, meshes and what the solver makes of them, in an archive of cereal. Private to the archive of bodies.
#pragma once

#include "mesh/shell_mesh.h"
#include "solver/bodies/body.h"
#include "solver/bodies/port.h"

#include <cereal/types/array.hpp>
#include <cereal/types/map.hpp>
#include <cereal/types/string.hpp>
#include <cereal/types/vector.hpp>

#include <Eigen/SparseCore>

#include <algorithm>
#include <cstdint>
#include <stdexcept>
#include <vector>

namespace cereal {

template <class Archive, int rows, int columns, int options, int most_rows, int most_columns>
void save(Archive& archive, const Eigen::Matrix<double, rows, columns, options, most_rows, most_columns>& matrix) {
  archive(static_cast<std::int64_t>(matrix.rows()), static_cast<std::int64_t>(matrix.cols()));
  archive(binary_data(matrix.data(), static_cast<std::size_t>(matrix.size()) * sizeof(double)));
}
template <class Archive, int rows, int columns, int options, int most_rows, int most_columns>
void load(Archive& archive, Eigen::Matrix<double, rows, columns, options, most_rows, most_columns>& matrix) {
  std::int64_t height = 0, width = 0;
  archive(height, width);
  const auto fits = [](std::int64_t size, int fixed) {
    return fixed == Eigen::Dynamic ? size >= 0 : size == fixed;
  };
  if (!fits(height, rows) || !fits(width, columns)) throw std::runtime_error("a matrix of another size");
  matrix.resize(height, width);
  archive(binary_data(matrix.data(), static_cast<std::size_t>(matrix.size()) * sizeof(double)));
}

template <class Archive>
void save(Archive& archive, const Eigen::SparseMatrix<double>& matrix) {
  Eigen::SparseMatrix<double> packed = matrix;
  packed.makeCompressed();
  const std::vector<int> outer(packed.outerIndexPtr(), packed.outerIndexPtr() + packed.outerSize() + 1);
  const std::vector<int> inner(packed.innerIndexPtr(), packed.innerIndexPtr() + packed.nonZeros());
  const std::vector<double> values(packed.valuePtr(), packed.valuePtr() + packed.nonZeros());
  archive(static_cast<std::int64_t>(packed.rows()), outer, inner, values);
}
template <class Archive>
void load(Archive& archive, Eigen::SparseMatrix<double>& matrix) {
  std::int64_t rows = 0;
  std::vector<int> outer, inner;
  std::vector<double> values;
  archive(rows, outer, inner, values);
  if (outer.empty() || inner.size() != values.size()) throw std::runtime_error("a matrix of another size");
  // Assigned as a whole it would keep room for twice its rows (Eigen 3.4, SparseAssign.h): a hundred times more.
  matrix.resize(rows, static_cast<Eigen::Index>(outer.size()) - 1);
  matrix.resizeNonZeros(static_cast<Eigen::Index>(values.size()));
  std::copy(outer.begin(), outer.end(), matrix.outerIndexPtr());
  std::copy(inner.begin(), inner.end(), matrix.innerIndexPtr());
  std::copy(values.begin(), values.end(), matrix.valuePtr());
}

}  // namespace cereal

namespace gapstrain::mesh {

template <class Archive>
void serialize(Archive& archive, ShellMesh& mesh) {
  auto& [nodes, directors, thickness, quads, triangles, groups] = mesh;
  archive(nodes, directors, thickness, quads, triangles, groups);
}

}  // namespace gapstrain::mesh

namespace gapstrain::solver {

template <class Archive>
void serialize(Archive& archive, Port& port) {
  auto& [spread, centre] = port;
  archive(spread, centre);
}

template <class Archive>
void serialize(Archive& archive, Ports& ports) {
  auto& [spread, first_column] = ports;
  std::vector<std::int64_t> wide(first_column.begin(), first_column.end());  // whatever the machine's indices are
  archive(spread, wide);
  first_column.assign(wide.begin(), wide.end());
}

template <class Archive>
void serialize(Archive& archive, Probe& probe) {
  auto& [of_port_forces, of_rigid] = probe;
  archive(of_port_forces, of_rigid);
}

// Of the compliance, which is symmetric to the last bit (solver/bodies/body), one half.
template <class Archive>
void save(Archive& archive, const Condensed& condensed) {
  const auto& [compliance, rigid, turn, probes] = condensed;
  std::vector<double> lower;
  for (Eigen::Index column = 0; column < compliance.cols(); ++column)
    lower.insert(lower.end(), compliance.col(column).begin() + column, compliance.col(column).end());
  archive(static_cast<std::int64_t>(compliance.rows()), lower, rigid, turn, probes);
}
template <class Archive>
void load(Archive& archive, Condensed& condensed) {
  auto& [compliance, rigid, turn, probes] = condensed;
  std::int64_t rows = 0;
  std::vector<double> lower;
  archive(rows, lower, rigid, turn, probes);
  if (rows < 0 || lower.size() != static_cast<std::size_t>(rows * (rows + 1) / 2))
    throw std::runtime_error("a matrix of another size");
  compliance.resize(rows, rows);
  auto next = lower.begin();
  for (Eigen::Index column = 0; column < rows; ++column)
    for (Eigen::Index row = column; row < rows; ++row) compliance(row, column) = compliance(column, row) = *next++;
}

}  // namespace gapstrain::solver
