// Margins, race and comparison as texts and tables, from samples.
#include "cases/cautions.h"
#include "cases/outputs/json/comparison_json.h"
#include "cases/outputs/sentences/assessment_lines.h"
#include "cases/outputs/sentences/comparison_report.h"
#include "cases/outputs/sentences/margins_text.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/tables/race_csv.h"
#include "cases/text/columns.h"
#include "cases/text/digits.h"
#include "tests/cases/as_a_user/expected_messages.h"
#include "tests/cases/outputs/sample_findings.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <sstream>

using namespace gapstrain;
using namespace gapstrain::cases;
using Catch::Matchers::Contains;
using gapstrain::tests::lines_of;
using gapstrain::tests::sample_assessment;
using gapstrain::tests::sample_findings;

namespace {

void check_fits(const std::string& text) {
  for (const auto& line : lines_of(text)) {
    INFO(line);
    CHECK(columns(line) <= screen_columns);
  }
}

std::vector<std::string> cells(std::string line) {
  REQUIRE(line.ends_with('\r'));
  line.pop_back();
  std::vector<std::string> found;
  std::istringstream stream(line + ",");
  for (std::string cell; std::getline(stream, cell, ',');) found.push_back(cell);
  return found;
}

std::vector<ComparedCase> sample_cases(std::size_t count) {
  std::vector<ComparedCase> cases(count);
  for (std::size_t k = 0; k < count; ++k) {
    cases[k].file = letter_of(k) + ".toml";
    cases[k].construct.name = "construct " + letter_of(k);
    cases[k].assessed.analysis.findings = sample_findings(1);
    cases[k].assessed.assessment = sample_assessment();
  }
  return cases;
}

models::ComparedFigure figure(const std::string& name, const std::string& unit, std::optional<bool> high,
                              std::vector<std::optional<double>> values) {
  return {name, unit, high, std::move(values), 0.1};
}

// Two constructs; every kind of row.
models::Comparison sample_comparison() {
  models::Comparison comparison;
  comparison.figures = {figure("force", "N", true, {0.0, 17.0}),
                        figure("life", "times", true, {5.16e11, 3.07e4}),
                        figure("stress", "MPa", false, {213.0, 107.0}),
                        figure("gap strain", "%", std::nullopt, {1108.0, 593.0}),
                        figure("stiffness", "N/mm", std::nullopt, {812.0, 812.0}),
                        figure("margin", "", true, {std::nullopt, 2.3})};
  comparison.pairs = {{0, 1, {}}};
  comparison.verdict = {"The first lasts longer."};
  return comparison;
}

const models::Preference preference{1, "Prefer \"construct B\": it alone holds.", {"\"construct A\" FAILS."}};

std::string line_with(const std::string& text, const std::string& beginning) {
  for (const auto& line : lines_of(text))
    if (line.starts_with(beginning)) return line;
  FAIL("no line begins with " << beginning);
  return {};
}

}  // namespace

TEST_CASE("margins are written worst first, with what is assumed and where the limit is from",
          "[cases][outputs]") {
  const auto assessment = sample_assessment();
  const std::string text = margins_text(assessment.margins, assessment.margins_left_out);
  const auto lines = lines_of(text);
  REQUIRE(lines.size() > 25);
  CHECK(lines[2] == "The worst of each kind");
  CHECK(lines[3] == "factor  part                                    load");
  CHECK(lines[4] == "0.83    screw S4, fatigue at its head           load 1  IT FAILS");
  CHECK(lines[5] == "0.97    bone at the screws                      load 2  IT FAILS (indicative only)");
  CHECK(lines[6] == "2.37    plate, yield                            load 2");
  CHECK(lines[8] == "All, the worst first");
  CHECK_THAT(
      text,
      Contains(
          "\n0.83    screw S4, fatigue at its head: IT FAILS. It breaks. Assumed [1]. Source [1].\n"
          "0.97    bone at the screws: IT FAILS (indicative only). It is strained. Source [2].\n"));  // nothing is
                                                                                                      // assumed
  CHECK_THAT(text,
             Contains("\nAssumed\n[1]     a notch of 2.1.\n\nSources\n[1]     a textbook.\n[2]     a paper.\n"));
  CHECK_THAT(text, Contains("\nWithout a margin:\n- Bone: no yield strain is known.\n"));
  for (const auto caution : cautions) CHECK_THAT(text, Contains(std::string(caution)));
}

TEST_CASE("long margins fit the screen, their text beside the factor", "[cases][outputs]") {
  auto assessment = sample_assessment();
  for (auto& margin : assessment.margins) {
    margin.sentence = std::string(70, 's') + " " + std::string(60, 't') + " " + std::string(150, 'u');
    margin.source = "a source " + std::string(80, 'q') + " and its page";
    margin.factor *= 12345.0;
  }
  assessment.margins_left_out.push_back(std::string(60, 'w') + " " + std::string(60, 'v'));
  const std::string text = margins_text(assessment.margins, assessment.margins_left_out);
  check_fits(text);
  CHECK_THAT(text, Contains("\n        tttttt") && Contains("\n10246   screw S4") && !Contains("FAILS"));
  // All share one source: it is written once.
  CHECK(text.find("a source") == text.rfind("a source"));
}

TEST_CASE("a long name of a load or a screw hides no failure", "[cases][outputs]") {
  auto margins = sample_assessment().margins;
  margins[0].part = "screw of the distal fragment, fatigue under all loads";
  margins[0].load = std::string(200, 'l');
  const std::string text = margins_text(margins, {});
  check_fits(text);
  const auto lines = lines_of(text);
  CHECK_THAT(lines[4], Contains("fatigue under all loads ") && Catch::Matchers::EndsWith("~  IT FAILS"));
}

TEST_CASE("of the margins a sentence names the least four kinds", "[cases][outputs]") {
  auto margins = sample_assessment().margins;
  CHECK(margins_sentence(margins) ==
        "In hand (strength over demand): screw S4, fatigue at its head 0.83; bone at "
        "the screws 0.97 (indicative); plate, yield 2.4.");
  using Kind = models::MarginKind;
  margins.push_back({Kind::screw_fatigue_of_all_loads, "screw S5, fatigue under all loads", "", 3.1, "", "", ""});
  margins.push_back({Kind::plate_fatigue, "plate, fatigue", "", 131.4, "", "", ""});
  margins.push_back({Kind::screw_hold, "screw S1, pull-out", "", 200.0, "", "", ""});
  const std::string sentence = margins_sentence(margins);
  CHECK_THAT(sentence, Contains("plate, yield 2.4; plate, fatigue 131; the others more, see margins.txt."));
  CHECK_THAT(sentence, !Contains("S5") && !Contains("pull-out"));  // S5 is of a kind that S4 is worse in
}

TEST_CASE("an assessment comes to a verdict and sentences on healing, margins and rules", "[cases][outputs]") {
  auto assessment = sample_assessment();
  assessment.no_race.reset();
  assessment.race->hangs_on.clear();
  CHECK(assessment_sentences(assessment) ==
        std::vector<std::string>{"Verdict: FAILS. The least margin is 0.83: screw S4, fatigue at its head, under "
                                 "\"load 1\"; at 83 % of that load it would hold.",
                                 "Healing: The plate lasts.", "The least margin rests on: a notch of 2.1.",
                                 margins_sentence(assessment.margins),
                                 "Rules: 1 of 2 rules of the trade is broken: plate span ratio."});
  // That the plate lasts is not that the bone heals.
  assessment.race->held_up = "Half of the gap stays open.";
  CHECK(assessment_sentences(assessment)[1] == "Healing: The plate lasts. Half of the gap stays open.");
  assessment.race.reset();
  assessment.no_race = "Enter the weeks to union.";
  assessment.margins.clear();
  assessment.state = {};
  assessment.review.erase(assessment.review.begin());
  CHECK(assessment_sentences(assessment) ==
        std::vector<std::string>{"Verdict: none. No margin is known; margins.txt says why.",
                                 "Healing: Enter the weeks to union.",
                                 "Rules: All 1 rules of the trade that apply are kept."});
}

TEST_CASE("a verdict that holds within the model's own error says so", "[cases][outputs]") {
  auto assessment = sample_assessment();
  assessment.state = {};
  assessment.margins = {{models::MarginKind::plate_yield, "plate, yield", "fall", 1.04, "", "", ""}};
  CHECK_THAT(
      assessment_sentences(assessment).front(),
      Contains("holds. The least margin is 1.04: plate, yield, under \"fall\"; that is within the model's own "
               "error of 10 %"));
  assessment.margins.front().factor = 1.4;
  CHECK(assessment_sentences(assessment).front() ==
        "Verdict: holds. The least margin is 1.4: plate, yield, under \"fall\".");
}

TEST_CASE("a state is told alike in lines, cells and JSON", "[cases][outputs]") {
  models::ResultState state;
  CHECK(alarms_of(state).empty());
  CHECK(state_cell(state) == "holds");
  CHECK_THAT(state_head(state, 80), Contains("HOLDS: no part that has a margin fails"));
  state = sample_assessment().state;
  CHECK(state.standing() == models::Standing::fails);
  CHECK(state_cell(state) == "FAILS (screw S4, fatigue at its head); ESTIMATE (cortex, gap)");
  state.not_trusted = {"energy balance: 0.3, limit 1e-08"};
  CHECK(state.standing() == models::Standing::not_trusted);
  CHECK(state_cell(state).starts_with("NOT TO BE TRUSTED (energy balance); FAILS ("));
  CHECK(state_json(state)["standing"] == "NOT TO BE TRUSTED");
  CHECK(state_json(state)["estimated"] == nlohmann::json{"bone.cortex", "fracture.gap"});
  CHECK(state_head(state, 80).starts_with("NOT TO BE TRUSTED: energy balance"));
  CHECK(with_result_column("a,b\r\n1,2\r\n3,4\r\n", models::ResultState{}) ==
        "a,b,result\r\n1,2,holds\r\n3,4,holds\r\n");
}

TEST_CASE("the table of a race has a row a course and week, the gap between its moments", "[cases][outputs]") {
  const auto assessment = sample_assessment();
  const auto lines = lines_of(race_csv(*assessment.race, *assessment.history));
  REQUIRE(lines.size() == 1 + 2 * 3);
  const auto names = cells(lines[0]);
  CHECK(names.size() == 19);
  std::vector<std::vector<std::string>> rows;
  for (const auto& line : lines) rows.push_back(cells(line));
  for (const auto& row : rows) CHECK(row.size() == names.size());
  const auto value = [&](std::size_t row, const std::string& name) {
    const auto column = std::find(names.begin(), names.end(), name) - names.begin();
    REQUIRE(static_cast<std::size_t>(column) < names.size());
    return std::stod(rows[row][static_cast<std::size_t>(column)]);
  };
  CHECK(rows[1][0] == "governed");
  CHECK(rows[4][0] == "none");
  CHECK(value(2, "week") == 1.0);
  CHECK(value(2, "damage_low") == 0.011);
  CHECK(value(2, "damage_middle") == 0.023);
  CHECK(value(2, "damage_high") == 0.047);
  CHECK(value(6, "damage_middle") == 1.42);
  CHECK(value(1, "plate_peak_mpa") == 213.0);
  // Week 1 lies a quarter of the way from week 0.8 to 1.6: stress goes straight, the modulus in equal ratios.
  CHECK(value(2, "plate_peak_mpa") == Approx(107.0 + 0.25 * (11.0 - 107.0)));
  CHECK(value(2, "tissue_modulus_mpa") == Approx(20.0 * std::pow(2000.0 / 20.0, 0.25)));
  CHECK(value(2, "united") == Approx(0.4 + 0.25 * 0.6));
  CHECK(value(3, "plate_peak_mpa") == 11.0);  // union stays
  CHECK(value(5, "tissue_modulus_mpa") == Approx(0.2));
  CHECK(value(1, "perren_bone") + value(1, "perren_cartilage") + value(1, "perren_granulation") +
            value(1, "perren_none") + value(1, "closed") ==
        Approx(0.1 + 0.53 + 0.22 + 0.01 + 0.14));
  CHECK(value(1, "claes_fibrous") == Approx(0.56));
  CHECK(value(1, "held") == Approx(0.3));
}

TEST_CASE("the columns of a comparison stand in line whatever the figures' size", "[cases][outputs]") {
  const auto comparison = sample_comparison();
  const std::string text = comparison_text(sample_cases(2), comparison, preference);
  check_fits(text);
  const std::string heading = line_with(text, "Figure, worst of all loads");
  const auto right_edge = [&](const std::string& word) { return heading.rfind(word) + word.size(); };
  const auto cell_at = [](const std::string& line, std::size_t right) {
    if (right > line.size()) return std::string{};
    const auto left = line.find_last_of(' ', right - 1);
    return line.substr(left + 1, right - left - 1);
  };
  const std::size_t a = right_edge("  A"), b = right_edge("  B"), differ = right_edge("differ");
  const std::size_t better = right_edge("better");
  const auto check_row = [&](const std::string& name, const std::vector<std::string>& expected) {
    const std::string line = line_with(text, name);
    INFO(line);
    CHECK(cell_at(line, a) == expected[0]);
    CHECK(cell_at(line, b) == expected[1]);
    CHECK(cell_at(line, differ) == expected[2]);
    CHECK(cell_at(line, better) == expected[3]);
  };
  check_row("force, N", {"0", "17", "all", "B"});
  check_row("life, times", {">10000", ">10000", ">1000", "A"});
  check_row("stress, MPa", {"213", "107", "1.99", "B"});
  check_row("gap strain, %", {"1108", "593", "1.87", ""});
  check_row("stiffness, N/mm", {"812", "812", "1", ""});
  check_row("margin", {"-", "2.3", "-", ""});
  CHECK(text.find("\nNot told apart") > text.find("\ngap strain"));
  CHECK(text.find("\nNot told apart") < text.find("\nstiffness"));
  CHECK_THAT(text,
             Contains("\nRules of the trade that are broken:\nA: plate span ratio: 5.2 (rule: at least 8; from "
                      "memory). Take a longer plate.\nB: "));
}

TEST_CASE("four constructs with long names fit the screen", "[cases][outputs]") {
  auto cases = sample_cases(4);
  for (auto& one : cases) {
    one.construct.name += std::string(90, 'n');
    one.file += std::string(90, 'f');
  }
  models::Comparison comparison;
  comparison.figures = {
      figure("a figure " + std::string(80, 'x'), "N m/degree", true, {1.23456e7, 2e-5, 3.0, 4.0})};
  comparison.verdict = {std::string(80, 'v') + " " + std::string(80, 'w')};
  const std::string text = comparison_text(cases, comparison, preference);
  check_fits(text);
  for (const auto* number : {" 1.23e+07 ", " 2e-05 ", "x >1000"}) CHECK_THAT(text, Contains(number));
  CHECK_THAT(text, Contains("\nD  construct D"));
}

TEST_CASE("a comparison begins with which to prefer and why, then each construct's state", "[cases][outputs]") {
  auto cases = sample_cases(2);
  cases[1].assessed.assessment.state.not_trusted = {"force balance: 0.02, limit 1e-08"};
  const auto lines = lines_of(comparison_text(cases, sample_comparison(), preference));
  CHECK(lines[0] == "Prefer \"construct B\": it alone holds.");
  CHECK(lines[1] == "- \"construct A\" FAILS.");
  CHECK(lines[3] == "A  construct A (A.toml): FAILS");
  CHECK_THAT(lines[7], Contains("B  construct B (B.toml): NOT TO BE TRUSTED"));
  CHECK(lines[8] == "   NOT TO BE TRUSTED: force balance: 0.02, limit 1e-08.");
  const auto json =
      nlohmann::json::parse(comparison_json(cases, sample_comparison(), preference, {"findings.json"}));
  CHECK(json["constructs"][0]["trustworthy"] == true);
  CHECK(json["constructs"][1]["trustworthy"] == false);
}

TEST_CASE("table and JSON of a comparison leave out what there is not", "[cases][outputs]") {
  const auto rows = lines_of(comparison_csv(sample_cases(2), sample_comparison()));
  REQUIRE(rows.size() == 8);
  CHECK(rows[0] == "figure,unit,A,B,ratio,model_error,told_apart,best\r");
  CHECK(rows[1] == "force,N,0,17,,0.1,yes,B\r");
  CHECK(rows[2].starts_with("life,times,5.16e+11,30700,16807817.6,"));
  CHECK(rows[5] == "stiffness,N/mm,812,812,1,0.1,no,\r");
  CHECK(rows[6] == "margin,,,2.3,,0.1,no,\r");
  CHECK(rows[7].starts_with("result,,"));

  auto cases = sample_cases(2);
  cases[0].assessed.assessment.no_race.reset();
  cases[1].assessed.assessment.race.reset();
  const auto json =
      nlohmann::json::parse(comparison_json(cases, sample_comparison(), preference, {"findings.json"}));
  CHECK(json["figures"][0]["values"] == nlohmann::json::parse("[0.0, 17.0]"));
  CHECK_FALSE(json["figures"][0].contains("ratio"));  // all against nothing
  CHECK(json["figures"][0]["best"] == "B");
  CHECK(json["figures"][5]["values"][0].is_null());
  CHECK_FALSE(json["figures"][4].contains("best"));
  CHECK(json["constructs"][0]["race"]["courses"][0]["screws"]["label"] == "S4");
  CHECK_FALSE(json["constructs"][0].contains("no_race"));
  CHECK_FALSE(json["constructs"][1].contains("race"));
  CHECK(json["constructs"][1]["no_race"] == "Enter the weeks to union.");
  CHECK(json["pairs"][0]["first"] == "A");
  CHECK(json["pairs"][0]["second"] == "B");
  CHECK(json["verdict"][0] == "The first lasts longer.");
  CHECK(json["cautions"].size() == cautions.size());
}

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
