// Whether what is said of a construct hangs on how bone holds its screws: the first day with threads bonded to
// bone and with the softest that is to be reckoned with, on the same bodies.
#pragma once

#include "models/assessment/result_state.h"

#include <functional>
#include <optional>
#include <vector>

namespace gapstrain::models {

// `taken`: the construct's first day as it is; each bound that it is not is asked of `first_day_of`.
InterfaceBounds find_interface_bounds(const Construct& construct, const FirstDay& taken,
                                      const std::function<FirstDay(const Construct&)>& first_day_of);

// The first day and every stage of the construct's course of how bone holds its screws; empty without one. The gap
// is that of the first day: what healing takes over is the race's.
std::vector<InterfaceWeek> find_softening(const Construct& construct, const FirstDay& taken,
                                          const std::function<FirstDay(const Construct&)>& first_day_of);

// What fails by then that did not on the first day; nothing where nothing does.
std::optional<Failure> failure_as_screws_soften(const std::vector<InterfaceWeek>& softening);

}  // namespace gapstrain::models
