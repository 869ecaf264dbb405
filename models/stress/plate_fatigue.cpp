#include "models/stress/plate_fatigue.h"

#include "models/stress/fatigue.h"
#include "models/stress/plate_stress.h"
#include "models/stress/stress_cycle.h"

namespace gapstrain::models {

std::optional<PlateFatigue> measure_plate_fatigue(const Assembly& assembly, const BodyStress& at_rest,
                                                  const BodyStress& loaded) {
  const Metal& metal = only(assembly.construct.plates).material;
  if (!metal.fatigue_strength) return std::nullopt;
  PlateFatigue worst;
  Eigen::Index worst_node = 0;
  const auto consider = [&](const Eigen::MatrixX3d& rest, const Eigen::MatrixX3d& load, PlateFace face) {
    for (Eigen::Index node = 0; node < load.rows(); ++node) {
      const StressCycle cycle = stress_cycle(rest.row(node).transpose(), load.row(node).transpose());
      const Stress reversed = reversed_amplitude(cycle, *metal.ultimate_strength, metal.yield_strength);
      if (reversed <= worst.reversed) continue;
      worst.cycle = cycle;
      worst.reversed = reversed;
      worst.face = face;
      worst_node = node;
    }
  };
  consider(at_rest.top, loaded.top, PlateFace::top);
  consider(at_rest.bottom, loaded.bottom, PlateFace::bottom);
  consider(at_rest.middle, loaded.middle, PlateFace::middle);
  worst.along = only(assembly.plates).mesh.along_across(worst_node, 0) * mm;
  worst.across = only(assembly.plates).mesh.along_across(worst_node, 1) * mm;
  const int hole = rims_of_nodes(assembly)[static_cast<std::size_t>(worst_node)];
  if (hole > 0) worst.hole = hole;
  return worst;
}

}  // namespace gapstrain::models
