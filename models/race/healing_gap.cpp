#include "models/race/healing_gap.h"

#include "models/assembly/gap_links.h"
#include "models/parts/screw.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr double least_width = 0.1;  // mm

// Of the columns of tissue, along the cut's normal, mm.
double column_length(const Construct& construct) {
  return std::max(only(construct.fractures).gap.value() * cut_normal(only(construct.fractures)).x(), least_width);
}

double width_at(const HealingGap& gap, std::size_t spot) {
  return std::max(gap.made.pressed.gap(static_cast<Eigen::Index>(spot)), least_width);
}

double rungs_between(const Healing& healing, std::size_t stages, double ratio) {
  const double whole = std::log((healing.at_union.youngs_modulus / healing.at_first.youngs_modulus).value());
  return std::round(std::log(ratio) * static_cast<double>(stages - 1) / whole);
}

}  // namespace

const TissueFilling& HealingGap::filling(std::size_t spot, std::size_t stage) const {
  return assembly.tissues[std::min(stage + rungs_up[spot], assembly.tissues.size() - 1)];
}

HealingGap make_healing_gap(const Assembly& assembly, const StepState& made, std::size_t stages) {
  HealingGap gap{assembly, static_cast<const ConstructState&>(made), stages, {}, {}};
  const double length = column_length(assembly.construct);
  for (std::size_t spot = 0; spot < assembly.face.size(); ++spot)
    gap.rungs_up.push_back(static_cast<std::size_t>(
        std::max(0.0, rungs_between(*assembly.construct.healing, stages, length / width_at(gap, spot)))));
  for (const int screw : made.screws)
    if (assembly.screws[static_cast<std::size_t>(screw)].planned.screw.material.fatigue_strength)
      gap.screws.push_back(screw);
  return gap;
}

int rungs_beyond(const Construct& construct, std::size_t stages) {
  const bool stays_open =
      construct.temporary.empty() && std::none_of(construct.screws.begin(), construct.screws.end(),
                                                  [](const Screw& screw) { return is_tightened(screw); });
  if (stays_open) return 0;
  return static_cast<int>(rungs_between(*construct.healing, stages, column_length(construct) / least_width));
}

ConstructState fill_gap(const HealingGap& gap, const SpotStages& stages) {
  ConstructState filled = gap.made;
  const Eigen::VectorXd deformations = gap.assembly.system->deformations(gap.made.pressed.solution);
  for (std::size_t spot = 0; spot < stages.size(); ++spot) {
    const int link = gap.filling(spot, stages[spot]).links[spot];
    const Eigen::Index first = gap.assembly.system->first_row(link);
    filled.setting.links.push_back(link);
    filled.setting.initial.segment<3>(first) = deformations.segment<3>(first);
    filled.pressed.initial.segment<3>(first) = deformations.segment<3>(first);
  }
  return filled;
}

AssembledLoad scaled(const AssembledLoad& load, double factor) {
  AssembledLoad result = load;
  for (auto& forces : result.forces) forces *= factor;
  result.alone.deformations *= factor;
  result.alone.resultants *= factor;
  result.alone.work *= factor * factor;
  return result;
}

std::vector<SpotStrain> measure_spots(const HealingGap& gap, const ConstructState& loaded,
                                      const SpotStages& stages) {
  const Assembly& assembly = gap.assembly;
  const Eigen::VectorXd motions =
      link_deformations(assembly, loaded) - assembly.system->deformations(gap.made.pressed.solution);
  const Eigen::Vector3d normal = cut_normal(only(assembly.construct.fractures));
  std::vector<SpotStrain> spots(stages.size());
  for (std::size_t k = 0; k < stages.size(); ++k) {
    SpotStrain& spot = spots[k];
    spot.closed = gap.made.pressed.closed[k] != 0 && loaded.pressed.closed[k] != 0;
    if (spot.closed) continue;
    const TissueFilling& filling = gap.filling(k, stages[k]);
    const Eigen::Index first = assembly.system->first_row(filling.links[k]);
    const Eigen::Vector3d motion = motions.segment<3>(first);
    const double along_bone = width_at(gap, k) / normal.x();
    spot.axial = std::abs(motion.x()) / along_bone;
    spot.shear = std::hypot(motion.y(), motion.z()) / along_bone;
    // Stress along the column over its area; sideways the walls of the column hold nu / (1 - nu) of it.
    const double nu = filling.tissue.poissons_ratio;
    const double stress = normal.dot(loaded.pressed.forces.segment<3>(first)) / assembly.face[k].area;
    spot.pressure = -stress * (1.0 + nu) / (3.0 * (1.0 - nu));
  }
  return spots;
}

}  // namespace gapstrain::models
