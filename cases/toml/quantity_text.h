// Quantities as they are written in a case file: "2.7 mm", "1.2 N m", "30 deg".
#pragma once

#include <span>
#include <stdexcept>
#include <string>
#include <string_view>

namespace gapstrain::cases {

enum class Dimension { length, force, stress, moment, angle, mass, stiffness, angular_stiffness };

struct Unit {
  std::string_view text;
  Dimension dimension;
  double factor;  // to the units of models/parts/units.h
};

// As written.
struct Quantity {
  double number = 0.0;
  Unit unit;
};

struct QuantityError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// "a length", as messages say it.
std::string with_article(Dimension dimension);

// "mm, cm, m or um".
std::string units_of(Dimension dimension);

// A correct example for messages, such as "2.7 mm".
std::string example_of(Dimension dimension);

// All units, in the order of the messages.
std::span<const Unit> units();

// The unit of that name; null for an unknown one.
const Unit* find_unit(std::string_view text);

// @throw QuantityError with what was found, what is allowed and how to mend it.
Quantity split_quantity(std::string_view text, Dimension dimension);

// Its number in another unit of its dimension; as written in its own.
double number_in(const Quantity& quantity, const Unit& unit);

// The quantity in the units of models/parts/units.h (mm, N, MPa, N mm, rad, kg).
// @throw QuantityError with what was found, what is allowed and how to mend it.
double parse_quantity(std::string_view text, Dimension dimension);

}  // namespace gapstrain::cases
