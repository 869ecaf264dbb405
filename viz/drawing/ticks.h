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

// So many significant digits, whole numbers in full, no trailing zeros; powers of ten only for what is very large
// or very small.
std::string number_text(double value, int digits = 3);

}  // namespace gapstrain::viz
