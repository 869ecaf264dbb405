#include "models/race/stress_history.h"

#include "models/findings/model_error.h"
#include "models/measures/solve.h"
#include "models/parts/load_parts.h"
#include "models/race/healing_course.h"
#include "models/race/hot_places.h"
#include "models/race/tissue_ladder.h"
#include "models/stress/screw_notch.h"
#include "models/stress/stress_cycle.h"
#include "solver/bodies/stress.h"
#include "solver/host/side_by_side.h"

#include <algorithm>
#include <array>
#include <utility>

namespace gapstrain::models {

namespace {

// Life factors of a gap that is held up are within some 2 % of those with three times as many.
constexpr int rungs = 13;
// From hardly a step to a stumble. Wide enough for a load that varies by a quarter, close enough to see where
// faces meet and where strain holds healing up.
constexpr std::array<double, 7> load_factors = {0.5, 0.7, 0.85, 1.0, 1.2, 1.5, 2.0};
constexpr std::size_t as_entered = 3;
static_assert(load_factors[as_entered] == 1.0);

const std::vector<HealingCourse> courses = {HealingCourse::steady, HealingCourse::governed, HealingCourse::none};

// One course at every load factor.
using AtFactors = std::vector<CourseStates>;

std::vector<std::size_t> daily_loads(const Construct& construct) {
  std::vector<std::size_t> daily;
  for (std::size_t l = 0; l < construct.loads.size(); ++l)
    if (construct.loads[l].cycles_per_day) daily.push_back(l);
  return daily;
}

// Parts whose size is in doubt in any of the loads that come every day.
std::vector<LoadPart> parts_in_doubt(const Construct& construct) {
  const auto daily = daily_loads(construct);
  std::vector<LoadPart> parts;
  for (const LoadPart part : load_parts)
    if (std::any_of(daily.begin(), daily.end(),
                    [&](std::size_t l) { return is_open(band_of(construct.loads[l], part)); }))
      parts.push_back(part);
  return parts;
}

// What is followed: without tissue of the fracture's own, and behind its loads each that comes every day once more
// for each end of each part's band.
Construct to_follow(Construct construct) {
  only(construct.fractures).tissue.reset();
  const auto parts = parts_in_doubt(construct);
  for (const std::size_t l : daily_loads(construct))
    for (const LoadPart part : parts) {
      const LoadCase load = construct.loads[l];
      const PartBand band = band_of(load, part);
      construct.loads.push_back(with_part(load, part, band.low));
      construct.loads.push_back(with_part(load, part, band.high));
    }
  return construct;
}

// Those that the bodies have ports for, in their order, each as the construct has it.
std::vector<Screw> candidates_of(const PreparedBodies& prepared, const Construct& construct) {
  std::vector<Screw> candidates = prepared.candidates;
  for (auto& candidate : candidates)
    for (const auto& screw : construct.screws)
      if (same_place(candidate, screw)) candidate = screw;
  return candidates;
}

class Following {
 public:
  Following(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct)
      : assembly_(ready(prepared, to_follow(construct))), gap_(gap_as_made(assembly_)), gaps_(rungs, &gap_) {
    soften_screws(prepared, construct);
    for (int rung = 0; rung < rungs; ++rung) history_.progress.push_back(static_cast<double>(rung) / (rungs - 1));
    history_.load_factors.assign(load_factors.begin(), load_factors.end());
    history_.loads = daily_loads(construct);
    history_.sampled_parts = parts_in_doubt(construct);
    if (history_.sampled_parts.empty()) return;
    first_at_ends_ = construct.loads.size();
    for (const std::size_t l : history_.loads) {
      auto& bands = history_.bands.emplace_back();
      for (const LoadPart part : load_parts) bands[index_of(part)] = band_of(construct.loads[l], part);
    }
  }

  ~Following() = default;
  Following(const Following&) = delete;  // its gaps point into it
  Following& operator=(const Following&) = delete;

  StressHistory follow() {
    const std::vector<AtFactors> followed = follow_all();
    const Eigen::VectorXd at_rest = gap_.made.pressed.solution.port_forces[only_plate_body];
    const auto nodes = find_hot_nodes(assembly_, at_rest, telling_states(followed));
    history_.places = places_of(assembly_, nodes);
    for (const bool in_bone : {false, true})
      for (const int screw : gap_.screws) history_.places.push_back(place_of(screw, in_bone));
    const PlaceStress stress(assembly_, nodes);
    if (has_parts()) follow_parts(followed, stress.read(at_rest));
    std::vector<Eigen::Matrix3Xd> resting;  // one a moment
    for (const HealingGap* gap : gaps_)
      resting.push_back(stress.read(gap->made.pressed.solution.port_forces[only_plate_body]));
    for (std::size_t c = 0; c < courses.size(); ++c)
      history_.courses.push_back(read_course(courses[c], followed[c], stress, resting));
    return std::move(history_);
  }

 private:
  static Assembly ready(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& followed) {
    return assemble(prepared, followed, candidates_of(*prepared, followed),
                    tissue_ladder(*followed.healing, rungs, rungs_beyond(followed, rungs)));
  }

  static HealingGap gap_as_made(const Assembly& assembly) {
    const auto screws = chosen_screws(assembly, assembly.construct.screws);
    return make_healing_gap(assembly, carry_out(assembly, procedure_of(assembly.construct, screws)).back(), rungs);
  }

  // Where the case has a course for it: from moment to moment, union in the middle of its weeks.
  void soften_screws(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct) {
    const Healing& healing = *construct.healing;
    const double union_week = 0.5 * (healing.weeks_from + healing.weeks_to);
    const auto interface_at = [&](std::size_t moment) {
      return interface_in_week(construct.screw_interface, construct.interface_course,
                               union_week * static_cast<double>(moment) / (rungs - 1));
    };
    if (interface_at(rungs - 1) == construct.screw_interface) return;
    for (std::size_t moment = 0; moment < rungs; ++moment) {
      history_.interfaces.push_back(interface_at(moment));
      if (moment == 0) continue;
      gaps_[moment] = gaps_[moment - 1];
      if (history_.interfaces[moment] == history_.interfaces[moment - 1]) continue;
      Construct softened = to_follow(construct);
      softened.screw_interface = history_.interfaces[moment];
      auto& [assembly, gap] = softened_.emplace_back();
      assembly = std::make_unique<const Assembly>(ready(prepared, softened));
      gap = std::make_unique<const HealingGap>(
          HealingGap{*assembly, with_links_of(*assembly, gaps_[moment]->made), rungs, gap_.rungs_up, gap_.screws});
      gaps_[moment] = gap.get();
    }
  }

  HotPlace place_of(int candidate, bool in_bone) const {
    const auto& screws = assembly_.construct.screws;
    const auto own = std::find_if(screws.begin(), screws.end(), [&](const Screw& screw) {
      return same_place(screw, assembly_.screws[static_cast<std::size_t>(candidate)].planned.screw);
    });
    HotPlace place;
    place.screw = static_cast<std::size_t>(own - screws.begin());
    place.notch = in_bone ? thread_notch(screws[*place.screw]) : head_notch(screws[*place.screw]);
    return place;
  }

  bool has_parts() const { return !history_.sampled_parts.empty(); }
  std::size_t ends() const { return 2 * history_.sampled_parts.size(); }

  std::vector<DayLoad> loads_at(double factor) const {
    std::vector<DayLoad> loads;
    for (std::size_t k = 0; k < history_.loads.size(); ++k) {
      DayLoad& load = loads.emplace_back(DayLoad{scaled(assembly_.loads[history_.loads[k]], factor), {}});
      for (std::size_t end = 0; end < ends(); ++end)
        load.at_ends.push_back(scaled(assembly_.loads[first_at_ends_ + k * ends() + end], factor));
    }
    return loads;
  }

  // What is the same in all courses.
  void follow_parts(const std::vector<AtFactors>& followed, const Eigen::Matrix3Xd& resting) {
    history_.at_rest = {resting, measure_screw_cuts(assembly_, gap_.screws, gap_.made.pressed.solution)};
    for (const int screw : gap_.screws)
      history_.cores.push_back(core_section(assembly_.screws[static_cast<std::size_t>(screw)].planned));
    const MomentAtEnds& first_day = followed[0][as_entered].at_ends.front();
    if (first_day.strain <= 0.0) return;
    for (std::size_t k = 0; k < history_.sampled_parts.size(); ++k)
      history_.strain.ends[index_of(history_.sampled_parts[k])] = {
          first_day.strain_at_ends[2 * k] / first_day.strain,
          first_day.strain_at_ends[2 * k + 1] / first_day.strain};
  }

  // Of one load at one moment and load factor. `entered`: stress of the plate's places under it as entered.
  PartStates part_states(const MomentAtEnds& moment, std::size_t load, const Eigen::Matrix3Xd& entered,
                         const PlaceStress& stress) const {
    PartStates states;
    states.entered = {entered, moment.screws[load].front()};
    const auto at = [&](std::size_t end) {
      return PlaceForces{stress.read(moment.plate_forces.col(static_cast<Eigen::Index>(load * ends() + end))),
                         moment.screws[load][1 + end]};
    };
    for (std::size_t k = 0; k < history_.sampled_parts.size(); ++k)
      states.ends[index_of(history_.sampled_parts[k])] = {at(2 * k), at(2 * k + 1)};
    return states;
  }

  // Load factors know nothing of each other.
  std::vector<AtFactors> follow_all() const {
    const auto run = [this](double factor) { return follow_courses(gaps_, loads_at(factor), courses); };
    std::vector<std::vector<CourseStates>> found(load_factors.size());
    solver::side_by_side(load_factors.size(), [&](std::size_t k) { found[k] = run(load_factors[k]); });
    std::vector<AtFactors> followed(courses.size());
    for (auto& states : found)
      for (std::size_t c = 0; c < courses.size(); ++c) followed[c].push_back(std::move(states[c]));
    return followed;
  }

  // States in which the plate is looked at all over: on the way to union, the gap as it is held up, large loads,
  // and parts at the ends of their bands.
  static Eigen::MatrixXd telling_states(const std::vector<AtFactors>& followed) {
    const AtFactors& steady = followed[0];
    const AtFactors& governed = followed[1];
    const std::array states = {&steady[as_entered].plate_forces[0],
                               &steady[as_entered].plate_forces[rungs / 3],
                               &steady[as_entered].plate_forces[2 * rungs / 3],
                               &steady[as_entered].plate_forces[rungs - 1],
                               &governed[as_entered].plate_forces[rungs - 1],
                               &steady.back().plate_forces[0],
                               &governed.back().plate_forces[rungs - 1]};
    const Eigen::Index loads = states[0]->cols();
    const auto& at_ends = steady[as_entered].at_ends;  // each part may strain another place most
    const Eigen::Index ends = at_ends.empty() ? 0 : at_ends.front().plate_forces.cols();
    Eigen::MatrixXd all(states[0]->rows(), loads * static_cast<Eigen::Index>(states.size()) + ends);
    for (std::size_t k = 0; k < states.size(); ++k)
      all.middleCols(static_cast<Eigen::Index>(k) * loads, loads) = *states[k];
    if (ends > 0) all.rightCols(ends) = at_ends.front().plate_forces;
    return all;
  }

  StressHistory::Course read_course(HealingCourse course, const AtFactors& states, const PlaceStress& stress,
                                    const std::vector<Eigen::Matrix3Xd>& resting) const {
    StressHistory::Course result;
    result.course = course;
    result.gap = states[as_entered].gap;
    result.cycles.resize(rungs);
    if (has_parts()) result.parts.resize(rungs);
    for (const auto& state : states) result.united.push_back(state.gap.back().united);
    for (std::size_t moment = 0; moment < rungs; ++moment) {
      result.cycles[moment].resize(states.size());
      if (has_parts()) result.parts[moment].resize(states.size());
      for (std::size_t factor = 0; factor < states.size(); ++factor)
        for (std::size_t load = 0; load < history_.loads.size(); ++load) {
          const Eigen::Matrix3Xd loaded =
              stress.read(states[factor].plate_forces[moment].col(static_cast<Eigen::Index>(load)));
          auto& places = result.cycles[moment][factor].emplace_back();
          for (Eigen::Index k = 0; k < loaded.cols(); ++k)
            places.push_back(stress_cycle(resting[moment].col(k), loaded.col(k)));
          const auto& screws = states[factor].screw_cycles[moment][load];
          for (const auto cycle : {&ScrewCycles::head, &ScrewCycles::thread})
            for (const auto& screw : screws) places.push_back(screw.*cycle);
          if (has_parts())
            result.parts[moment][factor].push_back(
                part_states(states[factor].at_ends[moment], load, loaded, stress));
          if (factor == as_entered)
            result.gap[moment].plate_peak =
                std::max(result.gap[moment].plate_peak, solver::von_mises(loaded.transpose()).maxCoeff() * mpa);
        }
    }
    return result;
  }

  const Assembly assembly_;
  const HealingGap gap_;
  struct Softened {
    std::unique_ptr<const Assembly> assembly;
    std::unique_ptr<const HealingGap> gap;
  };
  std::vector<Softened> softened_;
  std::vector<const HealingGap*> gaps_;  // one a moment
  StressHistory history_;
  std::size_t first_at_ends_ = 0;  // among the assembly's loads: of the first load all its ends, then of the next
};

}  // namespace

StressHistory follow_healing(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                             const std::function<void(const std::string&)>& progress) {
  if (progress) progress("following the gap to union");
  return Following(prepared, construct).follow();
}

std::optional<NoRace> why_no_race(const Construct& construct) {
  using Reason = NoRace::Reason;
  if (!construct.healing) return NoRace{Reason::no_healing};
  if (std::none_of(construct.loads.begin(), construct.loads.end(),
                   [](const LoadCase& load) { return load.cycles_per_day.has_value(); }))
    return NoRace{Reason::no_daily_cycles};
  if (only(construct.fractures).gap <= 0.0 * mm) return NoRace{Reason::no_gap};
  if (std::any_of(construct.steps.begin(), construct.steps.end(), [](const Step& step) { return step.tissue; }))
    return NoRace{Reason::filled_by_step};
  const Metal& metal = only(construct.plates).material;
  if (!metal.fatigue_strength || !metal.ultimate_strength) return NoRace{Reason::unknown_strength, metal.name};
  return std::nullopt;
}

}  // namespace gapstrain::models
