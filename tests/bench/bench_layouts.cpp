// Speed of layouts on bodies that are there already, as figures and as ratios within one run. Not a test: nothing
// is checked here, the figures are written down with the machine in DEVELOPERS.md.
#include "cases/reader/read_case.h"
#include "models/assembly/insertion.h"
#include "models/layouts/construct_solver.h"
#include "models/layouts/layouts.h"
#include "models/measures/solve.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/solver/bodies/monolithic.h"

#include <fmt/format.h>

#include <sys/resource.h>

#include <chrono>
#include <iostream>
#include <string>
#include <thread>

namespace {

using namespace gapstrain;

double seconds(const auto& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

// The case's plate with fourteen holes, all of which take a locking screw.
models::Construct fourteen_holes(const std::string& path) {
  models::Construct construct = cases::read_case(path).construct;
  models::Plate& plate = only(construct.plates);
  const models::PlateHole hole = plate.holes.front();
  const models::Length pitch = 11.0 * models::mm, margin = 7.0 * models::mm;
  plate.length = 13.0 * pitch + 2.0 * margin;
  plate.proximal_end = only(construct.fractures).position - 0.5 * plate.length;
  plate.holes.clear();
  for (int k = 0; k < 14; ++k) {
    plate.holes.push_back(hole);
    plate.holes.back().position = margin + static_cast<double>(k) * pitch;
  }
  construct.layouts->most_per_fragment.reset();
  return construct;
}

class Bench {
 public:
  explicit Bench(const models::Construct& construct)
      : layouts_(construct),
        assembly_(models::assemble(construct, layouts_.candidates())),
        peak_(assembly_, models::PlatePlaces::likely) {}

  // Seconds for rows [0, rows), the layouts over and over, on so many threads.
  double run(std::size_t rows, std::size_t threads) {
    return seconds([&] {
      std::vector<std::thread> crew;
      for (std::size_t t = 0; t < threads; ++t)
        crew.emplace_back([&, t] {
          models::ConstructSolver solver(assembly_, peak_);
          for (std::size_t row = rows * t / threads; row < rows * (t + 1) / threads; ++row)
            solver.solve(layouts_.chosen(row % layouts_.size()));
        });
      for (auto& thread : crew) thread.join();
    });
  }

  double mean_screws() const {
    double sum = 0.0;
    for (std::size_t row = 0; row < layouts_.size(); ++row)
      sum += static_cast<double>(layouts_.chosen(row).size());
    return sum / static_cast<double>(layouts_.size());
  }

  // Pairs that touch under the first load, over some layouts.
  double mean_closed() {
    models::Construct construct = assembly_.construct;
    double closed = 0.0;
    constexpr std::size_t some = 50;
    for (std::size_t k = 0; k < some; ++k) {
      const auto chosen = layouts_.chosen(k * layouts_.size() / some);
      construct.screws.clear();
      for (const int index : chosen)
        construct.screws.push_back(layouts_.candidates()[static_cast<std::size_t>(index)]);
      const auto made = models::carry_out(assembly_, models::procedure_of(construct, chosen)).back();
      for (const char is_closed : models::solve_load(assembly_, made, assembly_.loads.front()).pressed.closed)
        closed += is_closed;
    }
    return closed / some;
  }

  // One sparse solve of the whole model of one layout, without contact.
  double monolithic() {
    const auto chosen = layouts_.chosen(layouts_.size() / 2);
    std::vector<solver::Link> links;
    const auto add = [&](const std::vector<int>& some) {
      for (const int link : some) links.push_back(assembly_.system->links()[static_cast<std::size_t>(link)]);
    };
    for (const int index : chosen) add(assembly_.screws[static_cast<std::size_t>(index)].links);
    add(assembly_.loads.front().supports);
    std::vector<tests::MonolithicBody> bodies;
    for (const auto& body : assembly_.bodies) bodies.push_back({&body.body->stiffness(), body.ports.get()});
    return seconds([&] { tests::solve_monolithic(bodies, links, assembly_.loads.front().forces); });
  }

  std::size_t layouts() const { return layouts_.size(); }
  std::size_t pairs() const { return assembly_.pairs.size(); }

 private:
  models::Layouts layouts_;
  models::Assembly assembly_;
  models::PeakStress peak_;
};

double peak_memory() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024.0;
}

double report(const std::string& what, Bench& bench) {
  bench.run(200, 2);  // warm
  const double one = bench.run(bench.layouts(), 1), two = bench.run(bench.layouts(), 2);
  const auto count = static_cast<double>(bench.layouts());
  std::cout << fmt::format("{}: {} layouts, {:.1f} screws in the mean, {} pairs of which {:.0f} touch\n", what,
                           bench.layouts(), bench.mean_screws(), bench.pairs(), bench.mean_closed());
  std::cout << fmt::format("  one thread                   {:7.3f} ms a layout\n", 1e3 * one / count);
  std::cout << fmt::format("  two threads                  {:7.0f} layouts a second, all in {:.1f} s\n",
                           count / two, two);
  std::cout << fmt::format("  one / two threads            {:7.2f}\n", one / two);
  return one / count;
}

}  // namespace

int main(int argc, char** argv) {
  const std::string path = "cases/examples/simple_tibia.toml";
  models::Construct construct = fourteen_holes(path);
  {
    Bench bench(construct);
    const double layout = report("open gap, one load", bench);
    std::cout << fmt::format("  monolithic / layout          {:7.0f}\n", bench.monolithic() / layout);
    const std::size_t most = argc > 1 ? std::stoul(argv[1]) : 100'000;
    for (std::size_t rows = 100; rows <= most; rows *= 10)
      std::cout << fmt::format(
          "  {:>9} rows               {:7.3f} ms a layout and thread, peak memory {:.0f} MB\n", rows,
          2e3 * bench.run(rows, 2) / static_cast<double>(rows), peak_memory());
  }
  only(construct.fractures).gap = 0.05 * models::mm;
  only(construct.plates).standoff = 0.02 * models::mm;
  construct.mesh.refinement = 1.25;  // for some 150 pairs
  for (const auto law : {models::FrictionLaw::none, models::FrictionLaw::coulomb}) {
    construct.contact.friction = law;
    Bench bench(construct);
    report(
        law == models::FrictionLaw::none ? "gap that closes, without friction" : "gap that closes, with friction",
        bench);
  }
  models::Construct three_loads = fourteen_holes(path);
  three_loads.loads = cases::read_case("cases/examples/comminuted_radius.toml").construct.loads;
  Bench bench(three_loads);
  report("open gap, three loads", bench);
}
