#include "models/measures/solve.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>

namespace gapstrain::models {

ModelError free_to_move(const Assembly& assembly, const solver::MechanismError& error, const std::string& load) {
  Eigen::Index largest = 0;
  error.motion.cwiseAbs().maxCoeff(&largest);
  static constexpr std::array<const char*, 6> motions = {"slide along the bone", "slide across the plate",
                                                         "lift off the bone",    "turn about the bone's axis",
                                                         "turn on the flat",     "turn on the plate's edge"};
  return ModelError(fmt::format("the {} is free to {}{}: nothing in the construct resists it",
                                assembly.bodies[static_cast<std::size_t>(error.body)].name,
                                motions[static_cast<std::size_t>(largest)],
                                load.empty() ? "" : fmt::format(" under load \"{}\"", load)));
}

ConstructState solve_load(const Assembly& assembly, const ConstructState& made, const AssembledLoad& load,
                          Metals metals) {
  try {
    return apply_load(assembly, made, load, metals);
  } catch (const solver::MechanismError& error) {
    throw free_to_move(assembly, error, load.name);
  }
}

solver::Solution solve_small_load(const Assembly& assembly, const ConstructState& made,
                                  const AssembledLoad& load) {
  const solver::System& system = *assembly.system;
  const auto is_among = [](const std::vector<int>& supports, int link) {
    return std::find(supports.begin(), supports.end(), link) != supports.end();
  };
  std::vector<int> links;
  for (const int link : solver::frozen_links(system, assembly.pairs, made.setting, made.pressed))
    if (!is_among(assembly.on_the_table.supports, link) && !is_among(load.supports, link)) links.push_back(link);
  links.insert(links.end(), load.supports.begin(), load.supports.end());
  try {
    return system.solve(links, load.forces, Eigen::VectorXd::Zero(system.rows()));
  } catch (const solver::MechanismError& error) {
    throw free_to_move(assembly, error, load.name);
  }
}

std::vector<Eigen::MatrixXd> recover_displacements(const Assembly& assembly,
                                                   const std::vector<solver::Solution>& solutions) {
  const auto count = static_cast<Eigen::Index>(solutions.size());
  std::vector<Eigen::MatrixXd> displacements(assembly.bodies.size());
  for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
    const auto& body = assembly.bodies[b];
    Eigen::MatrixXd forces(body.condensed->compliance.rows(), count), amplitudes(6, count);
    for (Eigen::Index k = 0; k < count; ++k) {
      const auto& solution = solutions[static_cast<std::size_t>(k)];
      forces.col(k) = solution.port_forces[b];
      amplitudes.col(k) = solution.amplitudes[b];
    }
    assert(body.stiffness == 1.0);  // else the factored body is another one
    displacements[b] = body.body->displacements(*body.ports, forces, amplitudes);
  }
  return displacements;
}

std::vector<int> chosen_screws(const Assembly& assembly, const std::vector<Screw>& screws) {
  std::vector<int> chosen;
  for (const auto& screw : screws) {
    const auto found = std::find_if(assembly.screws.begin(), assembly.screws.end(),
                                    [&](const CandidateScrew& c) { return same_place(c.planned.screw, screw); });
    if (found == assembly.screws.end())
      throw ModelError(fmt::format("the bodies are not made ready for screw \"{}\"", screw.label));
    chosen.push_back(static_cast<int>(found - assembly.screws.begin()));
  }
  return chosen;
}

bool same_place(const Screw& one, const Screw& other) {
  return one.hole == other.hole && one.kind == other.kind && one.cortices == other.cortices &&
         one.tilt_along == other.tilt_along && one.tilt_across == other.tilt_across &&
         one.size.core_diameter == other.size.core_diameter && one.slide == other.slide &&
         one.entry == other.entry && one.material.name == other.material.name;
}

bool has_place(const std::vector<Screw>& screws, const Screw& screw) {
  return std::any_of(screws.begin(), screws.end(), [&](const Screw& other) { return same_place(other, screw); });
}

void add_places(std::vector<Screw>& screws, const std::vector<Screw>& more) {
  for (const auto& screw : more)
    if (!has_place(screws, screw)) screws.push_back(screw);
}

Eigen::VectorXd link_force(const solver::Solution& solution, int link) {
  const auto found = std::find(solution.links.begin(), solution.links.end(), link);
  if (found == solution.links.end()) return {};
  return solution.link_forces[static_cast<std::size_t>(found - solution.links.begin())].col(0);
}

}  // namespace gapstrain::models
