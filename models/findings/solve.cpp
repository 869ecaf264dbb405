#include "models/findings/solve.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

namespace gapstrain::models {

solver::Solution solve_load(const Assembly& assembly, const std::vector<int>& chosen, const AssembledLoad& load) {
  try {
    return assembly.system->solve(assembly.active_links(chosen, load), load.forces);
  } catch (const solver::MechanismError& error) {
    Eigen::Index largest = 0;
    error.motion.cwiseAbs().maxCoeff(&largest);
    static constexpr std::array<const char*, 6> motions = {"slide along the bone", "slide across the plate",
                                                           "lift off the bone",    "turn about the bone's axis",
                                                           "turn on the flat",     "turn on the plate's edge"};
    throw ModelError(fmt::format("the {} is free to {} under load \"{}\": nothing in the construct resists it",
                                 assembly.bodies[static_cast<std::size_t>(error.body)].name,
                                 motions[static_cast<std::size_t>(largest)], load.name));
  }
}

std::array<Eigen::MatrixXd, 3> recover_displacements(const Assembly& assembly,
                                                     const std::vector<solver::Solution>& solutions) {
  const auto count = static_cast<Eigen::Index>(solutions.size());
  std::array<Eigen::MatrixXd, 3> displacements;
  for (std::size_t b = 0; b < 3; ++b) {
    const auto& body = assembly.bodies[b];
    Eigen::MatrixXd forces(body.condensed->compliance.rows(), count), amplitudes(6, count);
    for (Eigen::Index k = 0; k < count; ++k) {
      const auto& solution = solutions[static_cast<std::size_t>(k)];
      forces.col(k) = solution.port_forces[b];
      amplitudes.col(k) = solution.amplitudes[b];
    }
    displacements[b] = body.body->displacements(body.ports, forces, amplitudes);
  }
  return displacements;
}

std::vector<int> chosen_screws(const Assembly& assembly, const std::vector<Screw>& screws) {
  std::vector<int> chosen;
  for (const auto& screw : screws) {
    const auto found = std::find_if(assembly.screws.begin(), assembly.screws.end(),
                                    [&](const CandidateScrew& c) { return same_place(c.planned.screw, screw); });
    assert(found != assembly.screws.end());
    chosen.push_back(static_cast<int>(found - assembly.screws.begin()));
  }
  return chosen;
}

bool same_place(const Screw& one, const Screw& other) {
  return one.hole == other.hole && one.kind == other.kind && one.cortices == other.cortices &&
         one.tilt_along == other.tilt_along && one.tilt_across == other.tilt_across &&
         one.size.core_diameter == other.size.core_diameter && one.material.name == other.material.name;
}

Eigen::VectorXd link_force(const solver::Solution& solution, int link) {
  const auto found = std::find(solution.links.begin(), solution.links.end(), link);
  if (found == solution.links.end()) return {};
  return solution.link_forces[static_cast<std::size_t>(found - solution.links.begin())].col(0);
}

}  // namespace gapstrain::models
