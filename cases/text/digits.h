// Figures in a few digits, without powers of ten where a reader may meet them.
#pragma once

#include <string>

namespace gapstrain::cases {

// Two digits, "0.012", "4.2"; from 100 on to the whole number, "131".
std::string two_digits(double value);

// The same with its sign, "+4.2", "-131".
std::string two_digits_signed(double value);

// Three digits or the whole number, in at most eight columns: "0.123", "1108", "1.23e+07".
std::string three_digits(double value);

// Three digits up to a largest one, ">10000" beyond.
std::string three_digits_up_to(double largest, double value);

}  // namespace gapstrain::cases
