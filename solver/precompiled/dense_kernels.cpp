#include "solver/precompiled/dense_kernels.h"

namespace Eigen::internal {
#define GAPSTRAIN_INSTANTIATE template
#include "solver/precompiled/dense_kernels.inc"
}  // namespace Eigen::internal
