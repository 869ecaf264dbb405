// Speed of the program's main parts, as seconds and as ratios within one run. Not a test: nothing is checked here,
// the figures are written down with the machine in DEVELOPERS.md.
#include "cases/reader/read_case.h"
#include "models/layouts/ready_screws.h"
#include "models/measures/solve.h"
#include "models/preparation/from_scratch.h"
#include "models/preparation/prepare_bodies.h"

#include <fmt/format.h>

#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <iostream>

namespace {

double seconds(const auto& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

namespace {

using namespace gapstrain;

// Steps with friction, and one without, on factored bodies; best of some runs.
void measure_steps(const std::string& path) {
  models::Construct construct = cases::read_case(path).construct;
  construct.mesh.refinement = 1.25;  // for some 150 pairs
  const models::Assembly assembly = models::assemble(construct, construct.screws);
  models::Procedure procedure = models::procedure_of(construct, models::chosen_screws(assembly, construct.screws));
  const auto best = [&](models::FrictionLaw law) {
    procedure.friction = law;
    double least = 1e300;
    for (int k = 0; k < 10; ++k) least = std::min(least, seconds([&] { models::carry_out(assembly, procedure); }));
    return 1e3 * least;
  };
  const double rubbing = best(models::FrictionLaw::coulomb), smooth = best(models::FrictionLaw::none);
  const auto steps = static_cast<double>(procedure.steps.size());
  std::cout << fmt::format("{}: {} contact pairs, {} steps\n", path, assembly.pairs.size(),
                           procedure.steps.size());
  std::cout << fmt::format("  one step without friction    {:7.3f} ms\n", smooth / steps);
  std::cout << fmt::format("  eight steps with friction    {:7.3f} ms\n", 8.0 * rubbing / steps);
}

}  // namespace

int main(int argc, char** argv) {
  const std::string path = argc > 1 ? argv[1] : "cases/examples/comminuted_radius.toml";
  const models::Construct construct = cases::read_case(path).construct;

  std::string stage = "shapes and plans";
  double whole = 0.0;
  std::size_t loads = 0;
  std::cout << fmt::format("{}\n", path);
  {
    auto start = std::chrono::steady_clock::now();
    const auto lap = [&](const std::string& next) {
      const auto now = std::chrono::steady_clock::now();
      std::cout << fmt::format("  {:28} {:7.3f} s\n", stage, std::chrono::duration<double>(now - start).count());
      start = now;
      stage = next;
    };
    whole = seconds([&] { loads = models::analyse(construct, lap).findings.loads.size(); });
    lap("");
  }
  std::cout << fmt::format("  analyse, {} loads             {:7.3f} s\n", loads, whole);

  const models::Assembly assembly = models::assemble(construct, construct.screws);
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  std::cout << fmt::format("  peak memory                  {:7.0f} MB\n",
                           static_cast<double>(usage.ru_maxrss) / 1024.0);
  for (const auto& body : assembly.bodies)
    std::cout << fmt::format("  {:18} {:7} unknowns, {:4} port motions\n", body.name,
                             body.body->shell().unknowns(), body.ports->spread.cols());
  measure_steps("cases/examples/transverse_radius.toml");
}
