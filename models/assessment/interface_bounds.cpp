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

}  // namespace gapstrain::models
