#include "solver/bodies/shell.h"

namespace gapstrain::solver {

namespace {

template <typename Shape, typename Cell>
Shape gather(const Shell& shell, const Cell& cell) {
  Shape shape;
  for (std::size_t corner = 0; corner < cell.size(); ++corner) {
    const auto row = static_cast<Eigen::Index>(corner);
    shape.nodes.row(row) = shell.mesh->nodes.row(cell[corner]);
    shape.directors.row(row) = shell.mesh->directors.row(cell[corner]);
    shape.thickness(row) = shell.mesh->thickness(cell[corner]);
  }
  shape.axis_1 = shell.axis_1;
  return shape;
}

}  // namespace

QuadShape quad_shape(const Shell& shell, const mesh::Quad& cell) { return gather<QuadShape>(shell, cell); }

TriangleShape triangle_shape(const Shell& shell, const mesh::Triangle& cell) {
  return gather<TriangleShape>(shell, cell);
}

}  // namespace gapstrain::solver
