// What becomes of a state, and of a result at both bounds of screws in bone, in sentences, cells and JSON.
#include "cases/outputs/json/state_json.h"
#include "cases/outputs/sentences/assessment_lines.h"
#include "cases/outputs/sentences/state_lines.h"
#include "tests/cases/outputs/sample_findings.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace gapstrain;
using namespace gapstrain::cases;
using Catch::Matchers::Contains;
using gapstrain::tests::sample_assessment;
using gapstrain::tests::sample_construct;

TEST_CASE("a state is told alike in lines, cells and JSON", "[cases][outputs]") {
  models::ResultState state;
  CHECK(alarms_of(state).empty());
  CHECK(state_cell(state) == "holds");
  CHECK_THAT(state_head(state, 80), Contains("HOLDS: no part that has a margin fails"));
  state = sample_assessment().state;
  CHECK(state.standing() == models::Standing::fails);
  CHECK(state_cell(state) ==
        "FAILS (screw S4, fatigue); ESTIMATE (cortex, gap); with second-order effects; "
        "with large turns; screws soften as stated");
  CHECK_THAT(state_head(state, 200),
             Contains("LARGE AXIAL LOAD: second-order effects are in the figures: under \"axial 130 N\" the "
                      "axial load is 6.1 % of the one that buckles the construct"));
  CHECK_THAT(state_head(state, 300),
             Contains("LARGE TURNS: parts are followed as they turn, by up to 0.21 rad under "
                      "\"axial 130 N\"; what is left linear within a part turns by 0.031"));
  CHECK_THAT(state_head(state, 600),
             Contains("SCREWS SOFTEN in bone, as stated by the case, no published course"));
  CHECK_THAT(state_head(state, 600), Contains("in week 8 (0.6 of the bonded stiffness) FAILS, least margin 0.81"));
  const auto alarms = short_alarms_of(state);
  REQUIRE(alarms.size() >= 3);
  CHECK(alarms[alarms.size() - 3] == "LARGE AXIAL LOAD: second-order effects are in the figures.");
  CHECK(alarms[alarms.size() - 2] == "LARGE TURNS: parts are followed as they turn.");
  CHECK(alarms.back() == "SCREWS SOFTEN in bone as stated by the case.");
  CHECK(state_json(sample_construct(), state)["large_turns"] == nlohmann::json{"axial 130 N"});
  CHECK(state_json(sample_construct(), state)["screws_soften"][1]["week"] == 8.0);
  CHECK(state_json(sample_construct(), state)["second_order"] == nlohmann::json{"axial 130 N"});
  state.not_trusted = {models::Check{"energy balance", 0.3, 1e-8, false, "work is stored"}};
  CHECK(state.standing() == models::Standing::not_trusted);
  CHECK(state_cell(state).starts_with("NOT TO BE TRUSTED (energy balance); FAILS ("));
  CHECK(state_json(sample_construct(), state)["standing"] == "NOT TO BE TRUSTED");
  CHECK(state_json(sample_construct(), state)["estimated"] == nlohmann::json{"bone.cortex", "fracture.gap"});
  CHECK(state_head(state, 80).starts_with("NOT TO BE TRUSTED: energy balance"));
  CHECK(with_result_column("a,b\r\n1,2\r\n3,4\r\n", models::ResultState{}) ==
        "a,b,result\r\n1,2,holds\r\n3,4,holds\r\n");
}

TEST_CASE("a summary says first that screws soften and parts turn far", "[cases][outputs]") {
  auto assessment = sample_assessment();
  auto sentences = assessment_sentences(sample_construct(), assessment);
  REQUIRE(sentences.size() > 2);
  CHECK(sentences[1] ==
        "Screws soften in bone, as stated by the case, from 1 of the bonded stiffness to 0.6 in week 8; the least "
        "margin of its weeks is 0.81, in week 8.");
  CHECK_THAT(sentences[2], Contains("Large turns: parts are followed as they turn, by up to 0.21 rad"));
  for (auto& margin : assessment.margins) margin.factor = 1.5;
  assessment.state.fails = {{assessment.margins.front(), {models::FailureTime::Kind::as_screws_soften, 8.0}}};
  sentences = assessment_sentences(sample_construct(), assessment);
  CHECK_THAT(sentences[0], Contains("Verdict: FAILS from week 8 on, as screws soften in bone. "));
  assessment.state.softening.clear();
  auto construct = sample_construct();
  construct.interface_course = {{8.0, 0.6}};
  CHECK(assessment_sentences(construct, assessment)[1] ==
        "Screws soften in bone as stated by the case; figures are of the first day.");
}

TEST_CASE("what the soft bound of screws in bone turns is said in every output", "[cases][outputs]") {
  const auto day = [](double factor) {
    const models::Margin least{models::MarginKind::plate_yield, "fall", factor, ""};
    return models::FirstDay{factor < 1.0 ? models::Standing::fails : models::Standing::holds, least, 0.02};
  };
  models::ResultState state;
  const auto set = [&](const models::FirstDay& soft) {
    state.interface = models::InterfaceBounds{1.0, {1.0, day(1.4)}, {0.5, soft}};
  };
  set(day(1.2));
  CHECK(alarms_of(state).empty());
  CHECK(state_cell(state) == "holds");
  CHECK_THAT(state_sentences(state).front(), Contains("entered, with screws bonded to bone or soft in it."));
  CHECK(state_json(sample_construct(), state)["screws_in_bone"]["verdict"] == "holds_at_both");

  set(day(0.8));
  CHECK(state.standing() == models::Standing::holds);
  CHECK(alarms_of(state).front() ==
        "FAILS AT THE SOFT BOUND: with screws soft in bone (0.5 of the bonded stiffness) plate, yield bears 0.8 "
        "of what "
        "it is asked, under \"fall\".");
  CHECK(short_alarms_of(state).front() == "FAILS AT THE SOFT BOUND: with screws soft in bone plate, yield.");
  CHECK(state_cell(state) == "holds; FAILS with screws soft in bone");
  CHECK_THAT(state_sentences(state).front(), Contains("entered, with screws bonded to bone."));
  const auto json = state_json(sample_construct(), state)["screws_in_bone"];
  CHECK(json["verdict"] == "hangs_on_it");
  CHECK(json["least_margin"] == 0.8);
  CHECK(json["bonded"]["least_margin"] == 1.4);
  CHECK(json["soft"]["standing"] == "FAILS");
  CHECK(json["soft"]["gap_strain"] == 0.02);

  set({models::Standing::not_trusted});
  CHECK_THAT(alarms_of(state).front(), Contains("NOT KNOWN: with screws soft in bone"));
  CHECK(state_cell(state) == "holds; not known with screws soft in bone");
  CHECK(state_json(sample_construct(), state)["screws_in_bone"]["verdict"] == "unknown");
  auto assessment = sample_assessment();
  assessment.margins = {*day(1.4).least};
  set(day(1.2));
  assessment.state = state;
  CHECK(assessment_sentences(sample_construct(), assessment).front() ==
        "Verdict: holds. The least margin is 1.4: plate, yield, under \"fall\"; 1.2 with screws soft in bone.");
}
