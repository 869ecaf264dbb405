#include "tests/models/assembly/monolithic_difference.h"

#include "models/measures/solve.h"
#include "models/preparation/prepare_bodies.h"
#include "solver/bodies/stress.h"
#include "tests/framework/numbers.h"
#include "tests/solver/bodies/monolithic.h"

#include <algorithm>
#include <utility>

namespace gapstrain::tests {

MonolithicDifference monolithic_difference(const models::Construct& construct) {
  const models::Assembly assembly = models::assemble(construct, construct.screws);
  const auto procedure = models::procedure_of(construct, models::chosen_screws(assembly, construct.screws));
  const auto made = models::carry_out(assembly, procedure).back();
  std::vector<MonolithicBody> bodies;
  for (const auto& body : assembly.bodies) bodies.push_back({&body.body->stiffness(), body.ports.get()});

  MonolithicDifference worst;
  for (const auto& load : assembly.loads) {
    const auto solution = models::solve_load(assembly, made, load).pressed.solution;
    const auto displacements = models::recover_displacements(assembly, {solution});
    std::vector<solver::Link> links;
    for (std::size_t l = 0; l < solution.links.size(); ++l) {
      links.push_back(assembly.system->links()[static_cast<std::size_t>(solution.links[l])]);
      links.back().initial = solution.initial[l];
    }
    std::vector<solver::SharedFlexibility> shared;  // of those in place, by their positions among them
    for (auto both : assembly.system->shared()) {
      const auto place = [&](int link) { return std::find(solution.links.begin(), solution.links.end(), link); };
      const auto one = place(both.one), other = place(both.other);
      if (one == solution.links.end() || other == solution.links.end()) continue;
      both.one = static_cast<int>(one - solution.links.begin());
      both.other = static_cast<int>(other - solution.links.begin());
      shared.push_back(std::move(both));
    }
    const auto whole = solve_monolithic(bodies, links, load.forces, shared);

    for (std::size_t b = 0; b < 3; ++b) {
      worst.displacement = std::max(worst.displacement, difference(displacements[b], whole.displacements[b]));
      const auto stress = [&](const Eigen::MatrixXd& u) {
        return solver::node_stress(assembly.bodies[b].body->shell(), u, 1.0);
      };
      worst.stress = std::max(worst.stress, difference(stress(displacements[b]), stress(whole.displacements[b])));
    }
    double largest = 0.0, off = 0.0;
    for (std::size_t l = 0; l < links.size(); ++l) {
      largest = std::max(largest, whole.link_forces[l].cwiseAbs().maxCoeff());
      off = std::max(off, (solution.link_forces[l] - whole.link_forces[l]).cwiseAbs().maxCoeff());
    }
    worst.link_force = std::max(worst.link_force, off / largest);
  }
  return worst;
}

}  // namespace gapstrain::tests
