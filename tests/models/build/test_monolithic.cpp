// The condensed path against one sparse solve of the same model, on random constructs.
#include "models/findings/analyse.h"
#include "models/findings/solve.h"
#include "solver/bodies/stress.h"
#include "tests/models/constructs.h"
#include "tests/solver/bodies/monolithic.h"

#include <catch2/catch.hpp>

namespace gapstrain {

namespace {

double difference(const Eigen::MatrixXd& one, const Eigen::MatrixXd& other) {
  return (one - other).cwiseAbs().maxCoeff() / std::max(other.cwiseAbs().maxCoeff(), 1e-300);
}

}  // namespace

TEST_CASE("a construct's displacements, stresses and link forces equal the monolithic solve's",
          "[models][build]") {
  const unsigned seed = GENERATE(range(1U, 13U));
  const models::Construct construct = tests::random_construct(seed);
  const models::Assembly assembly = models::assemble(construct, construct.screws);
  const auto chosen = models::chosen_screws(assembly, construct.screws);
  std::vector<tests::MonolithicBody> bodies;
  for (const auto& body : assembly.bodies) bodies.push_back({&body.body->stiffness(), &body.ports});

  for (const auto& load : assembly.loads) {
    CAPTURE(seed, load.name);
    const auto solution = models::solve_load(assembly, chosen, load);
    const auto displacements = models::recover_displacements(assembly, {solution});
    std::vector<solver::Link> links;
    for (const int link : solution.links)
      links.push_back(assembly.system->links()[static_cast<std::size_t>(link)]);
    const auto whole = tests::solve_monolithic(bodies, links, load.forces);

    for (std::size_t b = 0; b < 3; ++b) {
      CHECK(difference(displacements[b], whole.displacements[b]) < 1e-8);
      const auto stress = [&](const Eigen::MatrixXd& u) {
        return solver::node_stress(assembly.bodies[b].body->shell(), u, 1.0);
      };
      CHECK(difference(stress(displacements[b]), stress(whole.displacements[b])) < 1e-8);
    }
    double largest = 0.0, off = 0.0;
    for (std::size_t l = 0; l < links.size(); ++l) {
      largest = std::max(largest, whole.link_forces[l].cwiseAbs().maxCoeff());
      off = std::max(off, (solution.link_forces[l] - whole.link_forces[l]).cwiseAbs().maxCoeff());
    }
    CHECK(off < 1e-8 * largest);
  }
}

}  // namespace gapstrain
