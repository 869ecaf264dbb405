#include "solver/bodies/port.h"

#include "tests/solver/bodies/structured_meshes.h"

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace gapstrain {

namespace {

constexpr double youngs_modulus = 110000.0, nu = 0.3;

// Port compliance of a ring clamped at its border: R^T K^-1 R.
Eigen::MatrixXd clamped_compliance(const solver::Shell& shell, const solver::Port& port) {
  std::vector<int> position(static_cast<std::size_t>(shell.unknowns()), 0);
  for (const int node : shell.mesh->groups.at("border"))
    for (int k = 0; k < 6; ++k) position[static_cast<std::size_t>(6 * node + k)] = -1;
  int free = 0;
  for (int& p : position)
    if (p == 0) p = free++;
  const solver::SparseMatrix full = solver::assemble_stiffness(shell).selfadjointView<Eigen::Lower>();
  std::vector<Eigen::Triplet<double>> triplets;
  for (Eigen::Index column = 0; column < full.outerSize(); ++column)
    for (solver::SparseMatrix::InnerIterator entry(full, column); entry; ++entry) {
      const int r = position[static_cast<std::size_t>(entry.row())],
                c = position[static_cast<std::size_t>(entry.col())];
      if (r >= 0 && c >= 0) triplets.emplace_back(r, c, entry.value());
    }
  solver::SparseMatrix reduced(free, free);
  reduced.setFromTriplets(triplets.begin(), triplets.end());
  Eigen::MatrixXd spread = Eigen::MatrixXd::Zero(free, port.motions());
  for (Eigen::Index column = 0; column < port.motions(); ++column)
    for (solver::SparseMatrix::InnerIterator entry(port.spread, column); entry; ++entry)
      if (const int r = position[static_cast<std::size_t>(entry.row())]; r >= 0) spread(r, column) = entry.value();
  return spread.transpose() * Eigen::SimplicialLDLT<solver::SparseMatrix>(reduced).solve(spread);
}

}  // namespace

TEST_CASE("a port reads a rigid motion of its body exactly", "[solver][port]") {
  const solver::Shell shell{tests::ring(1.5, 9.0, 2.3, 32, 14), solver::isotropic_shell(youngs_modulus, nu)};
  const Eigen::Vector3d centre(0.0, 0.0, 0.0);
  for (const auto modes : {solver::RimModes::rigid, solver::RimModes::rigid_and_strain}) {
    const solver::Port port = solver::reaction_port(shell, shell.mesh->groups.at("rim"), centre, 4.5,
                                                    Eigen::Matrix3d::Identity(), modes);
    const Eigen::MatrixXd read = port.spread.transpose() * solver::rigid_motions(shell.mesh->nodes, centre, 1.0);
    Eigen::MatrixXd expected = Eigen::MatrixXd::Zero(read.rows(), 6);
    expected.topRows<6>().setIdentity();
    CHECK((read - expected).cwiseAbs().maxCoeff() < 1e-11);
  }
}

TEST_CASE("a rim reads uniform strain and curvature of the wall around it", "[solver][port]") {
  const solver::Shell shell{tests::ring(1.5, 9.0, 2.3, 32, 14), solver::isotropic_shell(youngs_modulus, nu)};
  const solver::Port port =
      solver::reaction_port(shell, shell.mesh->groups.at("rim"), Eigen::Vector3d::Zero(), 4.5,
                            Eigen::Matrix3d::Identity(), solver::RimModes::rigid_and_strain);
  Eigen::VectorXd motion = Eigen::VectorXd::Zero(shell.unknowns());
  const double strain_1 = 3e-4, shear_12 = 5e-4, curvature_2 = 7e-5, twist = 4e-5;
  for (Eigen::Index node = 0; node < shell.mesh->nodes.rows(); ++node) {
    const double x = shell.mesh->nodes(node, 0), y = shell.mesh->nodes(node, 1);
    motion.segment<3>(6 * node) << strain_1 * x + shear_12 * y / 2, shear_12 * x / 2,
        curvature_2 * y * y / 2 + twist * x * y;
    motion.segment<3>(6 * node + 3) << curvature_2 * y + twist * x, -twist * y, 0.0;
  }
  Eigen::VectorXd expected = Eigen::VectorXd::Zero(12);
  expected.tail<6>() << strain_1, 0.0, shear_12, 0.0, curvature_2, twist;
  CHECK((port.spread.transpose() * motion - expected).cwiseAbs().maxCoeff() < 1e-11);
}

TEST_CASE("a port whose patch swallows the body is refused", "[solver][port]") {
  const solver::Shell shell{tests::ring(1.5, 9.0, 2.3, 32, 14), solver::isotropic_shell(youngs_modulus, nu)};
  CHECK_THROWS_AS(solver::reaction_port(shell, shell.mesh->groups.at("rim"), Eigen::Vector3d::Zero(), 20.0,
                                        Eigen::Matrix3d::Identity(), solver::RimModes::rigid),
                  solver::NotElasticError);
}

namespace {

struct DiskCompliance {
  double axial = 0.0, lateral = 0.0, tilt = 0.0;
};

// A rigid disk of radius a bonded into a plate clamped at radius b. Axial: Timoshenko & Woinowsky-Krieger 1959,
// Theory of Plates and Shells, art. 17-18, with uniform transverse shear added; lateral: plane stress, Michell's
// series for n = 1; tilt: thin plate part of the same book, art. 62-63, shear part of Reissner's plate (exact for
// b >> a) with the clamped edge's own share.
DiskCompliance bonded_disk(double a, double b, double t) {
  const double shear = youngs_modulus / (2 * (1 + nu)), kappa = 5.0 / 6.0, pi = std::numbers::pi;
  const double rigidity = youngs_modulus * t * t * t / (12 * (1 - nu * nu));
  const double log_ratio = std::log(b / a), a2 = a * a, b2 = b * b, n1 = nu / (1 + nu);
  const double mu = a * std::sqrt(10.0) / t;
  const double k0 = std::cyl_bessel_k(0.0, mu), k2 = std::cyl_bessel_k(2.0, mu);
  return {(b2 - a2 - 4 * a2 * b2 * log_ratio * log_ratio / (b2 - a2)) / (16 * pi * rigidity) +
              log_ratio / (2 * pi * kappa * shear * t),
          ((3 - 4 * n1) * 2 * log_ratio - 2 * (b2 - a2) / ((b2 + a2) * (3 - 4 * n1))) /
              (16 * pi * shear * (1 - n1) * t),
          (log_ratio - (b2 - a2) / (b2 + a2)) / (4 * pi * rigidity) +
              k0 / (k0 + k2) / (2 * pi * kappa * shear * t * a2) + 0.9 / (pi * kappa * shear * t * b2)};
}

// Compliance (6 x 6) of the rim's rigid motions in a ring clamped at radius b, its strains held at zero as a
// bonded disk holds them. The mesh goes two rows beyond b, so that the port's patch may reach as far as b itself.
Eigen::MatrixXd rim_compliance(double a, double b, double t, double reach) {
  constexpr int outward = 28;
  const double outer = a * std::pow(b / a, (outward + 2.0) / outward);
  auto mesh = std::make_shared<mesh::ShellMesh>(*tests::ring(a, outer, t, 48, outward + 2));
  auto& border = mesh->groups["border"];
  border.clear();
  for (Eigen::Index node = 0; node < mesh->nodes.rows(); ++node)
    if (mesh->nodes.row(node).norm() > b - 1e-6) border.push_back(static_cast<int>(node));
  const solver::Shell shell{mesh, solver::isotropic_shell(youngs_modulus, nu)};
  const solver::Port port = solver::reaction_port(shell, mesh->groups.at("rim"), Eigen::Vector3d::Zero(), reach,
                                                  Eigen::Matrix3d::Identity(), solver::RimModes::rigid_and_strain);
  return clamped_compliance(shell, port).inverse().topLeftCorner<6, 6>().inverse();
}

}  // namespace

// 48 elements round the rim; tolerance 1 %, the mesh's own error there.
TEST_CASE("a port whose patch is the whole plate gives like a rigid disk bonded into it", "[solver][port]") {
  const double a = 1.75, b = 10.0;
  for (const double t : {1.0, 2.0, 4.0}) {
    const DiskCompliance exact = bonded_disk(a, b, t);
    const Eigen::MatrixXd compliance = rim_compliance(a, b, t, b + 1e-6);
    CAPTURE(t, compliance.diagonal().transpose(), exact.axial, exact.lateral, exact.tilt);
    CHECK(compliance(2, 2) == Approx(exact.axial).epsilon(0.01));
    CHECK(compliance(0, 0) == Approx(exact.lateral).epsilon(0.01));
    CHECK(compliance(4, 4) == Approx(exact.tilt).epsilon(0.01));
  }
}

// The spread is found once, on three radii, whatever lies beyond: the price is a few per cent of local tilt.
TEST_CASE("a patch of three radii costs less than 5 percent of a rim's local compliance", "[solver][port]") {
  const double a = 1.75, b = 10.0;
  for (const double t : {2.0, 4.0}) {
    const Eigen::VectorXd whole = rim_compliance(a, b, t, b + 1e-6).diagonal();
    const Eigen::VectorXd patch = rim_compliance(a, b, t, 3.0 * a).diagonal();
    CAPTURE(t, (patch.cwiseQuotient(whole)).transpose());
    for (int motion = 0; motion < 6; ++motion) CHECK(std::abs(patch(motion) / whole(motion) - 1.0) < 0.05);
  }
}

}  // namespace gapstrain
