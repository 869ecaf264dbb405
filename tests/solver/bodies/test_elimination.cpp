#include "solver/bodies/elimination.h"

#include "tests/framework/numbers.h"
#include "tests/solver/bodies/contact_problems.h"

#include <Eigen/Dense>

#include <catch2/catch.hpp>

#include <array>
#include <stdexcept>

namespace gapstrain {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;
using tests::difference;

constexpr Index first_count = 15, further_count = 4, free_count = 12;
constexpr double hold = 0.7;  // N/mm, of the hands

// Rows in place and further rows on two bodies. Those in place resist all motions of the first body, but only
// `held` of the second's.
struct CondensedRows {
  MatrixXd flexibility, rigid;            // of the rows in place
  MatrixXd coupling, own, further_rigid;  // of the further rows
  MatrixXd right, rigid_load;             // three cases
  MatrixXd unresisted;                    // orthonormal null space of `rigid`, from its singular values
  VectorXd place;                         // of the hands

  explicit CondensedRows(Index held) {
    tests::Random random(7 + static_cast<unsigned>(held));
    const MatrixXd root = random.normal(first_count + further_count, first_count + further_count);
    const MatrixXd all = root * root.transpose() + 0.3 * MatrixXd::Identity(root.rows(), root.rows());
    flexibility = all.topLeftCorner(first_count, first_count);
    coupling = all.topRightCorner(first_count, further_count);
    own = all.bottomRightCorner(further_count, further_count);
    rigid.resize(first_count, free_count);
    rigid << random.normal(first_count, 6), random.normal(first_count, held) * random.normal(held, 6);
    further_rigid = random.normal(further_count, free_count);
    right = random.normal(first_count, 3);
    rigid_load = random.normal(free_count, 3);
    place = random.normal(free_count, 1);
    const Eigen::JacobiSVD<MatrixXd> singular(rigid, Eigen::ComputeFullV);
    unresisted = singular.matrixV().rightCols(free_count - singular.rank());
  }

  MatrixXd springs() const { return hold * unresisted * unresisted.transpose(); }

  // [S -D; D^T H] with weak springs as H.
  MatrixXd whole() const {
    MatrixXd matrix(first_count + free_count, first_count + free_count);
    matrix << flexibility, -rigid, rigid.transpose(), springs();
    return matrix;
  }
};

}  // namespace

TEST_CASE("held bodies have no free motion, and the answer satisfies the equations", "[solver][elimination]") {
  const CondensedRows rows(6);
  const solver::Elimination links(rows.flexibility, rows.rigid);
  REQUIRE(links.free_motions().cols() == 0);
  const auto answer = links.solve(rows.right, rows.rigid_load);
  CHECK(difference(rows.flexibility * answer.forces - rows.rigid * answer.amplitudes, rows.right) < 1e-12);
  CHECK(difference(rows.rigid.transpose() * answer.forces, rows.rigid_load) < 1e-12);
}

TEST_CASE("free motions span what no row resists", "[solver][elimination]") {
  for (const Index held : {0, 1, 3, 5}) {
    const CondensedRows rows(held);
    const solver::Elimination links(rows.flexibility, rows.rigid);
    const MatrixXd& free = links.free_motions();
    REQUIRE(free.cols() == 6 - held);
    CHECK(difference(free * free.transpose(), rows.unresisted * rows.unresisted.transpose()) < 1e-10);
  }
}

TEST_CASE("without rows every motion is free", "[solver][elimination]") {
  const solver::Elimination none(MatrixXd(0, 0), MatrixXd(0, free_count));
  CHECK(none.free_motions().cols() == free_count);
  const VectorXd place = VectorXd::LinSpaced(free_count, -1.3, 2.9);
  const solver::Elimination by_hand(MatrixXd(0, 0), MatrixXd(0, free_count), solver::Hands{hold, place});
  CHECK(difference(by_hand.solve(MatrixXd(0, 1), VectorXd::Zero(free_count)).amplitudes, place) < 1e-12);
}

TEST_CASE("hands are weak springs on the free motions and on nothing else", "[solver][elimination]") {
  for (const Index held : {1, 3, 5, 6}) {
    const CondensedRows rows(held);
    solver::Elimination links(rows.flexibility, rows.rigid, solver::Hands{hold, rows.place});
    const auto expected = [&](const VectorXd& place) -> MatrixXd {
      MatrixXd right(first_count + free_count, 3);
      right << rows.right, rows.rigid_load.colwise() + rows.springs() * place;
      return rows.whole().fullPivLu().solve(right);
    };
    for (const VectorXd& place : {VectorXd(rows.place), VectorXd(-3.1 * rows.place.reverse())}) {
      links.give_way(place);
      const auto answer = links.solve(rows.right, rows.rigid_load);
      const MatrixXd dense = expected(place);
      CHECK(difference(answer.forces, dense.topRows(first_count)) < 1e-10);
      CHECK(difference(answer.amplitudes, dense.bottomRows(free_count)) < 1e-10);
      const VectorXd pull = links.pull(answer.amplitudes.col(1));
      CHECK((pull - rows.springs() * (place - dense.col(1).tail(free_count))).norm() <
            1e-10 * (1.0 + pull.norm()));
      CHECK((rows.rigid.transpose() * answer.forces.col(1) - pull - rows.rigid_load.col(1)).norm() < 1e-11);
    }
  }
}

TEST_CASE("hands give way to what is soft and hold the rest firmly", "[solver][elimination]") {
  const CondensedRows rows(2);
  solver::Hands hands{hold, rows.place};
  hands.soft = MatrixXd::Identity(free_count, free_count).middleCols(6, 2);
  hands.firm = 50.0;
  solver::Elimination links(rows.flexibility, rows.rigid, hands);
  const MatrixXd& free = links.free_motions();
  REQUIRE(free.cols() == 4);
  // Springs on the free motions alone: soft ones along two amplitudes of the second body.
  const MatrixXd soft = free.transpose() * *hands.soft;
  const MatrixXd springs =
      free * (50.0 * MatrixXd::Identity(4, 4) - (50.0 - hold) * soft * soft.transpose()) * free.transpose();
  MatrixXd whole(first_count + free_count, first_count + free_count);
  whole << rows.flexibility, -rows.rigid, rows.rigid.transpose(), springs;
  VectorXd right(first_count + free_count);
  right << rows.right.col(0), rows.rigid_load.col(0) + springs * rows.place;
  const VectorXd dense = whole.fullPivLu().solve(right);
  const auto answer = links.solve(rows.right, rows.rigid_load);
  CHECK(difference(answer.forces.col(0), dense.head(first_count)) < 1e-9);
  CHECK(difference(answer.amplitudes.col(0), dense.tail(free_count)) < 1e-9);
  CHECK((links.pull(dense.tail(free_count)) - springs * (rows.place - dense.tail(free_count))).norm() < 1e-9);

  const VectorXd moved = VectorXd::LinSpaced(free_count, 0.3, 4.0);
  links.give_way(moved);
  VectorXd at = rows.place;
  at.segment(6, 2) = moved.segment(6, 2);
  CHECK((links.pull(moved) - springs * (at - moved)).norm() < 1e-9);
  VectorXd firm_pull = links.soft_pull(moved);
  firm_pull.segment(6, 2).setZero();
  CHECK(firm_pull.isZero(1e-12));
}

TEST_CASE("further rows see the Schur complement of those in place", "[solver][elimination]") {
  const std::array<Index, 2> some = {2, 0}, others = {1, 3};
  for (const bool by_hand : {false, true}) {
    const CondensedRows rows(by_hand ? 2 : 6);
    const solver::Elimination links(rows.flexibility, rows.rigid,
                                    by_hand ? std::optional(solver::Hands{hold, rows.place}) : std::nullopt);
    MatrixXd down(first_count + free_count, further_count), across(further_count, first_count + free_count);
    down << rows.coupling, rows.further_rigid.transpose();
    across << rows.coupling.transpose(), -rows.further_rigid;
    const MatrixXd dense = rows.own - across * rows.whole().fullPivLu().solve(down);
    const auto columns = links.columns(rows.coupling, rows.further_rigid);
    CHECK(difference(solver::Elimination::compliance(rows.own, columns, columns), dense) < 1e-10);

    const auto of = [&](const auto& chosen) {
      return links.columns(rows.coupling(Eigen::all, chosen), rows.further_rigid(chosen, Eigen::all));
    };
    const MatrixXd block = solver::Elimination::compliance(rows.own(some, others), of(some), of(others));
    CHECK(difference(block, dense(some, others)) < 1e-10);
  }
}

TEST_CASE("two rigid rows on the same motion of a port are refused", "[solver][elimination]") {
  const MatrixXd redundant = MatrixXd::Ones(2, 2);
  CHECK_THROWS_AS(solver::Elimination(redundant, MatrixXd::Ones(2, 6)), std::invalid_argument);
}

}  // namespace gapstrain
