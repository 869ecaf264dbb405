#include "models/measures/buckling.h"

#include "models/measures/solve.h"

#include <Eigen/Eigenvalues>

#include <cmath>
#include <limits>

namespace gapstrain::models {

namespace {

using BodyFields = std::vector<Eigen::MatrixXd>;  // (6n x k) a body

// What is under the load, as far as it makes the construct give way.
struct Geometric {
  std::vector<solver::SparseMatrix> stiffness;  // K_G of each body
  struct Arm {
    std::size_t body = 0;
    solver::SparseMatrix slope;  // (readings x 6n)
    Eigen::VectorXd axial;
  };
  std::vector<Arm> arms;
};

// Buckling is asked of forces that are linear in the load, and of what the load alone brings.
Geometric geometric_of(const Assembly& assembly, const StepState& made, const AssembledLoad& load,
                       const ConstructState& loaded) {
  const solver::Solution& linear = (loaded.straight ? *loaded.straight : loaded.pressed).solution;
  const auto displacements = recover_displacements(assembly, {linear, made.pressed.solution});
  Geometric geometric;
  for (std::size_t b = 0; b < assembly.bodies.size(); ++b)
    geometric.stiffness.push_back(solver::assemble_geometric_stiffness(
        assembly.bodies[b].body->shell(), displacements[b].col(0) - displacements[b].col(1)));
  const auto& forces = linear.port_forces;
  for (const auto& [ring, arm] : load.arms) {
    const solver::SparseMatrix& spread = assembly.bodies[ring.body].ports->spread;
    const auto read = solver::read_arm(spread.cols(), ring.column, arm);
    geometric.arms.push_back({ring.body, read.slope * spread.transpose(), read.axial * forces[ring.body].col(0)});
  }
  return geometric;
}

// Nodal forces -K_G v of trial fields: of bodies alike on each translation, none on rotations.
BodyFields destabilising_forces(const Geometric& geometric, const BodyFields& trial) {
  BodyFields forces(trial.size());
  for (std::size_t b = 0; b < trial.size(); ++b) {
    forces[b] = Eigen::MatrixXd::Zero(trial[b].rows(), trial[b].cols());
    const Eigen::Index nodes = trial[b].rows() / 6;
    for (int axis = 0; axis < 3; ++axis) {
      const auto rows = Eigen::seqN(axis, nodes, 6);
      forces[b](rows, Eigen::all) =
          -(geometric.stiffness[b].selfadjointView<Eigen::Lower>() * Eigen::MatrixXd(trial[b](rows, Eigen::all)));
    }
  }
  for (const auto& arm : geometric.arms)
    forces[arm.body] -= arm.slope.transpose() * (arm.axial.asDiagonal() * (arm.slope * trial[arm.body])).eval();
  return forces;
}

// Displacements of the linked construct under nodal forces: each body alone, then the links' answer on top.
BodyFields answer(const Assembly& assembly, const std::vector<int>& active, const BodyFields& forces) {
  const std::size_t bodies = assembly.bodies.size();
  BodyFields motion(bodies);
  std::vector<Eigen::MatrixXd> at_ports, resultants;
  for (std::size_t b = 0; b < bodies; ++b) {
    const auto& body = assembly.bodies[b];
    motion[b] = body.body->elastic_answer(forces[b]);
    at_ports.push_back(body.ports->spread.transpose() * motion[b]);
    resultants.push_back(body.body->rigid().transpose() * forces[b]);
  }
  const solver::Solution links = assembly.system->solve_free(active, at_ports, resultants);
  for (std::size_t b = 0; b < bodies; ++b)
    motion[b] += assembly.bodies[b].body->displacements(*assembly.bodies[b].ports, links.port_forces[b],
                                                        links.amplitudes[b]);
  return motion;
}

Eigen::MatrixXd work(const BodyFields& forces, const BodyFields& motion) {
  Eigen::MatrixXd sum = Eigen::MatrixXd::Zero(motion[0].cols(), forces[0].cols());
  for (std::size_t b = 0; b < forces.size(); ++b) sum += motion[b].transpose() * forces[b];
  return sum;
}

void append(BodyFields& all, const BodyFields& more) {
  if (all.empty()) {
    all = more;
    return;
  }
  for (std::size_t b = 0; b < all.size(); ++b) {
    const Eigen::Index before = all[b].cols();
    all[b].conservativeResize(Eigen::NoChange, before + more[b].cols());
    all[b].rightCols(more[b].cols()) = more[b];
  }
}

void subtract(BodyFields& from, const BodyFields& fields, const Eigen::MatrixXd& shares) {
  for (std::size_t b = 0; b < from.size(); ++b) from[b].noalias() -= fields[b] * shares;
}

// Motions of the construct, orthonormal in its stiffness K, and the forces K v that belong to them.
class Basis {
 public:
  // Takes what is new in these motions; they come back orthonormal, fewer where nothing else is new.
  void take(BodyFields& motion, BodyFields& forces) {
    const double whole = work(forces, motion).trace();
    for (int pass = 0; pass < 2 && !motion_.empty(); ++pass) {
      const Eigen::MatrixXd shares = work(forces, motion_);
      subtract(motion, motion_, shares);
      subtract(forces, forces_, shares);
    }
    const Eigen::MatrixXd energies = work(forces, motion);
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> principal(0.5 * (energies + energies.transpose()));
    const Eigen::Index old = (principal.eigenvalues().array() <= round_off * whole).count();  // in ascending order
    const Eigen::Index fresh = principal.eigenvalues().size() - old;
    const Eigen::MatrixXd unit = principal.eigenvectors().rightCols(fresh) *
                                 principal.eigenvalues().tail(fresh).cwiseSqrt().cwiseInverse().asDiagonal();
    for (auto* fields : {&motion, &forces})
      for (auto& body : *fields) body = (body * unit).eval();
    append(motion_, motion);
    append(forces_, forces);
  }
  const BodyFields& motion() const { return motion_; }

 private:
  static constexpr double round_off = 1e-14;
  BodyFields motion_, forces_;
};

// Trial fields: each body's rigid sway in the two transverse directions and its turn, bent by the mesh's own x.
BodyFields first_trial(const Assembly& assembly) {
  BodyFields trial(assembly.bodies.size());
  for (std::size_t b = 0; b < trial.size(); ++b) {
    const auto& nodes = assembly.bodies[b].body->shell().mesh->nodes;
    const double length = assembly.construct.bone.length.value();
    trial[b] = Eigen::MatrixXd::Zero(6 * nodes.rows(), 3);
    for (Eigen::Index node = 0; node < nodes.rows(); ++node) {
      const double bow = std::sin(3.14 * nodes(node, 0) / length);
      trial[b](6 * node + 1, 0) = bow;
      trial[b](6 * node + 2, 1) = bow;
      trial[b](6 * node + 1, 2) = bow * nodes(node, 2) / length;
      trial[b](6 * node + 2, 2) = -bow * nodes(node, 1) / length;
    }
  }
  return trial;
}

std::optional<double> least_buckling_factor(const Assembly& assembly, const StepState& made,
                                            const AssembledLoad& load, const ConstructState& loaded,
                                            double ceiling) {
  constexpr int rounds = 12, least_rounds = 3;
  constexpr double accuracy = 1e-3;
  const Geometric geometric = geometric_of(assembly, made, load, loaded);
  // A construct that has turned far has given way already, and may touch by now.
  const solver::PressedState& touches = loaded.large && loaded.straight ? *loaded.straight : loaded.pressed;
  const auto active = solver::frozen_links(*assembly.system, assembly.pairs, loaded.setting, touches);

  Basis basis;
  BodyFields destabilising;  // of the whole basis
  BodyFields forces = destabilising_forces(geometric, first_trial(assembly));
  double inverse_factor = 0.0;
  for (int round = 0; round < rounds; ++round) {
    BodyFields motion = answer(assembly, active, forces);
    basis.take(motion, forces);
    const bool is_exhausted = motion[0].cols() == 0;
    forces = destabilising_forces(geometric, motion);
    append(destabilising, forces);
    const Eigen::MatrixXd projected = work(destabilising, basis.motion());
    if (projected.size() == 0) return std::nullopt;  // nothing gives way
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> ritz(0.5 * (projected + projected.transpose()),
                                                              Eigen::EigenvaluesOnly);
    if (ritz.info() != Eigen::Success) return std::numeric_limits<double>::quiet_NaN();
    const double largest = ritz.eigenvalues().maxCoeff();
    const bool settled = is_exhausted || std::abs(largest - inverse_factor) <= accuracy * std::abs(largest);
    inverse_factor = largest;
    if (settled || (round >= least_rounds && inverse_factor < 1.0 / ceiling)) break;
  }
  if (inverse_factor < 1.0 / ceiling) return std::nullopt;
  return 1.0 / inverse_factor;
}

}  // namespace

std::optional<double> measure_buckling(const Assembly& assembly, const StepState& made, const AssembledLoad& load,
                                       const ConstructState& loaded, double ceiling) {
  try {
    return least_buckling_factor(assembly, made, load, loaded, ceiling);
  } catch (const solver::MechanismError& error) {  // free to move, though nothing pushes it that way
    throw free_to_move(assembly, error, load.name);
  }
}

}  // namespace gapstrain::models
