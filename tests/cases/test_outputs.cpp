#include "cases/cautions.h"
#include "cases/outputs/columns.h"
#include "cases/outputs/csv_tables.h"
#include "cases/outputs/file_names.h"
#include "cases/outputs/findings_json.h"
#include "cases/outputs/findings_keys.h"
#include "cases/outputs/summary.h"
#include "cases/outputs/text_hash.h"
#include "tests/cases/sample_findings.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <sstream>

using namespace gapstrain;
using namespace gapstrain::cases;
using gapstrain::tests::sample_findings;

namespace {

const CaseOrigin origin{"sample.toml", "name = 1", {"a load was assumed"}};

// The paths of all values, indices left out; everything below "keys" counts as one.
void gather(const nlohmann::json& json, const std::string& path, std::set<std::string>& paths) {
  if (json.is_object() && path != "keys") {
    for (const auto& [key, value] : json.items()) gather(value, path.empty() ? key : path + "." + key, paths);
  } else if (json.is_array()) {
    for (const auto& item : json) gather(item, path + "[]", paths);
  } else {
    paths.insert(path);
  }
}

std::set<std::string> paths_of(const models::Findings& findings) {
  std::set<std::string> paths;
  gather(nlohmann::json::parse(make_findings_json(findings, origin, {"findings.json"}).text), "", paths);
  return paths;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

}  // namespace

TEST_CASE("findings.json documents exactly the keys it has", "[cases][outputs]") {
  auto findings = sample_findings(2);
  findings.stiffness.torsion = std::numeric_limits<double>::quiet_NaN() * models::newton_mm / models::radian;
  auto written = paths_of(findings);            // holds not_finite[]
  written.merge(paths_of(sample_findings(2)));  // and the torsion
  std::set<std::string> documented;
  for (const auto& key : findings_keys()) {
    CHECK(documented.insert(key.path).second);
    CHECK_FALSE(key.meaning.empty());
  }
  for (const auto& path : written) {
    INFO(path);
    CHECK(documented.contains(path));
  }
  for (const auto& path : documented) {
    INFO(path);
    CHECK(written.contains(path));
  }
}

TEST_CASE("findings.json carries the figures in the units of its keys", "[cases][outputs]") {
  const auto findings = sample_findings(1);
  const auto json = nlohmann::json::parse(make_findings_json(findings, origin, {"findings.json"}).text);
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
  const auto made = make_findings_json(findings, origin, {});
  const auto json = nlohmann::json::parse(made.text);
  CHECK(made.text.find("null") == std::string::npos);
  CHECK(made.not_finite ==
        std::vector<std::string>{"loads[0].gap.edge[2].axial_strain", "loads[0].plate.peak_von_mises_mpa"});
  CHECK_FALSE(json["loads"][0]["plate"].contains("peak_von_mises_mpa"));
  CHECK(json["trustworthy"] == false);
  CHECK(doubts(findings, made.not_finite).size() == 1);
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
  for (int i = 0; i < 9; ++i)
    findings.trust.checks.push_back(
        {"check " + std::string(40, 'c'), 0.123456, 1e-8, false, std::string(90, 'm')});
  const std::string folder = "/" + std::string(200, 'f');
  for (const auto& text :
       {summarise(findings, origin, {}, folder), summarise(sample_findings(1), origin, {}, "out"),
        summarise(sample_findings(0), origin, {}, "out")}) {
    const auto lines = lines_of(text);
    CHECK(lines.size() <= screen_lines);
    for (const auto& line : lines) {
      INFO(line);
      CHECK(columns(line) <= screen_columns);
    }
    for (const auto caution : cautions) CHECK(text.find(caution) != std::string::npos);
  }
}

TEST_CASE("the summary begins with what cannot be trusted, then the worst", "[cases][outputs]") {
  auto findings = sample_findings(2);
  findings.loads[1].plate.factor_to_yield = 0.8;
  findings.trust.checks.push_back({"force balance", 0.02, 1e-8, false, "each body is in balance"});
  const std::string text = summarise(findings, origin, {}, "out");
  CHECK(text.starts_with("NOT TO BE TRUSTED: force balance: 0.02, limit 1e-08"));
  CHECK(text.find("IT YIELDS") < text.find("Screws:"));
  CHECK(text.find("a load was assumed") != std::string::npos);
  CHECK(text.find("Files: out") != std::string::npos);
}

TEST_CASE("clipped text keeps whole characters", "[cases][outputs]") {
  const std::string umlauts = "\xc3\xa4\xc3\xb6\xc3\xbc\xc3\x9f";
  CHECK(columns(umlauts) == 4);
  CHECK(clip(umlauts, 3) == "\xc3\xa4\xc3\xb6~");
  CHECK(clip(umlauts, 4) == umlauts);
  CHECK(clip("a\x1b[31mb", 20) == "a [31mb");
  CHECK(pad("ab", 4) == "ab  ");
}
