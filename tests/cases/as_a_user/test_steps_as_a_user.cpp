// A fracture pressed together, as a person runs it. A coarse mesh, since figures are proved elsewhere.
#include "tests/cases/as_a_user/run_program.h"
#include "tests/cases/as_a_user/texts.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <string>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

namespace {

const std::string coarse_mesh = "\n[mesh]\nrefinement = 0.5\nrim_elements = 24\n";

std::string example(const std::string& name) {
  return read_file(fs::path(GAPSTRAIN_EXAMPLES) / name) + coarse_mesh;
}

Run analyse(const ScratchFolder& scratch, const std::string& text) {
  write_file(scratch.path() / "case.toml", text);
  return run_program({"analyse", "case.toml", "--no-pictures", "--out", "out"}, scratch.path());
}

nlohmann::json findings(const ScratchFolder& scratch) {
  return nlohmann::json::parse(read_file(scratch.path() / "out" / "findings.json"));
}

}  // namespace

TEST_CASE("a pressed fracture gives a row a step, pressures, limits and what is left under load",
          "[cases][as-a-user]") {
  const ScratchFolder scratch;
  const Run run = analyse(scratch, example("transverse_radius.toml"));
  INFO(run.out << run.err);
  REQUIRE((run.status == 0 || run.out.starts_with("NOT TO BE TRUSTED")));
  CHECK(run.out.find("LIMIT: ") < run.out.find("Transverse radius"));
  CHECK(run.out.find("Fracture pressed: ") != std::string::npos);
  CHECK(data_rows(scratch.path() / "out" / "steps.csv") == 6);
  CHECK(fs::exists(scratch.path() / "out" / "prebend.csv"));
  const auto json = findings(scratch);
  const auto& steps = json["compression"]["steps"];
  REQUIRE(steps.size() == 6);
  CHECK(steps[1]["face"]["force_n"].get<double>() == 0.0);
  const double force = steps[5]["face"]["force_n"].get<double>();
  CHECK(force > 50.0);
  CHECK(steps[5]["face"]["far_mpa"].get<double>() == 0.0);
  for (const auto& load : json["loads"]) {
    CHECK(load["face"]["force_n"].get<double>() == Approx(load["force_left"].get<double>() * force));
    CHECK_FALSE(load["gap"]["near"].contains("axial_strain"));
  }
  CHECK_FALSE(json["compression"].contains("order"));
}

TEST_CASE("a screw tightened too early is said so, with the better order", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  // S6 sits in the fragment that S5 is to slide.
  std::string text = example("transverse_radius.toml");
  text = replaced(text, "screw = \"S5\"", "screw = \"?\"");
  text = replaced(text, "screw = \"S6\"", "screw = \"S5\"");
  text = replaced(text, "screw = \"?\"", "screw = \"S6\"");
  const Run run = analyse(scratch, text);
  INFO(run.out << run.err);
  CHECK(run.out.find("ORDER: ") != std::string::npos);
  const auto order = findings(scratch)["compression"]["order"];
  CHECK(order["pressing"] == "S5");
  CHECK(order["possible_n"].get<double>() > 1.1 * order["reached_n"].get<double>());
}

TEST_CASE("a step that names nothing known is refused with its line, and nothing is written",
          "[cases][as-a-user]") {
  const ScratchFolder scratch;
  const Run run =
      analyse(scratch, replaced(example("oblique_tibia.toml"), "remove = \"forceps\"", "remove = \"tongs\""));
  CHECK(run.status == 2);
  CHECK(run.err.find("tongs") != std::string::npos);
  CHECK(run.err.find("case.toml:") != std::string::npos);
  CHECK_FALSE(fs::exists(scratch.path() / "out"));
}
