#include "cases/lessons/figure_reference.h"
#include "cases/lessons/marked_text.h"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace gapstrain::cases;

TEST_CASE("marks are replaced, doubled braces are one, and nothing else changes", "[cases][lessons]") {
  const auto length = [](const std::string& mark) { return std::to_string(mark.size()); };
  CHECK(fill_marks("a {four} b {} c", length) == "a 4 b 0 c");
  CHECK(fill_marks("{{four}} <b>&", length) == "{four} <b>&");
  CHECK(marks_of("{one} and {two:a load@2/1}") == std::vector<std::string>{"one", "two:a load@2/1"});
  CHECK_THROWS_AS(marks_of("a } b"), MarkError);
  CHECK_THROWS_AS(marks_of("a {b"), MarkError);
}

TEST_CASE("a mark names a figure, a load and states", "[cases][lessons]") {
  const auto plain = read_reference("peak_stress");
  CHECK(plain.figure == "peak_stress");
  CHECK_FALSE(plain.load.has_value());
  CHECK_FALSE(plain.of.has_value());

  const auto whole = read_reference("gap_strain:axial 200 N@3 answer/beside");
  CHECK(whole.figure == "gap_strain");
  CHECK(whole.load == "axial 200 N");
  REQUIRE(whole.of.has_value());
  CHECK(whole.of->scene == 3);
  CHECK(whole.of->part == ScenePart::answer);
  REQUIRE(whole.over.has_value());
  CHECK_FALSE(whole.over->scene.has_value());
  CHECK(whole.over->part == ScenePart::beside);
}

TEST_CASE("what does not read as a state belongs to the load's name", "[cases][lessons]") {
  const auto odd = read_reference("gap_strain:walk @ 2 km/h");
  CHECK(odd.load == "walk @ 2 km/h");
  CHECK_FALSE(odd.of.has_value());
  CHECK(read_reference("gap_strain:walk@9/x").load == "walk@9/x");
}
