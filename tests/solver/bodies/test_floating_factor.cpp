#include "solver/bodies/floating_factor.h"

#include "tests/solver/bodies/structured_meshes.h"

#include <Eigen/Dense>

#include <catch2/catch.hpp>

namespace gapstrain {

namespace {

solver::Shell bone_like_tube() {
  return {tests::tube(5.3, 2.1, 1.0, 31.0, 14, 11),
          solver::orthotropic_shell(17000.0, 11500.0, 0.41, 3300.0, 3200.0, 3600.0)};
}

}  // namespace

TEST_CASE("six rigid motions of a curved body need no force", "[solver][body]") {
  const auto shell = bone_like_tube();
  const auto stiffness = solver::assemble_stiffness(shell);
  const Eigen::MatrixXd rigid = solver::rigid_motions(shell.mesh->nodes, Eigen::Vector3d(3.0, -2.0, 1.0), 10.0);
  const Eigen::MatrixXd force = stiffness.selfadjointView<Eigen::Lower>() * rigid;
  CHECK(force.cwiseAbs().maxCoeff() < 1e-10 * Eigen::MatrixXd(stiffness).cwiseAbs().maxCoeff());
}

TEST_CASE("a body has six motions without energy and no more", "[solver][body]") {
  const auto shell = bone_like_tube();
  const Eigen::MatrixXd dense = solver::assemble_stiffness(shell).selfadjointView<Eigen::Lower>() *
                                Eigen::MatrixXd::Identity(shell.unknowns(), shell.unknowns());
  const Eigen::VectorXd values = Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(dense).eigenvalues();
  const double largest = values.tail<1>()(0);
  CHECK(values.head<6>().cwiseAbs().maxCoeff() < 1e-12 * largest);
  CHECK(values(6) > 1e-8 * largest);
}

TEST_CASE("the answer of a floating body balances the load's self-equilibrated part", "[solver][body]") {
  const auto shell = bone_like_tube();
  const auto stiffness = solver::assemble_stiffness(shell);
  const solver::FloatingFactor factor(stiffness, shell.mesh->nodes);
  std::srand(7);
  const Eigen::MatrixXd forces = Eigen::MatrixXd::Random(shell.unknowns(), 3);
  const Eigen::MatrixXd motion = factor.solve(forces);

  const Eigen::MatrixXd& z = factor.rigid();
  const Eigen::MatrixXd balanced = forces - z * (z.transpose() * z).ldlt().solve(z.transpose() * forces);
  const Eigen::MatrixXd left = stiffness.selfadjointView<Eigen::Lower>() * motion;
  CHECK((left - balanced).norm() < 1e-9 * forces.norm());
  CHECK((z.transpose() * motion).norm() < 1e-9 * motion.norm());
  const Eigen::MatrixXd compliance = forces.transpose() * motion;
  CHECK((compliance - compliance.transpose()).norm() < 1e-9 * compliance.norm());
}

TEST_CASE("a mesh with a loose piece is refused", "[solver][body]") {
  auto mesh = std::make_shared<mesh::ShellMesh>(*tests::strip(10.0, 3.0, 0.7, 6, 2));
  mesh->quads.erase(mesh->quads.begin() + 4, mesh->quads.begin() + 6);  // saws the strip through
  const solver::Shell shell{mesh, solver::isotropic_shell(1000.0, 0.3)};
  CHECK_THROWS_AS(solver::FloatingFactor(solver::assemble_stiffness(shell), mesh->nodes), solver::NotElasticError);
}

}  // namespace gapstrain
