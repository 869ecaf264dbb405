#include "cases/text/digits.h"

#include <catch2/catch.hpp>

using namespace gapstrain::cases;

TEST_CASE("figures for readers have few digits and no powers of ten up to a million", "[cases][outputs]") {
  CHECK(two_digits(0.0123) == "0.012");
  CHECK(two_digits(99.4) == "99");
  CHECK(two_digits(99.6) == "100");
  CHECK(two_digits(-104.37) == "-104");
  CHECK(two_digits_signed(-104.37) == "-104");
  CHECK(two_digits_signed(0.62) == "+0.62");
  CHECK(three_digits(0.0) == "0");
  CHECK(three_digits(0.000123) == "0.00012");
  CHECK(three_digits(999.6) == "1000");
  CHECK(three_digits(123456.7) == "123457");
  CHECK(three_digits(1.2345e7) == "1.23e+07");
  CHECK(three_digits_up_to(1000.0, 1000.0) == "1000");
  CHECK(three_digits_up_to(1000.0, 1001.0) == ">1000");
}
