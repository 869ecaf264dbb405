// What every host gives. Compiled once with the native one and once with the plain one.
#include "solver/host/side_by_side.h"
#include "solver/host/sparse_factor.h"

#include <catch2/catch.hpp>

#include <Eigen/Dense>

#include <random>
#include <stdexcept>
#include <string>
#include <vector>

namespace gapstrain {

namespace {

using Sparse = Eigen::SparseMatrix<double>;

// Springs along a line and across it, one end held: lower triangle.
Sparse chain(int count, double last) {
  std::vector<Eigen::Triplet<double>> entries;
  for (int k = 0; k < count; ++k) {
    entries.emplace_back(k, k, k + 1 < count ? 5.0 : last);
    if (k > 0) entries.emplace_back(k, k - 1, -1.0);
    if (k > 6) entries.emplace_back(k, k - 7, -1.0);
  }
  Sparse matrix(count, count);
  matrix.setFromTriplets(entries.begin(), entries.end());
  return matrix;
}

}  // namespace

TEST_CASE("a factor solves its matrix for every column", "[solver][host]") {
  const Sparse lower = chain(300, 3.0);
  const Eigen::MatrixXd full = Eigen::MatrixXd(lower).selfadjointView<Eigen::Lower>();
  std::mt19937 random(1);
  std::uniform_real_distribution<double> between(-1.0, 1.0);
  const Eigen::MatrixXd expected = Eigen::MatrixXd::NullaryExpr(300, 4, [&] { return between(random); });
  const auto factor = solver::factor_sparse(lower);
  REQUIRE(factor != nullptr);
  CHECK((factor->solve(full * expected) - expected).cwiseAbs().maxCoeff() < 1e-12);
}

TEST_CASE("a matrix that is not positive definite has no factor", "[solver][host]") {
  CHECK(solver::factor_sparse(chain(50, -1.0)) == nullptr);
  CHECK(solver::factor_sparse(chain(50, 5.0)) != nullptr);
}

TEST_CASE("jobs side by side are done once each, and the first fault by number is thrown on", "[solver][host]") {
  std::vector<int> done(1000, 0);
  solver::side_by_side(done.size(), [&](std::size_t k) { ++done[k]; });
  CHECK(done == std::vector<int>(1000, 1));
  solver::side_by_side(0, [](std::size_t) { throw std::runtime_error("no job to do"); });
  CHECK_THROWS_WITH(solver::side_by_side(100,
                                         [](std::size_t k) {
                                           if (k == 30 || k == 70) throw std::runtime_error(std::to_string(k));
                                         }),
                    "30");
}

}  // namespace gapstrain
