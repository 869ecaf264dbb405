#include "models/race/healing_course.h"

#include "models/measures/solve.h"
#include "models/race/gap_state.h"

#include <algorithm>
#include <map>

namespace gapstrain::models {

namespace {

// The filled gap under each load.
struct GapMoment {
  std::vector<SpotStrain> worst;
  Eigen::MatrixXd plate_forces;
  std::vector<std::vector<ScrewCycles>> screw_cycles;
  MomentAtEnds at_ends;
};

double largest_axial(const std::vector<SpotStrain>& spots) {
  double largest = 0.0;
  for (const SpotStrain& spot : spots) largest = std::max(largest, spot.axial);
  return largest;
}

// Courses often pass through the same states: each is worked out once.
class GapUnderLoads {
 public:
  GapUnderLoads(const std::vector<const HealingGap*>& gaps, const std::vector<DayLoad>& loads)
      : gaps_(gaps), loads_(loads) {}

  const HealingGap& gap(std::size_t moment) const { return *gaps_[moment]; }
  std::size_t moments() const { return gaps_.size(); }
  const GapMoment& at(std::size_t moment, const SpotStages& stages) {
    auto& known_of_gap = known_[gaps_[moment]];
    const auto known = known_of_gap.find(stages);
    return known != known_of_gap.end() ? known->second
                                       : known_of_gap.emplace(stages, load(gap(moment), stages)).first->second;
  }

 private:
  GapMoment load(const HealingGap& gap, const SpotStages& stages) const {
    const ConstructState filled = fill_gap(gap, stages);
    GapMoment moment;
    moment.plate_forces.resize(gap.assembly.bodies[only_plate_body].condensed->compliance.rows(),
                               static_cast<Eigen::Index>(loads_.size()));
    std::vector<std::vector<SpotStrain>> spots;
    for (std::size_t l = 0; l < loads_.size(); ++l) {
      const ConstructState loaded = solve_load(gap.assembly, filled, loads_[l].entered);
      spots.push_back(measure_spots(gap, loaded, stages));
      moment.plate_forces.col(static_cast<Eigen::Index>(l)) =
          demanded(loaded).solution.port_forces[only_plate_body];
      moment.screw_cycles.push_back(
          measure_screw_cycles(gap.assembly, gap.screws, gap.made.pressed.solution, demanded(loaded).solution));
      if (has_ends()) moment.at_ends.screws.push_back({cuts_of(gap, loaded)});
    }
    moment.worst = most_strained(spots);
    if (has_ends()) load_ends(gap, filled, stages, moment);
    return moment;
  }

  bool has_ends() const { return !loads_.front().at_ends.empty(); }

  static std::vector<ScrewCuts> cuts_of(const HealingGap& gap, const ConstructState& loaded) {
    return measure_screw_cuts(gap.assembly, gap.screws, demanded(loaded).solution);
  }

  void load_ends(const HealingGap& gap, const ConstructState& filled, const SpotStages& stages,
                 GapMoment& moment) const {
    MomentAtEnds& found = moment.at_ends;
    const std::size_t ends = loads_.front().at_ends.size();
    found.strain = largest_axial(moment.worst);
    found.strain_at_ends.assign(ends, 0.0);
    found.plate_forces.resize(moment.plate_forces.rows(), static_cast<Eigen::Index>(loads_.size() * ends));
    for (std::size_t l = 0; l < loads_.size(); ++l)
      for (std::size_t end = 0; end < ends; ++end) {
        const ConstructState loaded = solve_load(gap.assembly, filled, loads_[l].at_ends[end]);
        found.plate_forces.col(static_cast<Eigen::Index>(l * ends + end)) =
            demanded(loaded).solution.port_forces[only_plate_body];
        found.screws[l].push_back(cuts_of(gap, loaded));
        found.strain_at_ends[end] =
            std::max(found.strain_at_ends[end], largest_axial(measure_spots(gap, loaded, stages)));
      }
  }

  const std::vector<const HealingGap*>& gaps_;
  const std::vector<DayLoad>& loads_;
  std::map<const HealingGap*, std::map<SpotStages, GapMoment>> known_;
};

CourseStates follow_course(GapUnderLoads& loaded, HealingCourse course) {
  SpotQuarters quarters(loaded.gap(0).assembly.face.size(), 0);
  CourseStates states;
  for (std::size_t moment = 0; moment < loaded.moments(); ++moment) {
    const HealingGap& gap = loaded.gap(moment);
    const GapMoment& now = loaded.at(moment, nearest_stages(quarters));
    states.gap.push_back(summarise_gap(gap, now.worst, quarters));
    states.plate_forces.push_back(now.plate_forces);
    states.screw_cycles.push_back(now.screw_cycles);
    if (!now.at_ends.screws.empty()) states.at_ends.push_back(now.at_ends);
    if (course == HealingCourse::none || moment + 1 == loaded.moments()) continue;
    if (course == HealingCourse::steady) {
      quarters.assign(quarters.size(), (moment + 1) * quarters_a_rung);
      continue;
    }
    // No spot is further than time allows, so all that are asked have a next tissue.
    for (std::size_t time = 0; time < quarters_a_rung; ++time) {
      const auto& worst = loaded.at(moment, nearest_stages(quarters)).worst;
      for (std::size_t k = 0; k < quarters.size(); ++k)
        if (bears_next(gap, worst[k], quarters[k])) ++quarters[k];
    }
  }
  return states;
}

}  // namespace

std::vector<CourseStates> follow_courses(const std::vector<const HealingGap*>& gaps,
                                         const std::vector<DayLoad>& loads,
                                         const std::vector<HealingCourse>& courses) {
  GapUnderLoads loaded(gaps, loads);
  std::vector<CourseStates> followed;
  for (const HealingCourse course : courses) followed.push_back(follow_course(loaded, course));
  return followed;
}

}  // namespace gapstrain::models
