#include "cases/text/leading_number.h"

#include <catch2/catch.hpp>

using namespace gapstrain::cases;

TEST_CASE("a text's number ends where its unit begins", "[cases][text]") {
  const auto check = [](const char* text, double value, std::size_t length) {
    CAPTURE(text);
    const auto number = leading_number(text);
    REQUIRE(number);
    CHECK(number->value == value);
    CHECK(number->length == length);
  };
  check("2.7 mm", 2.7, 3);
  check("-0.5", -0.5, 4);
  check(".5mm", 0.5, 2);
  check("1e3N", 1000.0, 3);
  check("1e", 1.0, 1);
  check("1.e-2x", 0.01, 5);
  check("0x10", 0.0, 1);
  for (const char* text : {"", " 1", "+1", "mm", "-", ".", "e5", "1e999"}) {
    CAPTURE(text);
    CHECK_FALSE(leading_number(text));
  }
}
