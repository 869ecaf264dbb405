// Nodes along a curve at a wanted spacing. Private to mesh/.
#pragma once

#include "mesh/size_field.h"

#include <functional>
#include <vector>

namespace gapstrain::mesh {

// Parameters from `start` to `end` (both included) that cut the curve into an even number of edges (at least
// `least`) whose lengths follow `size`: each edge spans the same share of the integral of ds / size.
std::vector<double> divide_curve(const std::function<Eigen::Vector2d(double)>& curve, double start, double end,
                                 const SizeField& size, int least = 2);

}  // namespace gapstrain::mesh
