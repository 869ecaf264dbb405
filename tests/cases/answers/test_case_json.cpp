// Changes of a case as a merge patch.
#include "cases/answers/case_json.h"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

namespace gapstrain {

using namespace cases;  // NOLINT: this file is nothing but cases

TEST_CASE("a case with changes is what RFC 7396 says", "[answers]") {
  struct Example {
    std::string target, changes, result;
  };
  // P. Hoffman and J. Snell 2014, RFC 7396, appendix A: those whose patch is an object, as that of a case is.
  const std::vector<Example> examples{{R"({"a":"b"})", R"({"a":"c"})", R"({"a":"c"})"},
                                      {R"({"a":"b"})", R"({"b":"c"})", R"({"a":"b","b":"c"})"},
                                      {R"({"a":"b"})", R"({"a":null})", "{}"},
                                      {R"({"a":"b","b":"c"})", R"({"a":null})", R"({"b":"c"})"},
                                      {R"({"a":["b"]})", R"({"a":"c"})", R"({"a":"c"})"},
                                      {R"({"a":"c"})", R"({"a":["b"]})", R"({"a":["b"]})"},
                                      {R"({"a":{"b":"c"}})", R"({"a":{"b":"d","c":null}})", R"({"a":{"b":"d"}})"},
                                      {R"({"a":[{"b":"c"}]})", R"({"a":[1]})", R"({"a":[1]})"},
                                      {R"({"e":null})", R"({"a":1})", R"({"e":null,"a":1})"},
                                      {"[1,2]", R"({"a":"b","c":null})", R"({"a":"b"})"},
                                      {"{}", R"({"a":{"bb":{"ccc":null}}})", R"({"a":{"bb":{}}})"}};
  for (const auto& [target, changes, result] : examples) {
    CAPTURE(target, changes);
    Json json = Json::parse(target);
    patch(json, Json::parse(changes));
    CHECK(are_same(json, Json::parse(result)));
  }
}

TEST_CASE("the difference of two cases makes the one from the other", "[answers]") {
  const std::vector<std::string> cases{R"({"a":1,"b":{"c":"2 mm","d":[1,2]},"e":[{"f":1}]})",
                                       R"({"b":{"c":"2 mm"},"e":[{"f":1},{"g":2}]})", "{}",
                                       R"({"a":{"x":1},"b":3})"};
  for (const auto& from : cases)
    for (const auto& to : cases) {
      CAPTURE(from, to);
      Json json = Json::parse(from);
      patch(json, difference(Json::parse(from), Json::parse(to)));
      CHECK(are_same(json, Json::parse(to)));
    }
  CHECK(difference(Json::parse(cases[0]), Json::parse(cases[0])).empty());
}

TEST_CASE("a case keeps its values by way of JSON", "[answers]") {
  const std::string text = "a = 1\nb = \"2 mm\"\nc = [true, 2.5]\n[d]\ne = -0.1\n[[f]]\ng = 3\n";
  const Table table = parse_toml(text);
  CHECK(format_toml(table_of(to_json(table))) == format_toml(table));
  CHECK_THROWS_AS(table_of(Json::parse(R"({"a":[null]})")), RequestError);
  CHECK_THROWS_AS(table_of(Json::parse("3")), RequestError);
}

}  // namespace gapstrain
