// Eigen's matrix kernels for double are compiled once, in dense_kernels.cpp, instead of in each file that
// multiplies matrices. It saves compilers' time and changes no figure: a file that does not see this header makes
// the same code for itself.
#pragma once

#include <Eigen/Core>

namespace Eigen::internal {

using DoubleTraits = gebp_traits<double, double>;
using ByColumns = const_blas_data_mapper<double, Index, ColMajor>;
using ByRows = const_blas_data_mapper<double, Index, RowMajor>;

#define GAPSTRAIN_INSTANTIATE extern template
#include "solver/precompiled/dense_kernels.inc"
#undef GAPSTRAIN_INSTANTIATE

}  // namespace Eigen::internal
