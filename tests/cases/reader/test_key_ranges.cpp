// Every value of a case and of a study has a range, in one place, that `gapstrain keys` shows.
#include "cases/reader/case_keys.h"
#include "cases/reader/study_keys.h"
#include "cases/text/words.h"
#include "cases/toml/describe_keys.h"
#include "models/parts/construct.h"

#include <catch2/catch.hpp>

using namespace gapstrain::cases;

namespace {

bool needs_range(const Key& key) {
  return dimension_of(key.kind) || dimension_of_components(key.kind) || key.kind == Kind::number ||
         key.kind == Kind::count || key.kind == Kind::counts || key.kind == Kind::tables;
}

// As a value of that key, three times where it is a vector's.
Value text(const std::string& content, const Key& key) {
  const Value value{{}, content};
  return dimension_of(key.kind) ? value : Value{{}, std::vector<Value>{value, value, value}};
}

}  // namespace

TEST_CASE("every quantity, number, count and list of tables has a range whose ends are allowed",
          "[cases][reader]") {
  for (const KeyTable* table : {&case_keys(), &study_keys()})
    for (const Key& key : table->keys()) {
      INFO(join_path(key.table, key.name));
      CHECK(needs_range(key) == has_range(key));
      if (!dimension_of(key.kind) && !dimension_of_components(key.kind)) continue;
      for (const auto end : {key.range.least, key.range.most})
        CHECK_NOTHROW(parse_value(text(std::string(end), key), key));
      CHECK_THROWS_AS(
          parse_value(text("1e300" + std::string(key.range.most.substr(key.range.most.find(' '))), key), key),
          ValueError);
    }
}

TEST_CASE("the range of elements round a hole is the one that a construct is checked for", "[cases][reader]") {
  const Key* key = case_keys().find("mesh", "rim_elements");
  REQUIRE(key != nullptr);
  CHECK(key->range.least == std::to_string(gapstrain::models::MeshDensity::least_rim_elements));
  CHECK(key->range.most == std::to_string(gapstrain::models::MeshDensity::most_rim_elements));
}

TEST_CASE("the description of the keys shows their ranges", "[cases][reader]") {
  const std::string keys = describe_keys(case_keys(), "case");
  CHECK_THAT(keys, Catch::Contains("a length (mm, cm, m or um), 5 mm to 1000 mm"));
  CHECK_THAT(keys, Catch::Contains("a whole number, 1 to the plate's last hole (at most 100)"));
  CHECK_THAT(keys, Catch::Contains("; 1 to 200 of them"));
}

TEST_CASE("messages show what cannot be seen in a text, and cut long ones off", "[cases][reader]") {
  CHECK(visible("2.5 mm") == "2.5 mm");
  CHECK(visible("2.5\u00a0mm\t") == "2.5\\u00a0mm\\u0009");
  CHECK(visible("\ufeff") == "\\ufeff");
  CHECK(visible("Röhre µm") == "Röhre µm");
  const std::string cut = visible(std::string(79, 'x') + "ö and more");
  CHECK(cut == std::string(79, 'x') + "ö...");
}
