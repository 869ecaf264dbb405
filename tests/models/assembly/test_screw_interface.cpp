// Bonded threads are a bound; softer ones give locally by what their stiffness says, and a shaft stays whole.
#include "models/assembly/screw_interface.h"

#include "models/assembly/assembly.h"
#include "models/measures/solve.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/models/constructs.h"

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>
#include <Eigen/LU>

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace gapstrain {

namespace {

using solver::Matrix6;

models::Construct coarse_tube() {
  models::Construct construct = tests::plated_tube();
  construct.mesh.refinement = 0.5;
  return construct;
}

// Of the first screw, on bodies that do not know of interfaces.
models::ScrewModel model_of(double stiffness) {
  static const models::Construct construct = coarse_tube();
  static const auto prepared = models::prepare_bodies(construct, construct.screws);
  models::Construct softer = construct;
  softer.screw_interface = stiffness;
  return models::assemble(prepared, softer, construct.screws).screws.front().model;
}

const models::BoneRing ring{1.2, 2.5, 17000.0, 0.3, 5000.0};
const Eigen::Vector3d down = -Eigen::Vector3d::UnitZ();

}  // namespace

TEST_CASE("a ring of bone resists a bonded shaft as rings do", "[models][build]") {
  const Matrix6 flexibility = models::ring_flexibility(ring, down);
  const double shear = 17000.0 / 2.6, pi = std::numbers::pi;
  // By hand, n = 3: k = 2.7 / 1.3 = 2.0769; k ln 3 - 0.8 / k = 2.2817 - 0.3852 = 1.8965; over 2 pi 3.0769 G t.
  CHECK(flexibility(0, 0) == Approx(1.8965 / (2.0 * pi * 3.0769 * shear * 2.5)).epsilon(1e-4));
  CHECK(flexibility(1, 1) == flexibility(0, 0));
  CHECK(flexibility(2, 2) == Approx(std::log(3.0) / (2.0 * pi * 5000.0 * 2.5)));
  // A rigid shaft turned in a ring: T (1 / a^2 - 1 / R^2) / (4 pi G t), any textbook.
  CHECK(flexibility(5, 5) == Approx((1.0 / 1.44 - 1.0 / 12.96) / (4.0 * pi * shear * 2.5)));
  // Slices: t^2 / 12 of what resists across, a^2 / 2 of what resists along.
  CHECK(1.0 / flexibility(3, 3) == Approx(2.5 * 2.5 / 12.0 / flexibility(0, 0) + 0.5 * 1.44 / flexibility(2, 2)));
  // It turns with its screw.
  const Eigen::Matrix3d turn = Eigen::AngleAxisd(0.4, Eigen::Vector3d(1.0, -2.0, 0.5).normalized()).matrix();
  Matrix6 both = Matrix6::Zero();
  both.topLeftCorner<3, 3>() = both.bottomRightCorner<3, 3>() = turn;
  const Matrix6 turned = models::ring_flexibility(ring, turn * down);
  CHECK((turned - both * flexibility * both.transpose()).norm() < 1e-12 * flexibility.norm());
}

TEST_CASE("a screw in a wall is locally as much softer as its interface says, in all six ways",
          "[models][build]") {
  const auto section = solver::solid_circle(2.4, 190000.0, 0.3);
  const Matrix6 root = models::root_flexibility(models::wall_root(2.1, 11.0), section, 1.2, down);
  const Eigen::Vector3d middle(3.0, -1.0, 5.0), face = middle - 1.25 * down;
  const Matrix6 bonded = models::bonded_flexibility(models::ring_flexibility(ring, down), middle, root, face);
  for (const double stiffness : {0.84, 0.5, 0.05}) {
    CAPTURE(stiffness);
    const Matrix6 soft = bonded + models::interface_give(stiffness, bonded);
    for (int k = 0; k < 6; ++k) {
      const Eigen::Matrix<double, 6, 1> force = Eigen::Matrix<double, 6, 1>::Unit(k);
      CHECK(force.dot(bonded * force) / force.dot(soft * force) == Approx(stiffness));
    }
    CHECK((soft.inverse() - stiffness * bonded.inverse()).norm() < 1e-9 * bonded.inverse().norm());
  }
  CHECK(models::interface_give(1.0, bonded).isZero(0.0));
}

TEST_CASE("a bonded interface changes no figure, a softer one only adds", "[models][build]") {
  const models::ScrewModel bonded = model_of(1.0);
  CHECK(bonded.near_give.isZero(0.0));
  CHECK_FALSE(models::shared_give(bonded, 6));
  Matrix6 last = bonded.head_to_thread.flexibility, last_far = bonded.near_to_far->flexibility;
  for (const double stiffness : {0.84, 0.5, 0.2}) {
    CAPTURE(stiffness);
    const models::ScrewModel soft = model_of(stiffness);
    for (const auto& [more, less] :
         {std::pair{soft.head_to_thread.flexibility, last}, std::pair{soft.near_to_far->flexibility, last_far}}) {
      const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> added(more - less);
      CHECK(added.eigenvalues().minCoeff() > -1e-12 * more.norm());
      CHECK(added.eigenvalues().maxCoeff() > 1e-6 * more.norm());
    }
    last = soft.head_to_thread.flexibility;
    last_far = soft.near_to_far->flexibility;
    // Head's link as a whole: by (1 / s - 1) of the same row, whatever s.
    const Matrix6 whole =
        (soft.head_to_thread.flexibility - bonded.head_to_thread.flexibility) / (1.0 / stiffness - 1.0);
    const Matrix6 half = model_of(0.5).head_to_thread.flexibility - bonded.head_to_thread.flexibility;
    CHECK((whole - half).norm() < 1e-10 * half.norm());
  }
}

TEST_CASE("what passes the near cortex without loading it does not feel how soft it sits there",
          "[models][build]") {
  const models::ScrewModel bonded = model_of(1.0), soft = model_of(0.1);
  const Eigen::MatrixXd shared = models::shared_give(soft, 6).value();
  const Matrix6 carried = solver::rigid_transfer(soft.near_to_far->from, soft.near_to_far->to);
  const Eigen::Matrix<double, 6, 1> far = Eigen::Matrix<double, 6, 1>::Random();
  const Eigen::Matrix<double, 6, 1> head = carried.transpose() * far;  // nothing is left for the near cortex
  const Eigen::VectorXd more_at_head =
      (soft.head_to_thread.flexibility - bonded.head_to_thread.flexibility) * head + shared * far;
  CHECK(more_at_head.norm() < 1e-10 * (soft.head_to_thread.flexibility * head).norm());
  // At the far end only the far cortex gives.
  const Eigen::VectorXd more_at_far =
      (soft.near_to_far->flexibility - bonded.near_to_far->flexibility) * far + shared.transpose() * head;
  const Matrix6 far_give = soft.near_to_far->flexibility - bonded.near_to_far->flexibility -
                           carried * soft.near_give * carried.transpose();
  CHECK((more_at_far - far_give * far).norm() < 1e-10 * (far_give * far).norm());
}

TEST_CASE("a construct is the softer the softer its screws sit, and to the digit itself when they are bonded",
          "[models][build]") {
  const models::Construct construct = coarse_tube();
  const auto prepared = models::prepare_bodies(construct, construct.screws);
  // Motion of the loaded end's load per load: twice the work of a unit of it.
  const auto work = [&](const models::Construct& one) {
    const models::Assembly assembly = models::assemble(prepared, one, one.screws);
    const auto procedure = models::procedure_of(one, models::chosen_screws(assembly, one.screws));
    const auto made = models::carry_out(assembly, procedure).back();
    std::vector<double> all;
    for (const auto& load : assembly.loads) {
      const auto solution = models::solve_load(assembly, made, load).pressed.solution;
      double sum = 0.0;
      for (std::size_t b = 0; b < load.forces.size(); ++b)
        sum += load.forces[b].col(0).dot(solution.motions[b].col(0));
      all.push_back(sum);
    }
    return all;
  };
  const auto bonded = work(construct);
  models::Construct same = construct;
  for (auto& screw : same.screws) screw.interface = 1.0;
  same.screw_interface = 0.5;  // all have their own
  CHECK(work(same) == bonded);
  auto last = bonded;
  for (const double stiffness : {0.84, 0.5, 0.2}) {
    models::Construct softer = construct;
    softer.screw_interface = stiffness;
    const auto now = work(softer);
    for (std::size_t l = 0; l < now.size(); ++l) CHECK(now[l] > last[l]);
    last = now;
  }
  CHECK(models::have_same_bodies(construct, construct.screws, same, same.screws));
}

}  // namespace gapstrain
