#include "cases/cautions.h"
#include "cases/figures/outcome_table.h"
#include "cases/files/file_names.h"
#include "cases/outputs/json/findings_json.h"
#include "cases/outputs/sentences/summary.h"
#include "cases/outputs/tables/csv_tables.h"
#include "cases/text/columns.h"
#include "cases/text/text_hash.h"
#include "tests/cases/as_a_user/texts.h"
#include "tests/cases/outputs/sample_findings.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

using namespace gapstrain;
using namespace gapstrain::cases;
using gapstrain::tests::sample_assessment;
using gapstrain::tests::sample_construct;
using gapstrain::tests::sample_findings;

using gapstrain::tests::lines_of;

namespace {

const CaseOrigin origin{"sample.toml", "name = 1", {"a load was assumed"}};

models::Check doubt(const std::string& name, const std::string& meaning = "it is in balance") {
  return {name, 0.02, 1e-8, false, meaning};
}

// Nothing to be alarmed at, so that the screen has room for all else.
models::Findings calm_findings(int loads) {
  auto findings = sample_findings(loads);
  findings.compression.limits.clear();
  findings.compression.order.reset();
  return findings;
}

models::Assessment calm_assessment() {
  auto assessment = sample_assessment();
  std::erase_if(assessment.margins, [](const models::Margin& margin) { return margin.factor < 1.0; });
  assessment.no_race.reset();
  assessment.state = {};
  return assessment;
}

}  // namespace

TEST_CASE("findings.json carries the figures in the units of its keys", "[cases][outputs]") {
  const auto findings = sample_findings(1);
  const auto json = nlohmann::json::parse(
      findings_json(sample_construct(), findings, sample_assessment(), origin, {"findings.json"}));
  const auto& load = json["loads"][0];
  CHECK(json["stiffness"]["axial_n_per_mm"] == findings.stiffness.axial.value());
  CHECK(load["gap"]["edge"][1]["around_deg"].get<double>() == Approx(120.0));
  CHECK(load["gap"]["far"]["axial_motion_mm"] == findings.loads[0].gap.far.axial_motion.value());
  CHECK(load["plate"]["peak_von_mises_mpa"] == findings.loads[0].plate.peak.von_mises.value());
  CHECK(load["plate"]["face"] == "bottom");
  CHECK(load["screws"][1]["bending_x_n_mm"] == findings.loads[0].screws[1].bending_x.value());
  CHECK(json["case"]["text_fnv1a64"] == fmt::format("{:016x}", fnv1a64(origin.text)));
  CHECK(json["cautions"].size() == cautions.size());
  CHECK(json["trustworthy"] == true);
}

TEST_CASE("a figure that is no number is left out, named and not trusted", "[cases][outputs]") {
  auto findings = sample_findings(1);
  findings.loads[0].gap.edge[2].axial_strain = std::numeric_limits<double>::quiet_NaN();
  findings.loads[0].plate.peak.von_mises = std::numeric_limits<double>::infinity() * models::mpa;
  models::AssessedConstruct assessed{{findings, {}}, sample_assessment()};
  doubt_not_finite(sample_construct(), assessed);
  const std::string text = findings_json(sample_construct(), findings, assessed.assessment, origin, {});
  const auto json = nlohmann::json::parse(text);
  CHECK(text.find("null") == std::string::npos);
  CHECK(json["not_finite"] ==
        std::vector<std::string>{"loads[0].gap.edge[2].axial_strain", "loads[0].plate.peak_von_mises_mpa"});
  CHECK_FALSE(json["loads"][0]["plate"].contains("peak_von_mises_mpa"));
  CHECK(json["trustworthy"] == false);
  CHECK(json["state"]["standing"] == "NOT TO BE TRUSTED");
  REQUIRE(assessed.assessment.state.not_trusted.size() == 1);
  const auto& not_finite = std::get<models::NotFinite>(assessed.assessment.state.not_trusted[0]);
  CHECK(not_finite.figures == 2);
  CHECK(not_finite.first == "loads[0].gap.edge[2].axial_strain");
  CHECK(json["state"]["not_trusted"][0].get<std::string>().starts_with("2 figures came out as no finite number"));
}

TEST_CASE("strain that has no meaning is left out of findings and tables", "[cases][outputs]") {
  auto findings = sample_findings(1);
  auto& gap = findings.loads[0].gap;
  gap.edge[1].axial_strain = gap.edge[1].shear_strain = std::nullopt;
  gap.axial_strain = gap.shear_strain = std::nullopt;
  const auto json =
      nlohmann::json::parse(findings_json(sample_construct(), findings, sample_assessment(), origin, {}));
  CHECK(json["not_finite"].empty());
  CHECK(json["trustworthy"] == true);
  CHECK_FALSE(json["loads"][0]["gap"].contains("axial_strain"));
  CHECK_FALSE(json["loads"][0]["gap"]["edge"][1].contains("shear_strain"));
  CHECK(json["loads"][0]["gap"]["edge"][2].contains("shear_strain"));
  const auto rows = lines_of(gap_strain_csv(findings));
  CHECK(rows[2].ends_with(",,\r"));
  CHECK_FALSE(rows[3].ends_with(",\r"));
  CHECK(rows[2].starts_with("load 0,120,-0.127,"));
  // The table of loads shows three dashes for the strains.
  findings.loads[0].working_length_effect[0].gap_strain.reset();
  findings.compression = {};
  const std::string text = summarise(sample_construct(), findings, calm_assessment(), origin, "out");
  CHECK(text.find("plate stress +12 %, gap motion +39 %, stiffness -28 %") != std::string::npos);
  CHECK(text.find(fmt::format("{} {:>8} {:>8} {:>7} ", pad("load 0", 22), "-", "-", "-")) != std::string::npos);
}

TEST_CASE("findings.json and the tables carry what the steps did", "[cases][outputs]") {
  const auto findings = sample_findings(2);
  const auto json =
      nlohmann::json::parse(findings_json(sample_construct(), findings, sample_assessment(), origin, {}));
  const auto& compression = json["compression"];
  CHECK(compression["steps"].size() == 3);
  CHECK(compression["steps"][1]["face"]["force_n"] == 793.0);
  CHECK(compression["steps"][1]["held"][0]["of_pull_out"] == 0.41);
  CHECK_FALSE(compression["steps"][1]["held"][1].contains("of_pull_out"));  // a clamp has no thread
  CHECK(compression["steps"][0]["by_hand"] == true);
  CHECK(compression["order"]["possible_n"] == 812.0);
  CHECK(compression["prebend"]["sufficient"]["height_mm"] == 1.2);
  CHECK(compression["prebend"]["most_even"]["height_mm"] == 1.4);
  CHECK(json["loads"][1]["force_left"] == 0.96 - 0.11);
  CHECK(json["loads"][1]["face"]["points"][1]["wall"] == "inner");
  CHECK(lines_of(steps_csv(findings))[2].starts_with("2,insert and tighten S4,793,21.7,9.13,0.27,14.9,0.38,"));
  CHECK(lines_of(face_csv(findings))[1] == "after step,2,insert and tighten S4,2.5,outer,14.9,0,0.0043\r");
  CHECK(lines_of(face_csv(findings))[12].starts_with("under load,2,load 1,181,outer,0,"));

  auto bare = findings;
  bare.compression = {};
  const auto plain =
      nlohmann::json::parse(findings_json(sample_construct(), bare, sample_assessment(), origin, {}));
  for (const auto* key : {"frictionless_n", "sticking_n", "order", "prebend"})
    CHECK_FALSE(plain["compression"].contains(key));
}

TEST_CASE("the hash is FNV-1a as its draft prints it", "[cases][outputs]") {
  // IETF draft-eastlake-fnv, appendix of test vectors: "", "a" and "foobar", 64 bits.
  CHECK(fnv1a64("") == 0xcbf29ce484222325);
  CHECK(fnv1a64("a") == 0xaf63dc4c8601ec8c);
  CHECK(fnv1a64("foobar") == 0x85944171f73967e8);
}

TEST_CASE("tables have a row per load and place, and a cell per column", "[cases][outputs]") {
  const auto findings = sample_findings(2);
  const auto count_rows = [](const std::string& table) {
    const auto lines = lines_of(table);
    for (const auto& line : lines)
      CHECK(std::count(line.begin(), line.end(), ',') == std::count(lines[0].begin(), lines[0].end(), ','));
    return lines.size() - 1;
  };
  CHECK(count_rows(gap_strain_csv(findings)) == 2 * 3);
  CHECK(count_rows(steps_csv(findings)) == 3);
  CHECK(count_rows(face_csv(findings)) == (2 + 2) * 3);  // the first step has no faces' points
  CHECK(count_rows(prebend_csv(*findings.compression.prebend)) == 2);
  CHECK(count_rows(plate_csv(findings)) == 2 * 4);
  CHECK(count_rows(screws_csv(findings)) == 2 * 2);
  CHECK(count_rows(screw_shafts_csv(findings)) == 2 * 2 * 5);
  CHECK(count_rows(working_length_csv(findings)) == 2 * 2);
}

TEST_CASE("a load's name cannot break a table", "[cases][outputs]") {
  auto findings = sample_findings(1);
  findings.loads[0].load = "axial, \"heavy\"";
  CHECK(screws_csv(findings).find("\r\n\"axial, \"\"heavy\"\"\",S1,") != std::string::npos);
}

TEST_CASE("a row that fails a check of its own says which, with value and limit", "[cases][outputs]") {
  models::Outcome outcome;
  CHECK(outcome_row({"1"}, outcome).starts_with("1,ok,"));
  outcome.doubts = {doubt("force balance"), doubt("contact: friction law, relative")};
  const std::string row = outcome_row({"1"}, outcome);
  CHECK(row.starts_with("1,doubtful,"));
  CHECK(row.ends_with(
      ",\"force balance: 0.02, limit 1e-08; contact: friction law, relative: 0.02, limit 1e-08\"\n"));
}

TEST_CASE("file names of loads are plain and cannot collide or leave the folder", "[cases][outputs]") {
  CHECK(load_stem(0, "axial 100 N") == "1_axial_100_N");
  CHECK(load_stem(1, "../../etc/passwd") == "2_.._.._etc_passwd");
  CHECK(load_stem(2, "\xc3\xa4 / ?") == "3");
  CHECK(load_stem(3, std::string(4000, 'x')).size() < 100);
}

TEST_CASE("the summary fits one screen whatever the case holds", "[cases][outputs]") {
  auto findings = sample_findings(25);
  for (auto& load : findings.loads) load.load += std::string(150, 'x');
  findings.construct = std::string(300, 'n');
  for (int i = 0; i < 30; ++i)
    findings.remarks.push_back("a long remark " + std::string(90, 'r') + " that goes on");
  auto alarming = sample_assessment();
  alarming.state.not_trusted.assign(9, doubt("check " + std::string(40, 'c'), std::string(90, 'm')));
  models::PassedLimit limit = alarming.state.limits.front();
  limit.label = std::string(120, 'l');
  alarming.state.limits.assign(7, limit);
  findings.compression.order->better_order.assign(12, "insert and tighten " + std::string(90, 's'));
  findings.compression.steps.resize(30, findings.compression.steps.back());
  for (auto& load : findings.loads) load.working_length_effect[1].unavailable = std::string(95, 'u') + " of it";
  const std::string folder = "/" + std::string(200, 'f');
  for (const auto& text :
       {summarise(sample_construct(), findings, alarming, origin, folder),
        summarise(sample_construct(), sample_findings(1), sample_assessment(), origin, "out"),
        summarise(sample_construct(), sample_findings(0), sample_assessment(), origin, "out")}) {
    const auto lines = lines_of(text);
    CHECK(lines.size() <= screen_lines);
    for (const auto& line : lines) {
      INFO(line);
      CHECK(columns(line) <= screen_columns);
    }
    for (const auto caution : cautions) CHECK(text.find(caution) != std::string::npos);
  }
}

TEST_CASE("the summary begins with the state of the result, then the verdict, then the worst",
          "[cases][outputs]") {
  auto findings = sample_findings(2);
  findings.loads[1].plate.factor_to_yield = 0.8;
  auto assessment = sample_assessment();
  assessment.state.not_trusted = {doubt("force balance")};
  const std::string text = summarise(sample_construct(), findings, assessment, origin, "out");
  const auto lines = lines_of(text);
  CHECK(lines[0] == "NOT TO BE TRUSTED: force balance: 0.02, limit 1e-08; it should hold that it is in balance.");
  CHECK(lines[1] ==
        "FAILS: screw S4, fatigue, under \"load 1\": it bears 0.83 of what it is asked; in week 2 to 5.");
  CHECK(lines[2] == "LIMIT: S4 uses up its slot: 1.3 mm of travel were asked for, hole 4 leaves 0.9 mm.");
  CHECK(lines[3] == "ESTIMATE, not measured: cortex, gap. Order nothing by them.");
  CHECK(lines[4].starts_with("ORDER: S2 was in before S4 pressed: 143 N press the fracture; the better order"));
  CHECK(lines[6].empty());
  CHECK(lines[8].starts_with("Verdict: none. The calculation failed its own checks"));
  CHECK(text.find("IT YIELDS") < text.find("Screws:"));
  CHECK(text.find("Files: out") != std::string::npos);
}

TEST_CASE("the hardest load is on the screen whatever its place in the file", "[cases][outputs]") {
  auto findings = sample_findings(25);
  findings.loads[23].load = "the fall";
  findings.loads[23].screws[0].factor_to_yield = 0.31;
  const auto lines = lines_of(summarise(sample_construct(), findings, sample_assessment(), origin, "out"));
  const auto heading =
      std::find_if(lines.begin(), lines.end(), [](const auto& line) { return line.starts_with("Load  "); });
  REQUIRE(heading != lines.end());
  CHECK((heading + 1)->starts_with("the fall "));
}

TEST_CASE("of a pressed fracture the summary tells force, pressure and motion", "[cases][outputs]") {
  auto findings = calm_findings(2);
  const auto one_line = [](const std::string& text) {
    std::string joined;
    for (const auto& line : lines_of(text)) {
      const auto start = line.find_first_not_of(' ');
      joined += " " + (start == std::string::npos ? "" : line.substr(start));
    }
    return joined;
  };
  std::string text = one_line(summarise(sample_construct(), findings, calm_assessment(), origin, "out"));
  CHECK(
      text.find("Fracture pressed: 769 N across it after the last step, near 8.9 MPa, far 0.26, 38 % of the face "
                "touches; under \"load 1\" 650 N (85 %) are left, motion up to 0.2 mm, slip up to 0.0035 mm. 62 % "
                "of the edge is open") != std::string::npos);
  CHECK(text.find("Force across the fracture after each step: 1 insert S1 0 N; 2 insert and tighten S4 793 N; 3 "
                  "insert S2 769 N.") != std::string::npos);
  CHECK(text.find("Left under load: \"load 0\" 737 N (96 %), \"load 1\" 650 N (85 %).") != std::string::npos);
  CHECK(text.find("201 MPa), 59 MPa after the steps alone; factor to yield 2.4.") != std::string::npos);
  CHECK(text.find("3 + 2 screws + 1 lag, 6 + 4 cortices") != std::string::npos);
  CHECK(text.find("that do not slide 838 N. Sufficient prebend: 1.2 mm (near 3.9, far 3.6 MPa; most even at "
                  "1.4 mm).") != std::string::npos);
  CHECK(text.find("Preload: S4 is left with 515 N, 40 % of its pull-out strength, 32 % of its core's yield.") !=
        std::string::npos);

  findings.loads[0].gapes = true;
  text = one_line(summarise(sample_construct(), findings, calm_assessment(), origin, "out"));
  CHECK(text.find("under \"load 0\" 737 N (96 %) are left and it GAPES") != std::string::npos);
  findings.loads[1].friction_use = 1.0;
  CHECK(summarise(sample_construct(), findings, calm_assessment(), origin, "out")
            .find("the plate SLIPS, under \"load 1\"") != std::string::npos);
}

TEST_CASE("of a fracture that only a load closes the summary says so", "[cases][outputs]") {
  auto findings = sample_findings(1);
  findings.compression = {};
  findings.loads[0].force_left.reset();
  std::string text = summarise(sample_construct(), findings, sample_assessment(), origin, "out");
  CHECK(text.find("Fracture closes under \"load 0\": 737 N across it") != std::string::npos);
  CHECK(text.find("after each step") == std::string::npos);

  findings.loads[0].face = {};
  text = summarise(sample_construct(), findings, sample_assessment(), origin, "out");
  CHECK(text.find("Gap: axial strain -4.7 to +0.6 %, shear up to 1.2 %, under \"load 0\".") != std::string::npos);
}

TEST_CASE("many steps keep the first that presses and the last", "[cases][outputs]") {
  auto findings = calm_findings(1);
  auto& steps = findings.compression.steps;
  steps.insert(steps.begin(), 5, steps.front());
  steps.insert(steps.end(), 9, steps.back());
  steps.back().text = "take out W1";
  const std::string text = summarise(sample_construct(), findings, calm_assessment(), origin, "out");
  CHECK(text.find("step: 6 insert S1 0 N; 7 insert and tighten S4 793 N;") != std::string::npos);
  CHECK(text.find("...; ") != std::string::npos);
  CHECK(text.find("17 take out W1 769 N.") != std::string::npos);
  CHECK(text.find("1 insert S1 0 N") == std::string::npos);
}

TEST_CASE("clipped text keeps whole characters", "[cases][outputs]") {
  const std::string umlauts = "\xc3\xa4\xc3\xb6\xc3\xbc\xc3\x9f";
  CHECK(columns(umlauts) == 4);
  CHECK(clip(umlauts, 3) == "\xc3\xa4\xc3\xb6~");
  CHECK(clip(umlauts, 4) == umlauts);
  CHECK(clip("a\x1b[31mb", 20) == "a [31mb");
  CHECK(pad("ab", 4) == "ab  ");
}
