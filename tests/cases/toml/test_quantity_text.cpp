#include "cases/text/words.h"
#include "cases/toml/quantity_text.h"

#include <catch2/catch.hpp>

#include <numbers>

using namespace gapstrain::cases;

TEST_CASE("every unit of a dimension means the same quantity", "[cases][units]") {
  CHECK(parse_quantity("2.7 mm", Dimension::length) == Approx(2.7));
  CHECK(parse_quantity("0.27 cm", Dimension::length) == Approx(2.7));
  CHECK(parse_quantity("0.0027 m", Dimension::length) == Approx(2.7));
  CHECK(parse_quantity("2700 um", Dimension::length) == Approx(2.7));
  CHECK(parse_quantity("0.13 kN", Dimension::force) == Approx(130.0));
  CHECK(parse_quantity("17 GPa", Dimension::stress) == Approx(17000.0));
  CHECK(parse_quantity("17000 N/mm2", Dimension::stress) == Approx(17000.0));
  CHECK(parse_quantity("1.7e7 kPa", Dimension::stress) == Approx(17000.0));
  CHECK(parse_quantity("1.7e10 Pa", Dimension::stress) == Approx(17000.0));
  CHECK(parse_quantity("1.2 N m", Dimension::moment) == Approx(1200.0));
  CHECK(parse_quantity("120 N cm", Dimension::moment) == Approx(1200.0));
  CHECK(parse_quantity("1200 N mm", Dimension::moment) == Approx(1200.0));
  CHECK(parse_quantity("30 deg", Dimension::angle) == Approx(std::numbers::pi / 6.0));
  CHECK(parse_quantity("0.5 rad", Dimension::angle) == Approx(0.5));
  CHECK(parse_quantity("3400 g", Dimension::mass) == Approx(3.4));
}

TEST_CASE("blanks and signs do not matter", "[cases][units]") {
  CHECK(parse_quantity("  2.7mm ", Dimension::length) == Approx(2.7));
  CHECK(parse_quantity("+1.2   N \t m", Dimension::moment) == Approx(1200.0));
  CHECK(parse_quantity("-4.5e-1 mm", Dimension::length) == Approx(-0.45));
}

TEST_CASE("what is no quantity of the wanted dimension is refused", "[cases][units]") {
  for (const auto* text : {"", "mm", "2.7", "2.7 MM", "2,7 mm", "2.7 mm mm", "2.7 N", "nan mm", "-inf mm",
                           "1e999 mm", "++2 mm", "0x10 mm", "2.7 mm2", "N 2"}) {
    INFO(text);
    CHECK_THROWS_AS(parse_quantity(text, Dimension::length), QuantityError);
  }
}

TEST_CASE("the nearest word is found for a slip, and none for another word", "[cases]") {
  const std::vector<std::string> known{"thickness", "width", "length", "pitch"};
  CHECK(nearest_word("thicknes", known) == "thickness");
  CHECK(nearest_word("widht", known) == "width");
  CHECK(nearest_word("Length", known) == "length");
  CHECK_FALSE(nearest_word("colour", known).has_value());
  CHECK_FALSE(nearest_word(std::string(5000, 'x'), known).has_value());
  CHECK(edit_distance("ca", "abc") == 3);  // optimal string alignment; the unrestricted distance would be 2
  CHECK(edit_distance("kitten", "sitting") == 3);
}
