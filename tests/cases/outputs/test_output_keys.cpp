// The key tables of both sorts of findings.json, held against what is written and against the catalogue of
// figures.
#include "cases/outputs/json/comparison_json.h"
#include "cases/outputs/json/comparison_keys.h"
#include "cases/outputs/json/findings_json.h"
#include "cases/outputs/json/findings_keys.h"
#include "cases/outputs/json/margins_json.h"
#include "models/catalogue/analysed_outcome.h"
#include "models/catalogue/assessed_figures.h"
#include "tests/cases/outputs/sample_findings.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <limits>
#include <map>
#include <optional>
#include <set>

using namespace gapstrain;
using namespace gapstrain::cases;
using gapstrain::tests::sample_assessment;
using gapstrain::tests::sample_construct;
using gapstrain::tests::sample_findings;

namespace {

const CaseOrigin key_origin{"sample.toml", "name = 1", {"a load was assumed"}};

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

// Numbers by their paths, lists left out.
void gather_numbers(const nlohmann::json& json, const std::string& path, std::map<std::string, double>& numbers) {
  if (json.is_number()) numbers[path] = json.get<double>();
  if (json.is_object())
    for (const auto& [key, value] : json.items())
      gather_numbers(value, path.empty() ? key : path + "." + key, numbers);
}

// One margin of each basis.
std::vector<models::Margin> margins_of_each_basis() {
  using models::mpa, models::newton, models::mm;
  const models::PlateLocation location{5, 40.0 * mm, models::PlateFace::bottom};
  const models::FactorRange range{1.1, 1.3, 1.6};
  const std::vector<models::MarginBasis> bases = {
      models::YieldBasis{236.0 * mpa, 690.0 * mpa, location},
      models::PreloadBasis{400.0 * newton, 2100.0 * newton},
      models::FatigueBasis{{89.0 * mpa, 88.0 * mpa}, 98.0 * mpa, 170.0 * mpa, 1e6, range, location},
      models::DamageBasis{0.2, 16.0, range},
      models::HoldBasis{120.0 * newton, 900.0 * newton, 30.0 * newton, 700.0 * newton, true},
      models::StrainBasis{0.001, 0.0073}};
  std::vector<models::Margin> margins;
  for (const auto& basis : bases) {
    margins.emplace_back();
    margins.back().load = "load 0";
    margins.back().screw = models::ScrewId{4};
    margins.back().basis = basis;
  }
  return margins;
}

models::Assessment assessment_with(models::NoRace::Reason no_race) {
  auto assessment = sample_assessment();
  for (const auto& margin : margins_of_each_basis()) assessment.margins.push_back(margin);
  assessment.state.not_trusted = {models::Check{"force balance", 0.02, 1e-8, false, "it is in balance"}};
  assessment.state.fails.push_back({models::LostRace{true, 0.6}});
  assessment.no_race = models::NoRace{no_race, "own steel", "it slides away"};
  return assessment;
}

nlohmann::json written(const models::Findings& findings, const models::Assessment& assessment) {
  return nlohmann::json::parse(
      findings_json(sample_construct(), findings, assessment, key_origin, {"findings.json"}));
}

void check_documented(const std::set<std::string>& paths, const OutputKeys& keys) {
  std::set<std::string> documented;
  for (const auto& key : keys) {
    INFO(key.path);
    CHECK(documented.insert(key.path).second);
    CHECK_FALSE(key.meaning.empty());
  }
  for (const auto& path : paths) {
    INFO(path);
    CHECK(documented.contains(path));
  }
  for (const auto& path : documented) {
    INFO(path);
    CHECK(paths.contains(path));
  }
}

const OutputKey& key_at(const OutputKeys& keys, const std::string& path) {
  for (const auto& key : keys)
    if (key.path == path) return key;
  FAIL("no key " << path);
  return keys.front();
}

// That just the numbers which read a figure are keys of it, under the catalogue's unit and meaning. `below`: the
// keys' beginning. Counts are too few to be told apart by their values.
void check_figures(const nlohmann::json& json, const std::string& below, const models::FigureEntry& entry,
                   std::optional<double> value, std::size_t& found) {
  const auto keys = findings_keys();
  std::map<std::string, double> numbers;
  gather_numbers(json, "", numbers);
  for (const auto& [path, number] : numbers) {
    const auto& key = key_at(keys, below + path);
    INFO(key.path << " and " << entry.name);
    if (key.figure == entry.name) {
      ++found;
      REQUIRE(value);
      CHECK(number == Approx(*value));
      CHECK(key.unit() == models::unit_text(entry.unit));
      CHECK(key.meaning.starts_with(entry.meaning));
    } else {
      CHECK_FALSE(key.meaning.starts_with(entry.meaning));
      if (value && *value != 0.0 && entry.unit != models::FigureUnit::count) CHECK(number != Approx(*value));
    }
  }
}

}  // namespace

TEST_CASE("findings.json documents exactly the keys it has", "[cases][outputs]") {
  auto broken = sample_findings(2);
  broken.stiffness.torsion = std::numeric_limits<double>::quiet_NaN() * models::newton_mm / models::radian;
  std::set<std::string> paths;
  using Reason = models::NoRace::Reason;
  gather(written(broken, assessment_with(Reason::unknown_strength)), "", paths);  // holds not_finite[]
  gather(written(sample_findings(2), assessment_with(Reason::without_an_answer)), "", paths);  // and the torsion
  check_documented(paths, findings_keys());
}

TEST_CASE("keys that are figures draw unit and meaning on the catalogue, and read what it reads",
          "[cases][outputs]") {
  auto findings = sample_findings(2);
  for (auto& load : findings.loads) load.gap.windows.closed = 0.377;  // as nothing else
  const auto assessment = sample_assessment();
  const auto construct = sample_construct();
  const auto outcome = models::outcome_of(findings, construct, assessment.margins, assessment.review);
  const auto json = written(findings, assessment);
  std::size_t of_construct = 0, of_loads = 0;
  for (const auto& each : models::construct_figures())
    for (const auto* part : {"construct", "stiffness"})
      check_figures(json[part], std::string(part) + ".", each, each.read(outcome), of_construct);
  for (std::size_t l = 0; l < 2; ++l)
    for (const auto& each : models::load_figures())
      check_figures(json["loads"][l], "loads[].", each, each.read(outcome.loads[l]), of_loads);
  std::map<std::string, std::size_t> declared;  // by the first word of their paths
  for (const auto& key : findings_keys())
    if (!key.figure.empty()) ++declared[key.path.substr(0, key.path.find_first_of(".["))];
  CHECK(of_construct == declared["construct"] + declared["stiffness"]);
  CHECK(of_loads == 2 * declared["loads"]);
  CHECK(declared.size() == 4);  // and the race
  CHECK(declared["loads"] > 10);
  // Of a race the governed course is the catalogue's.
  const models::FigureSource source{outcome, findings, assessment.margins, assessment.race, {}};
  for (const auto& [path, name] : {std::pair{"life_factor", "plate_life"}, {"screws", "screw_life"}}) {
    const auto& course = json["race"]["courses"][0];
    REQUIRE(course["course"] == "governed");
    const auto& band = course[path].contains("middle") ? course[path] : course[path]["life_factor"];
    for (const auto& each : models::assessed_figures())
      if (each.name == name) CHECK(band["middle"].get<double>() == *each.read(source));
  }
  CHECK(declared["race"] == 2);
}

TEST_CASE("units of keys are those that they end with, and the file says them", "[cases][outputs]") {
  const auto json = written(sample_findings(1), sample_assessment());
  const auto& keys = json["keys"];
  CHECK(keys["stiffness.bending_y_n_mm_per_rad"]["unit"] == "N mm/rad");
  CHECK(keys["stiffness.axial_n_per_mm"]["unit"] == "N/mm");
  CHECK(keys["loads[].screws[].torsion_n_mm"]["unit"] == "N mm");
  CHECK(keys["loads[].gap.edge[].around_deg"]["unit"] == "deg");
  CHECK(keys["loads[].plate.peak_von_mises_mpa"]["unit"] == "MPa");
  CHECK(keys["loads[].plate.peak_von_mises_mpa"]["figure"] == "peak_stress");
  CHECK(keys["race.courses[].life_factor.middle"]["unit"] == "times");
  CHECK_FALSE(keys["construct.plate_span_ratio"].contains("unit"));
  CHECK_FALSE(keys["construct.name"].contains("figure"));
  CHECK_THROWS_AS(figure_key("loads[].heat", "heat"), std::out_of_range);
}

TEST_CASE("a comparison's findings.json documents exactly the keys it has", "[cases][outputs]") {
  std::vector<ComparedCase> compared_cases(2);
  std::vector<models::Construct> constructs;
  std::vector<models::AssessedConstruct> assessed;
  for (std::size_t k = 0; k < 2; ++k) {
    auto& one = compared_cases[k];
    one = {"file.toml", sample_construct(), {{sample_findings(1 + static_cast<int>(k)), {}}, {}}};
    one.assessed.assessment = assessment_with(k == 0 ? models::NoRace::Reason::unknown_strength
                                                     : models::NoRace::Reason::without_an_answer);
    one.assessed.assessment.history.reset();  // races of a sample cannot be run again
    constructs.push_back(one.construct);
    assessed.push_back(one.assessed);
    assessed.back().assessment.state.not_trusted.clear();  // or nothing is held against anything
  }
  auto comparison = models::compare(constructs, assessed);
  CHECK(comparison.pairs.at(0).races.empty());
  const auto hangs_on = sample_assessment().race->hangs_on;
  comparison.pairs[0].races = {{models::HealingCourse::governed, {0.5, 1.1, 2.3}, true, 0.6, hangs_on}};
  comparison.least_margins.incomplete = {1};
  models::Preference preference{1, models::PreferenceGround::outlasts_others, 0.97, {}, {1, 2}};
  const auto json = nlohmann::json::parse(
      comparison_json(compared_cases, comparison, preference, {"comparison.csv", "findings.json"}));
  std::set<std::string> paths;
  gather(json, "", paths);
  check_documented(paths, comparison_keys());
  CHECK(json["keys"]["constructs[].margins[].basis.stress_mpa"]["unit"] == "MPa");
  // Its figures are the catalogue's.
  CHECK(json["figures"].size() > 15);
  for (const auto& figure : json["figures"]) {
    const auto& entry = models::catalogue_entry(figure["name"].get<std::string>());
    CHECK(figure["figure"] == entry.compared.label);
    CHECK(figure["meaning"] == entry.meaning);
    CHECK(figure["unit"] == models::shown_in(entry.unit).unit);
  }
}

TEST_CASE("margins carry the values they were worked from", "[cases][outputs]") {
  const auto json = nlohmann::json::parse(margins_json(sample_construct(), margins_of_each_basis()).dump());
  CHECK(json[0]["basis"] == nlohmann::json::parse(R"({"stress_mpa": 236.0, "yield_mpa": 690.0, "hole": 5,
                                                      "along_mm": 40.0, "face": "bottom"})"));
  CHECK(json[2]["basis"]["amplitude_mpa"] == 89.0);
  CHECK(json[2]["basis"]["mean_mpa"] == 88.0);
  CHECK(json[2]["basis"]["reversed_mpa"] == 98.0);
  CHECK(json[2]["basis"]["factor_high"] == 1.6);
  CHECK(json[4]["basis"]["wall"] == "far");
}

TEST_CASE("what has no margin, no race or needs minding is told by values", "[cases][outputs]") {
  const auto json = written(sample_findings(1), sample_assessment());
  CHECK(json["margins_left_out"][0]["reason"] == "outside_the_day");
  CHECK(json["margins_left_out"][0]["load"] == "load 0");
  CHECK(json["margins_left_out"][1]["material"] == "own bone");
  CHECK(json["margins_left_out"][2]["screw"] == "S1");
  CHECK(json["margins_left_out"][2]["part"] == "screw S1, pull-out");
  CHECK(json["no_race"] ==
        nlohmann::json{{"reason", "no_healing"},
                       {"sentence",
                        "The race of bone against plate needs a table [healing] with weeks_from "
                        "and weeks_to."}});
  const auto& notes = json["plan"]["notes"];
  CHECK(notes[0]["note"] == "bend_at_locking_hole");
  CHECK(notes[0]["bend_deg"].get<double>() == Approx(6.3));
  CHECK(notes[1]["height_mm"] == 1.4);
  CHECK(notes[3]["tilt_across_deg"].get<double>() == Approx(-4.0));
  CHECK(notes[3]["sentence"] == "S4: aim the tip 7 deg towards distal and 4 deg towards lateral from square.");
  CHECK(notes[7]["metals"] == nlohmann::json{"titanium"});
  CHECK(notes[8]["allowance_mm"] == 2.0);
}
