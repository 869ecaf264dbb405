// Whether what is said of a construct hangs on how bone holds its screws: the first day with threads bonded to
// bone and with the softest that is to be reckoned with, on the same bodies.
#pragma once

#include "models/assessment/result_state.h"

#include <functional>

namespace gapstrain::models {

// `taken`: the construct's first day as it is; each bound that it is not is asked of `first_day_of`.
InterfaceBounds find_interface_bounds(const Construct& construct, const FirstDay& taken,
                                      const std::function<FirstDay(const Construct&)>& first_day_of);

}  // namespace gapstrain::models
