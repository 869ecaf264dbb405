#include "cases/toml/quantity_text.h"

#include "cases/text/leading_number.h"
#include "cases/text/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace gapstrain::cases {

namespace {

constexpr std::array known_units{Unit{"mm", Dimension::length, 1.0},
                                 Unit{"cm", Dimension::length, 10.0},
                                 Unit{"m", Dimension::length, 1000.0},
                                 Unit{"um", Dimension::length, 0.001},
                                 Unit{"N", Dimension::force, 1.0},
                                 Unit{"kN", Dimension::force, 1000.0},
                                 Unit{"MPa", Dimension::stress, 1.0},
                                 Unit{"GPa", Dimension::stress, 1000.0},
                                 Unit{"kPa", Dimension::stress, 0.001},
                                 Unit{"Pa", Dimension::stress, 1e-6},
                                 Unit{"N/mm2", Dimension::stress, 1.0},
                                 Unit{"N mm", Dimension::moment, 1.0},
                                 Unit{"N cm", Dimension::moment, 10.0},
                                 Unit{"N m", Dimension::moment, 1000.0},
                                 Unit{"deg", Dimension::angle, std::numbers::pi / 180.0},
                                 Unit{"rad", Dimension::angle, 1.0},
                                 Unit{"kg", Dimension::mass, 1.0},
                                 Unit{"g", Dimension::mass, 0.001},
                                 Unit{"N/mm", Dimension::stiffness, 1.0},
                                 Unit{"N/m", Dimension::stiffness, 0.001},
                                 Unit{"kN/mm", Dimension::stiffness, 1000.0},
                                 Unit{"N m/deg", Dimension::angular_stiffness, 180000.0 / std::numbers::pi},
                                 Unit{"N m/rad", Dimension::angular_stiffness, 1000.0},
                                 Unit{"N mm/rad", Dimension::angular_stiffness, 1.0}};

// Without blanks at the ends, and with single ones between.
std::string normalise_blanks(std::string_view text) {
  std::string result;
  for (const char c : text) {
    const bool blank = c == ' ' || c == '\t';
    if (blank && (result.empty() || result.back() == ' ')) continue;
    result += blank ? ' ' : c;
  }
  if (!result.empty() && result.back() == ' ') result.pop_back();
  return result;
}

const Unit& known_unit(std::string_view text, std::string_view found, Dimension wanted) {
  if (const Unit* unit = find_unit(text)) return *unit;
  std::vector<std::string> known;
  for (const auto& candidate : known_units)
    if (candidate.dimension == wanted) known.emplace_back(candidate.text);
  const bool is_seen = visible(text) == text;
  throw QuantityError(fmt::format(
      "found \"{}\" with the unknown unit \"{}\"{}; {} is written in {}", visible(found), visible(text),
      is_seen ? did_you_mean(text, known) : " (write an ordinary blank)", with_article(wanted), units_of(wanted)));
}

}  // namespace

std::string with_article(Dimension dimension) {
  switch (dimension) {
    case Dimension::length:
      return "a length";
    case Dimension::force:
      return "a force";
    case Dimension::stress:
      return "a stress";
    case Dimension::moment:
      return "a moment";
    case Dimension::angle:
      return "an angle";
    case Dimension::mass:
      return "a mass";
    case Dimension::stiffness:
      return "a stiffness";
    case Dimension::angular_stiffness:
      return "a stiffness against turning";
  }
  return {};
}

std::string units_of(Dimension dimension) {
  std::vector<std::string> names;
  for (const auto& unit : known_units)
    if (unit.dimension == dimension) names.emplace_back(unit.text);
  return join_or(names);
}

std::string example_of(Dimension dimension) {
  switch (dimension) {
    case Dimension::length:
      return "2.7 mm";
    case Dimension::force:
      return "100 N";
    case Dimension::stress:
      return "17 GPa";
    case Dimension::moment:
      return "1.2 N m";
    case Dimension::angle:
      return "30 deg";
    case Dimension::mass:
      return "12 kg";
    case Dimension::stiffness:
      return "500 N/mm";
    case Dimension::angular_stiffness:
      return "0.5 N m/deg";
  }
  return {};
}

std::span<const Unit> units() { return known_units; }

const Unit* find_unit(std::string_view text) {
  const auto* unit =
      std::find_if(known_units.begin(), known_units.end(), [&](const Unit& u) { return u.text == text; });
  return unit == known_units.end() ? nullptr : unit;
}

double number_in(const Quantity& quantity, const Unit& unit) {
  return quantity.number * (quantity.unit.factor / unit.factor);
}

double parse_quantity(std::string_view text, Dimension dimension) {
  const Quantity quantity = split_quantity(text, dimension);
  return quantity.number * quantity.unit.factor;
}

Quantity split_quantity(std::string_view text, Dimension dimension) {
  const std::string clean = normalise_blanks(text);
  const std::string_view unsigned_text = std::string_view(clean).substr(clean.starts_with('+') ? 1 : 0);
  const auto number = leading_number(unsigned_text);
  const std::string wanted = fmt::format("{} is a number and a unit ({}), such as \"{}\"", with_article(dimension),
                                         units_of(dimension), example_of(dimension));
  if (!number || !std::isfinite(number->value))
    throw QuantityError(
        fmt::format("found \"{}\", which does not begin with a usable number; {}", visible(text), wanted));
  const std::string_view rest = unsigned_text.substr(number->length);
  if (rest.starts_with(','))
    throw QuantityError(fmt::format("found \"{}\" with a comma; write decimals with a point, such as \"{}\"",
                                    visible(text), example_of(dimension)));
  const std::string unit_text = normalise_blanks(rest);
  if (unit_text.empty())
    throw QuantityError(fmt::format("found \"{}\" without a unit; {}", visible(text), wanted));
  const Unit& unit = known_unit(unit_text, text, dimension);
  if (unit.dimension != dimension)
    throw QuantityError(fmt::format("found \"{}\", which is {}; {} is wanted here, in {}", visible(text),
                                    with_article(unit.dimension), with_article(dimension), units_of(dimension)));
  return {number->value, unit};
}

}  // namespace gapstrain::cases
