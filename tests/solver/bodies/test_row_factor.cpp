#include "solver/bodies/elimination.h"
#include "solver/bodies/row_factor.h"
#include "tests/framework/numbers.h"

#include "tests/solver/bodies/contact_problems.h"

#include <Eigen/Dense>

#include <catch2/catch.hpp>

#include <cmath>
#include <stdexcept>
#include <utility>
#include <vector>

namespace gapstrain {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using tests::difference;
using Rows = std::vector<Index>;
using Blocks = std::vector<Rows>;

constexpr Index row_count = 90, motion_count = 18;

struct Problem {
  MatrixXd flexibility, rigid;

  explicit Problem(unsigned seed) {
    tests::Random random(seed);
    const MatrixXd root = random.normal(row_count, row_count);
    flexibility = root * root.transpose() + 5.0 * MatrixXd::Identity(row_count, row_count);
    rigid = random.normal(row_count, motion_count);
  }
};

// All rows in random order, cut into blocks of random sizes.
Blocks random_blocks(tests::Random& random) {
  Blocks blocks;
  for (const int row : random.order(static_cast<int>(row_count))) {
    if (blocks.empty() || random.between(0.0, 1.0) < 0.3) blocks.emplace_back();
    blocks.back().push_back(row);
  }
  return blocks;
}

// Takes up blocks [first, end) after those that are in.
void take_up(solver::RowFactor& factor, const Problem& problem, const Blocks& blocks, std::size_t first,
             std::size_t end) {
  Rows taken;
  for (std::size_t k = 0; k < end; ++k) {
    if (k >= first) factor.append(problem.flexibility, problem.rigid, taken, blocks[k]);
    taken.insert(taken.end(), blocks[k].begin(), blocks[k].end());
  }
}

solver::RowFactor fresh(const Problem& problem, const Blocks& blocks) {
  solver::RowFactor factor(motion_count);
  take_up(factor, problem, blocks, 0, blocks.size());
  return factor;
}

Rows joined(const Blocks& blocks) {
  Rows rows;
  for (const auto& block : blocks) rows.insert(rows.end(), block.begin(), block.end());
  return rows;
}

MatrixXd lower_of(const solver::RowFactor& factor) { return factor.lower().toDenseMatrix(); }

bool equal_bits(const solver::RowFactor& one, const solver::RowFactor& other) {
  return one.rows() == other.rows() && lower_of(one) == lower_of(other) &&
         MatrixXd(one.reduced_rigid()) == MatrixXd(other.reduced_rigid());
}

}  // namespace

TEST_CASE("rows taken up block by block have the Cholesky factor of all of them", "[solver][row_factor]") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    const Problem problem(seed);
    tests::Random random(1000 + seed);
    const Blocks blocks = random_blocks(random);
    const Rows rows = joined(blocks);
    const auto factor = fresh(problem, blocks);
    REQUIRE(factor.rows() == row_count);
    REQUIRE(factor.motions() == motion_count);
    const Eigen::LLT<MatrixXd> whole(problem.flexibility(rows, rows));
    const MatrixXd lower = whole.matrixL(), rigid = problem.rigid(rows, Eigen::all);
    CHECK(difference(lower_of(factor), lower) < 1e-12);
    CHECK(difference(factor.upper().toDenseMatrix(), lower.transpose()) < 1e-12);
    CHECK(difference(factor.reduced_rigid(), whole.matrixL().solve(rigid)) < 1e-12);
  }
}

TEST_CASE("a factor does not remember the rows that it dropped", "[solver][row_factor]") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    const Problem problem(seed);
    tests::Random random(2000 + seed);
    Blocks blocks = random_blocks(random);
    solver::RowFactor factor = fresh(problem, blocks);
    for (int turn = 0; turn < 5; ++turn) {
      // Keeps some blocks, brings the others in another order and division.
      const std::size_t kept = static_cast<std::size_t>(random.whole(0, static_cast<int>(blocks.size())));
      Blocks next(blocks.begin(), blocks.begin() + static_cast<std::ptrdiff_t>(kept));
      const Index rows_kept = static_cast<Index>(joined(next).size());
      const Rows dropped = joined({blocks.begin() + static_cast<std::ptrdiff_t>(kept), blocks.end()});
      for (const int place : random.order(static_cast<int>(dropped.size()))) {
        if (next.size() == kept || random.between(0.0, 1.0) < 0.3) next.emplace_back();
        next.back().push_back(dropped[static_cast<std::size_t>(place)]);
      }
      factor.shrink(rows_kept);
      REQUIRE(factor.rows() == rows_kept);
      take_up(factor, problem, next, kept, next.size());
      CHECK(equal_bits(factor, fresh(problem, next)));
      blocks = std::move(next);
    }
  }
}

TEST_CASE("rigid rows that repeat a motion are refused, and the rows before them stay usable",
          "[solver][row_factor]") {
  // Whole numbers, so that the pivot of a repeated row is 0 exactly: rounding may leave it barely positive, and
  // then nothing is noticed.
  Problem problem(3);
  tests::Random random(4);
  const MatrixXd root = MatrixXd(random.normal(row_count, row_count).unaryExpr([](double x) {
                          return std::round(x);
                        })).triangularView<Eigen::UnitLower>();
  problem.flexibility = root * root.transpose();
  // The last two rows are the first two once more.
  const Rows copies = {row_count - 2, row_count - 1}, originals = {0, 1};
  problem.flexibility(copies, Eigen::all) = problem.flexibility(originals, Eigen::all).eval();
  problem.flexibility(Eigen::all, copies) = problem.flexibility(Eigen::all, originals).eval();
  const Blocks before = {{0, 1}, {2, 3, 4}}, after = {{5, 7}, {6}};
  solver::RowFactor factor = fresh(problem, before);
  const MatrixXd lower = lower_of(factor), rigid = factor.reduced_rigid();
  CHECK_THROWS_AS(factor.append(problem.flexibility, problem.rigid, joined(before), copies),
                  std::invalid_argument);
  REQUIRE(factor.rows() == 5);
  CHECK(lower_of(factor) == lower);
  CHECK(MatrixXd(factor.reduced_rigid()) == rigid);
  Blocks all = before;
  all.insert(all.end(), after.begin(), after.end());
  take_up(factor, problem, all, before.size(), all.size());
  CHECK(equal_bits(factor, fresh(problem, all)));
}

TEST_CASE("links solved on a borrowed factor answer as on their own matrices", "[solver][row_factor]") {
  const Problem problem(5);
  tests::Random random(6);
  const Blocks blocks = random_blocks(random);
  const Rows rows = joined(blocks);
  const auto factor = fresh(problem, blocks);
  const MatrixXd right = random.normal(row_count, 2), rigid_load = random.normal(motion_count, 2);
  const auto borrowed = solver::Elimination(factor).solve(right, rigid_load);
  const auto own = solver::Elimination(problem.flexibility(rows, rows), problem.rigid(rows, Eigen::all))
                       .solve(right, rigid_load);
  CHECK(difference(borrowed.forces, own.forces) < 1e-11);
  CHECK(difference(borrowed.amplitudes, own.amplitudes) < 1e-11);
}

}  // namespace gapstrain
