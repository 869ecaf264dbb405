// What a hand does to a case, table by table.
#include "cases/answers/case_edits.h"

#include <catch2/catch.hpp>

#include <string>

namespace gapstrain {

using namespace cases;  // NOLINT: this file is nothing but cases

namespace {

const Json entered = Json::parse(R"({
  "screws": {"kind": "cortical", "size": "HA 2.7"},
  "screw": [{"holes": [1, 3]}, {"hole": 5, "kind": "compression", "slide": "0.7 mm", "label": "C"},
            {"hole": 6, "kind": "locking", "size": "locking 2.4", "tilt_along": "3 deg"}],
  "step": [{"screw": "S1"}, {"insert": ["S3", "C"]}, {"tighten": "C", "remove": ["W"]}, {"screw": "S6"}],
  "fracture": {"gap": "1 mm", "tissue": "fibrous-tissue"},
  "load": [{"name": "a", "axial": "100 N", "factor": 0.5}, {"name": "b", "bending_y": "1 N m", "axial": "0.1 kN"},
           {"name": "c", "torsion": "1 N m", "supports": "cantilever"}]})");

Json after(const std::string& edit, Json state = entered) {
  return edited(entered, std::move(state), Json::parse(edit));
}

const Json& screw(const Json& state, const std::string& label) {
  for (const auto& one : state["screw"])
    if (one["label"] == label) return one;
  FAIL("there is no screw " << label);
  return state;
}

}  // namespace

TEST_CASE("tables of several holes become one a screw, by the labels that the reader gives", "[answers]") {
  const Json screws = screw_tables(entered);
  REQUIRE(screws.size() == 4);
  CHECK(are_same(screws[0], Json::parse(R"({"hole": 1, "label": "S1"})")));
  CHECK(screws[1]["label"] == "S3");
  CHECK(screws[2]["label"] == "C");
  CHECK(screws[3]["label"] == "S6");
}

TEST_CASE("a new screw is like the case's first of its kind, and straight", "[answers]") {
  CHECK(are_same(screw(after(R"({"do":"put_screw","hole":2})"), "S2"),
                 Json::parse(R"({"hole": 2, "kind": "cortical", "label": "S2"})")));
  CHECK(are_same(screw(after(R"({"do":"put_screw","hole":4,"kind":"locking"})"), "S4"),
                 Json::parse(R"({"hole": 4, "kind": "locking", "size": "locking 2.4", "label": "S4"})")));
  const Json lag = screw(after(R"({"do":"put_screw","hole":4,"kind":"lag"})"), "S4");
  CHECK(are_same(lag, Json::parse(R"({"hole": 4, "kind": "lag", "label": "S4"})")));
  CHECK_THROWS_AS(after(R"({"do":"put_screw","hole":5})"), RequestError);  // taken
}

TEST_CASE("a screw that goes leaves no trace in the steps, and comes back as it was", "[answers]") {
  const Json without = after(R"({"do":"remove_screw","label":"C"})");
  CHECK(without["screw"].size() == 3);
  CHECK(are_same(without["step"],
                 Json::parse(R"([{"screw":"S1"},{"insert":["S3"]},{"remove":["W"]},{"screw":"S6"}])")));
  const Json back = after(R"({"do":"put_screw","hole":5})", without);
  CHECK(are_same(screw(back, "C"), screw_tables(entered)[2]));
  CHECK(back["step"].back()["screw"] == "C");  // it goes in last
  // Whose label somebody else has by now gets another one.
  Json moved = after(R"({"do":"move_screw","label":"S3","hole":2})");
  moved = after(R"({"do":"put_screw","hole":3})", moved);
  CHECK(screw(moved, "S3")["hole"] == 2);
  CHECK(screw(moved, "S3b")["hole"] == 3);
}

TEST_CASE("a screw that moves keeps its label, and its kind where that changes none", "[answers]") {
  const Json moved = after(R"({"do":"move_screw","label":"S6","hole":7})");
  CHECK(are_same(screw(moved, "S6"),
                 Json::parse(R"({"hole": 7, "kind": "locking", "size": "locking 2.4", "label": "S6"})")));
  CHECK(are_same(moved["step"], entered["step"]));
  const Json changed = after(R"({"do":"change_screw","label":"C","kind":"locking"})");
  CHECK(screw(changed, "C")["size"] == "locking 2.4");
  CHECK_FALSE(screw(changed, "C").contains("slide"));
  CHECK(are_same(changed["step"][2], Json::parse(R"({"remove": ["W"]})")));  // a locking head is not tightened
  CHECK(screw(after(R"({"do":"change_screw","label":"S1","cortices":1})"), "S1")["cortices"] == 1);
}

TEST_CASE("steps are put in another order, those of a case without steps as well", "[answers]") {
  CHECK(are_same(after(R"({"do":"order_steps","order":[3,0,1,2]})")["step"][0], entered["step"][3]));
  Json without_steps = entered;
  without_steps.erase("step");
  const Json ordered =
      edited(without_steps, without_steps, Json::parse(R"({"do":"order_steps","order":[2,0,1,3]})"));
  CHECK(are_same(ordered["step"], Json::parse(R"([{"screw":"C"},{"screw":"S1"},{"screw":"S3"},{"screw":"S6"}])")));
  CHECK_THROWS_AS(after(R"({"do":"order_steps","order":[0,0,1,2]})"), RequestError);
  CHECK_THROWS_AS(after(R"({"do":"order_steps","order":[0,1,2]})"), RequestError);
}

TEST_CASE("a gap is filled by name or modulus, and emptied", "[answers]") {
  CHECK(are_same(after(R"({"do":"fill_gap","tissue":"none"})")["fracture"], Json::parse(R"({"gap":"1 mm"})")));
  CHECK(after(R"({"do":"fill_gap","tissue":"cartilage"})")["fracture"]["tissue"] == "cartilage");
  const Json filled = after(R"({"do":"fill_gap","modulus_mpa":12.5})")["fracture"];
  CHECK(filled["filling"]["youngs_modulus"] == "12.5 MPa");
  CHECK_FALSE(filled.contains("tissue"));
}

TEST_CASE("loads are scaled, chosen and added up", "[answers]") {
  CHECK(after(R"({"do":"scale_load","load":1,"factor":1.5})")["load"][1]["factor"] == 1.5);
  CHECK_FALSE(after(R"({"do":"scale_load","load":0,"factor":1})")["load"][0].contains("factor"));
  const Json kept = after(R"({"do":"keep_loads","loads":[2]})");
  CHECK(kept["load"].size() == 1);
  CHECK(are_same(after(R"({"do":"all_loads"})", kept)["load"], entered["load"]));
  const Json both = after(R"({"do":"combine_loads","loads":[0,1],"name":"walk"})")["load"];
  REQUIRE(both.size() == 4);
  CHECK(are_same(both[3], Json::parse(R"({"name":"walk","axial":"150 N","bending_y":"1000 N mm"})")));
  CHECK_THROWS_AS(after(R"({"do":"combine_loads","loads":[0,2],"name":"x"})"), RequestError);  // held otherwise
}

TEST_CASE("what cannot be done is refused in a sentence", "[answers]") {
  CHECK_THROWS_WITH(after(R"({"do":"remove_screw","label":"Z"})"), "there is no screw \"Z\"");
  CHECK_THROWS_WITH(after(R"({"do":"dance"})"), "there is no edit \"dance\"");
  CHECK(are_same(after(R"({"do":"as_entered"})", Json::object()), entered));
}

}  // namespace gapstrain
