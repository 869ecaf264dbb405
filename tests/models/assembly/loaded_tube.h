// The plated tube under loads of one's own, solved, with what its supports do.
#pragma once

#include "models/assembly/assembly.h"
#include "models/parts/loading.h"
#include "solver/bodies/system.h"

#include <Eigen/Core>

#include <array>
#include <vector>

namespace gapstrain::tests {

using Vector6 = Eigen::Matrix<double, 6, 1>;
inline constexpr double tube_length = 160.0;

models::LoadCase load_on(const models::EndSupports& supports);
models::LoadCase with_parts(const models::EndSupports& supports);  // axial force, bending and torsion
models::LoadCase rollers(double outer, double inner, bool across_plate);
models::SurfaceForce force_at(double x, double degrees_around, const Eigen::Vector3d& force);

// Two forces, one a fragment, clear of plate and screws.
const std::vector<models::SurfaceForce>& places();

models::EndSupport elastic(const std::array<double, 6>& stiffness);
models::EndSupport springs_times(double factor);  // about as stiff as the construct, all six different

models::Construct tube_under(const std::vector<models::LoadCase>& loads);

struct SolvedTube {
  models::Assembly assembly;
  std::vector<solver::Solution> solutions;  // one a load
};
SolvedTube solve(const std::vector<models::LoadCase>& loads);

// On one set of bodies, with ports at places() whatever of them the loads use.
SolvedTube solve_with_places(std::vector<models::LoadCase> loads);

// Of a force, or a force and a moment, at a point.
Vector6 about_origin(const Eigen::Vector3d& centre, const Eigen::VectorXd& force);

Vector6 applied(const SolvedTube& solved, std::size_t load);    // about the origin
Vector6 reactions(const SolvedTube& solved, std::size_t load);  // likewise, of both ends' supports on the bone
// Of one end's support on the bone, about its section's centre.
Vector6 reaction(const SolvedTube& solved, std::size_t load, models::BoneEnd end);

Eigen::VectorXd motion_at(const SolvedTube& solved, std::size_t load, const models::PortPlace& place,
                          Eigen::Index motions = 6);
Vector6 distal_motion(const SolvedTube& solved, std::size_t load);

// Of all port motions and forces of all bodies.
double difference_of(const SolvedTube& one, std::size_t k, const SolvedTube& other, std::size_t l);

}  // namespace gapstrain::tests
