// The whole way with the real model: case file in, files out. A coarse mesh, since figures are proved elsewhere.
#include "tests/cases/as_a_user/run_program.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

namespace {

std::string coarse_bench_tube() {
  return read_file(fs::path(GAPSTRAIN_EXAMPLES) / "bench_tube.toml") +
         "\n[mesh]\nrefinement = 0.5\nrim_elements = 24\n";
}

}  // namespace

TEST_CASE("the bench tube gives findings, tables and fields that belong together", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", coarse_bench_tube());
  const Run run = run_program({"analyse", "tube.toml", "--no-pictures"}, scratch.path());
  INFO(run.out << run.err);
  const fs::path folder = scratch.path() / "tube-findings";
  REQUIRE(fs::exists(folder / "findings.json"));
  const auto json = nlohmann::json::parse(read_file(folder / "findings.json"));

  // A coarse mesh may fail the check of its own error; then the program must have said so.
  CHECK((run.status == 0) == json["trustworthy"].get<bool>());
  CHECK((run.status == 0 || run.out.starts_with("NOT TO BE TRUSTED")));
  CHECK(run.err.empty());

  std::vector<std::string> present;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (!entry.is_directory()) present.push_back(fs::relative(entry.path(), folder).generic_string());
  std::sort(present.begin(), present.end());
  CHECK(json["files"].get<std::vector<std::string>>() == present);
  CHECK(read_file(folder / "case.toml") == coarse_bench_tube());
  for (const auto* name : {"margins.txt", "plan.txt", "review.txt"})
    CHECK(std::find(present.begin(), present.end(), name) != present.end());
  CHECK_FALSE(fs::exists(folder / "race.csv"));  // a bench does not heal
  CHECK_FALSE(json.contains("race"));
  CHECK(run.out.find("Healing: " + json["no_race"]["sentence"].get<std::string>().substr(0, 30)) !=
        std::string::npos);
  CHECK(std::count_if(present.begin(), present.end(), [](const auto& f) { return f.ends_with(".vtu"); }) == 3 * 3);
  CHECK(std::count_if(present.begin(), present.end(), [](const auto& f) { return f.ends_with(".vtp"); }) == 3);

  REQUIRE(json["loads"].size() == 3);
  std::size_t edge_points = 0, screws = 0;
  for (const auto& load : json["loads"]) {
    edge_points += load["gap"]["edge"].size();
    screws += load["screws"].size();
    CHECK(load["plate"]["holes"].size() == 10);
    CHECK(load["plate"]["peak_von_mises_mpa"].get<double>() > 0.0);
    CHECK_FALSE(load["plate"].contains("factor_to_yield"));  // the case's metal has no yield strength
  }
  CHECK(screws == 3 * 6);
  CHECK(edge_points >= 3 * 8);
  CHECK(data_rows(folder / "gap_strain.csv") == edge_points);
  CHECK(data_rows(folder / "screws.csv") == screws);
  CHECK(data_rows(folder / "working_length.csv") == 3 * 2);
  CHECK(data_rows(folder / "plate.csv") >= 3 * 10);
  CHECK(json["construct"]["working_length_mm"].get<double>() == Approx(33.0));
  // Axial compression on a plate at one side closes the far cortex most.
  CHECK(json["loads"][0]["gap"]["far"]["axial_motion_mm"].get<double>() < 0.0);
}

TEST_CASE("a fracture that heals gives a race, in table and JSON alike", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "case.toml",
             read_file(fs::path(GAPSTRAIN_EXAMPLES) / "minimal.toml") +
                 "\n[[load]]\naxial = \"70 N\"\ncycles_per_day = 1500\n[healing]\nweeks_from = 3\nweeks_to = 5\n"
                 "[mesh]\nrefinement = 0.5\nrim_elements = 24\n");
  const Run run = run_program({"analyse", "case.toml", "--no-pictures", "--out", "out"}, scratch.path());
  INFO(run.out << run.err);
  REQUIRE(run.status == 0);
  const auto race = nlohmann::json::parse(read_file(scratch.path() / "out" / "findings.json"))["race"];
  const std::vector<double> weeks = race["weeks"];
  CHECK(weeks == std::vector<double>{0.0, 1.0, 2.0, 3.0, 4.0, 5.0});
  REQUIRE(race["courses"].size() == 3);
  CHECK(data_rows(scratch.path() / "out" / "race.csv") == 3 * weeks.size());
  CHECK(run.out.find("Healing: ") != std::string::npos);
  for (const auto& course : race["courses"]) {
    INFO(course["course"]);
    REQUIRE(course["damage"].size() == weeks.size());
    double before = 0.0;
    for (const auto& week : course["damage"]) {
      CHECK(week["low"].get<double>() <= week["middle"].get<double>());
      CHECK(week["middle"].get<double>() <= week["high"].get<double>());
      CHECK(week["middle"].get<double>() >= before);
      before = week["middle"].get<double>();
    }
  }
  // What does not heal wears the plate most.
  CHECK(race["courses"][2]["course"] == "none");
  CHECK(race["courses"][2]["damage"].back()["middle"].get<double>() >
        race["courses"][0]["damage"].back()["middle"].get<double>());
}

TEST_CASE("twice the load gives twice the figures while nothing touches", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  const auto with_load = [](const std::string& load) {
    std::string text = coarse_bench_tube();
    return text.replace(text.find("axial = \"100 N\""), 15, "axial = \"" + load + "\"");
  };
  write_file(scratch.path() / "once.toml", with_load("10 N"));
  write_file(scratch.path() / "twice.toml", with_load("0.02 kN"));
  const auto gap_motion = [&](const std::string& name) {
    run_program({"analyse", name + ".toml", "--no-pictures", "--quiet", "--out", name}, scratch.path());
    const auto json = nlohmann::json::parse(read_file(scratch.path() / name / "findings.json"));
    return json["loads"][0]["gap"]["far"]["axial_motion_mm"].get<double>();
  };
  const double once = gap_motion("once");
  CHECK(std::abs(once) > 0.0);
  CHECK(gap_motion("twice") == Approx(2.0 * once).epsilon(1e-6));
}

TEST_CASE("a second analysis replaces the first", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", coarse_bench_tube());
  const std::vector<std::string> arguments{"analyse", "tube.toml", "--no-pictures", "--quiet", "--out", "out"};
  const Run first = run_program(arguments, scratch.path());
  REQUIRE(fs::exists(scratch.path() / "out" / "findings.json"));
  const auto stiffness = [&] {
    return nlohmann::json::parse(read_file(scratch.path() / "out" / "findings.json"))["stiffness"];
  };
  const auto once = stiffness();
  const Run second = run_program(arguments, scratch.path());
  CHECK(first.status == second.status);
  CHECK(first.out.empty());
  CHECK(std::distance(fs::directory_iterator(scratch.path()), {}) == 2);
  REQUIRE(stiffness().size() == once.size());
  for (const auto& [key, value] : once.items())
    CHECK(stiffness()[key].get<double>() == Approx(value.get<double>()).epsilon(1e-9));
}
