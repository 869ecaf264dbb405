// What tests of figures have in common.
#pragma once

#include <Eigen/Core>

#include <algorithm>
#include <initializer_list>
#include <limits>

namespace gapstrain::tests {

inline constexpr double missing = std::numeric_limits<double>::quiet_NaN();

inline Eigen::VectorXd vector(std::initializer_list<double> values) {
  Eigen::VectorXd all(static_cast<Eigen::Index>(values.size()));
  std::copy(values.begin(), values.end(), all.data());
  return all;
}

// Largest of any entry, as a share of the largest entry of `other`.
inline double difference(const Eigen::MatrixXd& one, const Eigen::MatrixXd& other) {
  return (one - other).cwiseAbs().maxCoeff() / std::max(other.cwiseAbs().maxCoeff(), 1e-300);
}

}  // namespace gapstrain::tests
