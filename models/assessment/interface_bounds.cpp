#include "models/assessment/interface_bounds.h"

#include "models/assembly/screw_interface.h"

namespace gapstrain::models {

InterfaceBounds find_interface_bounds(const Construct& construct, const FirstDay& taken,
                                      const std::function<FirstDay(const Construct&)>& first_day_of) {
  const auto at = [&](double stiffness) -> InterfaceBound {
    if (stiffness == construct.screw_interface) return {stiffness, taken};
    return {stiffness, first_day_of(with_interface(construct, stiffness))};
  };
  return {construct.screw_interface, at(bonded_interface), at(soft_bound_of(construct))};
}

std::vector<InterfaceWeek> find_softening(const Construct& construct, const FirstDay& taken,
                                          const std::function<FirstDay(const Construct&)>& first_day_of) {
  std::vector<InterfaceWeek> weeks;
  if (construct.interface_course.empty()) return weeks;
  weeks.push_back({0.0, {construct.screw_interface, taken}});
  for (const auto& [week, stiffness] : construct.interface_course) {
    const InterfaceBound& before = weeks.back().bound;
    weeks.push_back({week, stiffness == before.stiffness
                               ? before
                               : InterfaceBound{stiffness, first_day_of(with_interface(construct, stiffness))}});
  }
  return weeks;
}

std::optional<Failure> failure_as_screws_soften(const std::vector<InterfaceWeek>& softening) {
  if (softening.empty() || softening.front().bound.day.standing != Standing::holds) return std::nullopt;
  for (const auto& [week, bound] : softening)
    if (bound.day.standing == Standing::fails && bound.day.least)
      return Failure{*bound.day.least, {FailureTime::Kind::as_screws_soften, week, std::nullopt}};
  return std::nullopt;
}

}  // namespace gapstrain::models
