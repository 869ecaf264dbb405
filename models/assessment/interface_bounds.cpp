#include "models/assessment/interface_bounds.h"

#include <algorithm>

namespace gapstrain::models {

Construct with_interface(const Construct& construct, double stiffness) {
  Construct other = construct;
  other.screw_interface = stiffness;
  return other;
}

InterfaceBounds find_interface_bounds(const Construct& construct, const FirstDay& taken,
                                      const std::function<FirstDay(const Construct&)>& first_day_of) {
  const auto at = [&](double stiffness) -> InterfaceBound {
    if (stiffness == construct.screw_interface) return {stiffness, taken};
    return {stiffness, first_day_of(with_interface(construct, stiffness))};
  };
  return {construct.screw_interface, at(bonded_interface),
          at(std::min(soft_interface, construct.screw_interface))};
}

}  // namespace gapstrain::models
