// Round numbers for scales.
#pragma once

#include <string>
#include <vector>

namespace gapstrain::viz {

// The smallest of 1, 2, 5 times a power of ten that covers `span` in at most `parts` steps.
double round_step(double span, int parts);

// The largest of 1, 2, 5 times a power of ten that does not exceed `value`.
double round_below(double value);

// Multiples of `step` within [low, high].
std::vector<double> ticks_within(double low, double high, double step);

// With as many decimals as the step needs; never "-0".
std::string tick_text(double value, double step);

}  // namespace gapstrain::viz
