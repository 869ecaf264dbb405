// Margins, race and comparison as texts and tables, from samples.
#include "cases/cautions.h"
#include "cases/outputs/json/comparison_json.h"
#include "cases/outputs/json/state_json.h"
#include "cases/outputs/sentences/assessment_lines.h"
#include "cases/outputs/sentences/comparison_report.h"
#include "cases/outputs/sentences/margins_text.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/tables/race_csv.h"
#include "cases/text/columns.h"
#include "cases/text/digits.h"
#include "models/words/margin_words.h"
#include "models/words/race_words.h"
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
using gapstrain::tests::sample_construct;
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
    cases[k].construct = sample_construct();
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
  const auto margins = sample_assessment().margins;
  comparison.least_margins.incomplete = {1};
  comparison.least_margins.ends = {{0, margins[2]}, {1, margins[0]}, 2.86, true};
  return comparison;
}

models::Preference sample_preference() {
  const auto assessment = sample_assessment();
  models::Preference preference{1, models::PreferenceGround::holds_alone, {}, {}, {1, 2}};
  preference.standings = {{0, models::Standing::fails, assessment.margins.front(), assessment.state.fails.front()},
                          {1, models::Standing::holds, assessment.margins.back(), {}}};
  return preference;
}
const models::Preference preference = sample_preference();

// In one line, blanks as one.
std::string unwrapped(const std::string& text) {
  std::istringstream stream(text);
  std::string all;
  for (std::string word; stream >> word;) all += (all.empty() ? "" : " ") + word;
  return all;
}

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
  const auto construct = sample_construct();
  const std::string text = margins_text(construct, assessment.margins, assessment.margins_left_out);
  const auto lines = lines_of(text);
  REQUIRE(lines.size() > 25);
  CHECK(lines[2] == "The worst of each kind");
  CHECK(lines[3] == "factor  part                                    load");
  CHECK(lines[4] == "0.83    screw S4, fatigue                       load 1  IT FAILS");
  CHECK(lines[5] == "0.97    bone at the screws                      load 2  IT FAILS (indicative only)");
  CHECK(lines[6] == "2.37    plate, yield                            load 2");
  CHECK(lines[8] == "All, the worst first");
  CHECK_THAT(unwrapped(text),
             Contains("0.83 screw S4, fatigue: IT FAILS. Nominal in the core of S4 (hole 4), where it leaves the "
                      "head's seat, under \"load 1\": stress amplitude 106 MPa, mean stress 107 MPa;") &&
                 Contains("Assumed [1]. Source [1]. 0.97 bone at the screws: IT FAILS (indicative only). Under "
                          "\"load 2\" the bone is strained by up to 0.75 % within a core's width of a screw; "
                          "human-femur yields at 0.73 % in tension along its axis. Assumed [2]. Source [2]."));
  CHECK_THAT(unwrapped(text),
             Contains("Assumed [1] " + unwrapped(margin_assumptions(construct, assessment.margins[0])) +
                      ". [2] the thread's surroundings"));
  CHECK_THAT(text, Contains("\nSources\n[1]     a textbook.\n[2]     a paper.\n[3]     a standard.\n"));
  CHECK_THAT(
      unwrapped(text),
      Contains("Without a margin: - Fatigue under \"load 0\": it has no cycles_per_day while other loads have, "
               "so it is no part of the patient's day. - Bone: no yield strain of \"own bone\" is known; give "
               "yield_strain. - Part \"screw S1, pull-out\": nothing pulls or presses it."));
  for (const auto caution : cautions) CHECK_THAT(text, Contains(std::string(caution)));
}

TEST_CASE("long margins fit the screen, their text beside the factor", "[cases][outputs]") {
  auto assessment = sample_assessment();
  auto construct = sample_construct();
  const std::string load = std::string(70, 's') + " " + std::string(60, 't') + " " + std::string(150, 'u');
  construct.loads[0].name = load;
  for (auto& margin : assessment.margins) {
    margin.load = load;
    margin.source = "a source " + std::string(80, 'q') + " and its page";
    margin.factor *= 12345.0;
  }
  assessment.margins_left_out.emplace_back(
      models::LoadOutsideDay{std::string(60, 'w') + " " + std::string(60, 'v')});
  const std::string text = margins_text(construct, assessment.margins, assessment.margins_left_out);
  check_fits(text);
  CHECK_THAT(text, Contains("\n        tttttt") && Contains("\n10246   screw S4") && !Contains("FAILS"));
  // All share one source: it is written once.
  CHECK(text.find("a source") == text.rfind("a source"));
}

TEST_CASE("a long name of a load or a screw hides no failure", "[cases][outputs]") {
  auto margins = sample_assessment().margins;
  auto construct = sample_construct();
  margins[0].kind = models::MarginKind::screw_fatigue_of_all_loads;
  margins[0].label = "of the distal fragment";
  margins[0].load = construct.loads[1].name = std::string(200, 'l');
  const std::string text = margins_text(construct, margins, {});
  check_fits(text);
  const auto lines = lines_of(text);
  CHECK_THAT(lines[4], Contains("fatigue under all loads ") && Catch::Matchers::EndsWith("~  IT FAILS"));
}

TEST_CASE("of the margins a sentence names the least four kinds", "[cases][outputs]") {
  auto margins = sample_assessment().margins;
  CHECK(
      margins_sentence(margins) ==
      "In hand (strength over demand): screw S4, fatigue 0.83; bone at the screws 0.97 (indicative); plate, yield "
      "2.4.");
  using Kind = models::MarginKind;
  margins.push_back({Kind::screw_fatigue_of_all_loads, "", 3.1, "", false, models::ScrewId{5}, {}, "S5"});
  margins.push_back({Kind::plate_fatigue, "", 131.4, ""});
  margins.push_back({Kind::screw_hold, "", 200.0, "", false, models::ScrewId{1}, {}, "S1"});
  const std::string sentence = margins_sentence(margins);
  CHECK_THAT(sentence, Contains("plate, yield 2.4; plate, fatigue 131; the others more, see margins.txt."));
  CHECK_THAT(sentence, !Contains("S5") && !Contains("pull-out"));  // S5 is of a kind that S4 is worse in
}

TEST_CASE("an assessment comes to a verdict and sentences on healing, margins and rules", "[cases][outputs]") {
  auto assessment = sample_assessment();
  assessment.no_race.reset();
  assessment.race->hangs_on.clear();
  assessment.state.softening.clear();
  assessment.state.turned.clear();
  const auto construct = sample_construct();
  assessment.race->courses[0].united = {1.0, 1.0, 1.0};
  const auto sentences = assessment_sentences(construct, assessment);
  REQUIRE(sentences.size() == 5);
  CHECK(sentences[0] ==
        "Verdict: FAILS. The least margin is 0.83: screw S4, fatigue, under \"load 1\"; at 83 % of that load it "
        "would hold.");
  CHECK(sentences[1] ==
        "Healing: Screws outlast healing by a factor 2.3 to 12 (5th to 95th percentile); in 2 % of the samples "
        "they break before union is due. S4 has the shortest fatigue life.");
  CHECK(sentences[2] == "The least margin rests on: no corrosion or fretting ... (see margins.txt).");
  CHECK(sentences[3] == margins_sentence(assessment.margins));
  // In a page there are no files beside it.
  const auto in_a_page = assessment_sentences(construct, assessment, in_page);
  CHECK(in_a_page[2] == "The least margin rests on: no corrosion or fretting ... (see the margins below).");
  for (const auto& sentence : in_a_page) CHECK_THAT(sentence, !Contains(".txt") && !Contains(".json"));
  CHECK(sentences[4] == "Rules: 1 of 3 rules of the trade is broken: plate span ratio.");
  // That the implants last is not that the bone heals.
  assessment.race->at_the_end.united = 0.5;
  assessment.race->at_the_end.held = 0.5;
  CHECK(
      assessment_sentences(construct, assessment)[1] ==
      sentences[1] +
          " Under the loads as entered only 50 % of the gap's area unites in time: 50 % of it stays what it is, "
          "strained along the bone more than its next tissue bears; by the windows of Claes and Heigele 6 % stays "
          "fibrous. Over the samples 100 % to 100 % of it unite in time (5th to 95th percentile).");
  assessment.race.reset();
  assessment.no_race = models::NoRace{models::NoRace::Reason::no_gap};
  assessment.margins.clear();
  assessment.state = {};
  assessment.review.erase(assessment.review.begin());
  CHECK(assessment_sentences(construct, assessment) ==
        std::vector<std::string>{"Verdict: none. No margin is known; margins.txt says why.",
                                 "Healing: " + models::no_race_sentence(*assessment.no_race),
                                 "Rules: All 2 rules of the trade that apply are kept."});
}

TEST_CASE("a verdict that holds within the model's own error says so", "[cases][outputs]") {
  auto assessment = sample_assessment();
  assessment.state = {};
  assessment.margins = {{models::MarginKind::plate_yield, "fall", 1.04, ""}};
  CHECK_THAT(
      assessment_sentences(sample_construct(), assessment).front(),
      Contains("holds. The least margin is 1.04: plate, yield, under \"fall\"; that is within the model's own "
               "error of 10 %"));
  assessment.margins.front().factor = 1.4;
  CHECK(assessment_sentences(sample_construct(), assessment).front() ==
        "Verdict: holds. The least margin is 1.4: plate, yield, under \"fall\".");
}

TEST_CASE("the table of a race has a row a course and week, the gap between its moments", "[cases][outputs]") {
  const auto assessment = sample_assessment();
  const auto lines = lines_of(race_csv(*assessment.race, *assessment.history));
  REQUIRE(lines.size() == 1 + 3 * 3);
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
  CHECK_THAT(text, Contains("\nRules of the trade that are broken:\nA: plate span ratio: 5.2 (86 mm of plate"));
  CHECK_THAT(unwrapped(text),
             Contains("(rule: at least 8 to 10 for a simple fracture; from memory). Choose a plate of at "
                      "least 132 mm. B: "));
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
  models::Preference long_preference = preference;
  long_preference.broken_rules = {1, 2, 3, 4};
  const std::string text = comparison_text(cases, comparison, long_preference);
  check_fits(text);
  for (const auto* number : {" 1.23e+07 ", " 2e-05 ", "x >1000"}) CHECK_THAT(text, Contains(number));
  CHECK_THAT(text, Contains("\nD  construct D"));
}

TEST_CASE("a comparison begins with which to prefer and why, then each construct's state", "[cases][outputs]") {
  auto cases = sample_cases(2);
  cases[1].assessed.assessment.state.not_trusted = {models::Check{"force balance", 0.02, 1e-8, false, "it is so"}};
  const auto lines = lines_of(comparison_text(cases, sample_comparison(), preference));
  CHECK(lines[0] == "Prefer \"construct B\": it alone holds.");
  CHECK(lines[1] == "- \"construct A\" FAILS: screw S4, fatigue; it would bear 83 % of \"load 1\".");
  CHECK(lines[2] == "- \"construct B\" holds: least margin 2.4, plate, yield.");
  CHECK(lines[3] == "- Rules of the trade broken: \"construct A\" 1, \"construct B\" 2.");
  CHECK_THAT(lines[5], Catch::Matchers::StartsWith(
                           "A  construct A (A.toml): FAILS, with second-order effects, with large turns, screws "
                           "soften in bone"));
  const auto of_b = std::find_if(lines.begin(), lines.end(),
                                 [](const std::string& line) { return line.starts_with("B  construct B"); });
  REQUIRE(lines.end() - of_b > 1);
  CHECK_THAT(*of_b, Contains("B  construct B (B.toml): NOT TO BE TRUSTED"));
  CHECK(of_b[1] == "   NOT TO BE TRUSTED: force balance: 0.02, limit 1e-08; it should hold that it is so.");
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
  CHECK(json["constructs"][1]["no_race"]["reason"] == "no_healing");
  CHECK(json["pairs"][0]["first"] == "A");
  CHECK(json["pairs"][0]["second"] == "B");
  const auto verdict = json["verdict"].get<std::vector<std::string>>();
  REQUIRE(verdict.size() == 8);
  CHECK_THAT(verdict[0], Catch::Matchers::StartsWith("\"construct A\" FAILS: Nominal in the core of S4"));
  CHECK(verdict[2] == "\"construct A\": " + models::race_in_short(*cases[0].assessed.assessment.race));
  CHECK_THAT(verdict[3], Catch::Matchers::StartsWith("\"construct B\": no race against healing: The race of"));
  CHECK(verdict[4] == "Not every margin of \"construct B\" is known, so it is left out for all.");
  CHECK(verdict[5] ==
        "Least margins that are known of all: \"construct A\" 2.4 (plate, yield, load 2), \"construct B\" 0.83 "
        "(screw S4, fatigue, load 1): the first has 2.9 times as much in hand, which is more than the model's own "
        "error of 10 % each way.");
  CHECK(verdict[7] == "\"construct B\" breaks 1 of the rules of the trade: plate span ratio.");
  CHECK(json["least_margins"]["least"]["factor"] == 0.83);
  CHECK(json["preference"]["ground"] == "holds_alone");
  CHECK(json["preference"]["broken_rules"] == nlohmann::json{1, 2});
  CHECK(json["cautions"].size() == cautions.size());
}
