// Supports, load lines, rollers and forces on the surface the whole way: case file in, findings out.
#include "tests/cases/as_a_user/run_program.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

namespace {

const std::string mesh_of_loads = "\n[mesh]\nrefinement = 0.5\nrim_elements = 24\n";

Run analyse_tube(const ScratchFolder& scratch, const std::string& loads) {
  write_file(scratch.path() / "bench_tube.toml", read_file(fs::path(GAPSTRAIN_EXAMPLES) / "bench_tube.toml"));
  write_file(scratch.path() / "case.toml", "base = \"bench_tube.toml\"\n" + loads + mesh_of_loads);
  return run_program({"analyse", "case.toml", "--no-pictures"}, scratch.path());
}

nlohmann::json loads_of(const std::string& loads) {
  const ScratchFolder scratch;
  const Run run = analyse_tube(scratch, loads);
  INFO(run.out << run.err);
  REQUIRE(run.err.empty());
  return nlohmann::json::parse(read_file(scratch.path() / "case-findings/findings.json"))["loads"];
}

// Largest difference of any number, as a share of it.
double largest_difference(const nlohmann::json& one, const nlohmann::json& other) {
  const nlohmann::json a = one.flatten(), b = other.flatten();
  REQUIRE(a.size() == b.size());
  double largest = 0.0;
  for (const auto& [key, value] : a.items()) {
    CAPTURE(key);
    REQUIRE(b.contains(key));
    if (!value.is_number_float()) continue;
    const double x = value.get<double>(), y = b[key].get<double>();
    if (std::abs(x) > 1e-9 || std::abs(y) > 1e-9)
      largest = std::max(largest, std::abs(x - y) / std::max(std::abs(x), std::abs(y)));
  }
  return largest;
}

std::string roller_load(const std::string& plane) {
  return fmt::format(
      "[[load]]\nname = \"{}\"\nfour_point = {{outer_proximal = \"8 mm\", inner_proximal = \"20 mm\", "
      "inner_distal = \"140 mm\", outer_distal = \"15.2 cm\", force = \"60 N\", plane = \"{}\"}}\n",
      plane, plane);
}

}  // namespace

TEST_CASE("supports in short are the same as supports end by end", "[cases][as-a-user]") {
  const std::string parts = "axial = \"90 N\"\ntransverse_z = \"3 N\"\ntorsion = \"500 N mm\"\n";
  const auto in_short = loads_of("[[load]]\nsupports = \"cantilever\"\n" + parts);
  const auto by_ends = loads_of("[[load]]\nproximal = \"held\"\ndistal = \"free\"\n" + parts);
  CHECK(in_short == by_ends);
  CHECK(by_ends[0]["supports"] == "proximal held, distal free");
  CHECK(by_ends[0]["acts"] == nlohmann::json({"axial 90 N", "transverse_z 3 N", "torsion 500 N mm"}));
}

TEST_CASE("two points give the line that offsets give", "[cases][as-a-user]") {
  const auto offsets = loads_of(
      "[[load]]\naxial = \"90 N\"\nball_distance = \"4 mm\"\nball_offset_y = \"2 mm\"\nball_offset_z = \"-5 "
      "mm\"\n");
  auto points = loads_of(
      "[[load]]\naxial = \"90 N\"\nline_from = [\"-4 mm\", \"2 mm\", \"-5 mm\"]\nline_to = [\"16.4 cm\", \"2 "
      "mm\", "
      "\"-5 mm\"]\n");
  CHECK(points[0]["supports"] == "proximal ball, distal ball; load line from (-4, 2, -5) mm to (164, 2, -5) mm");
  points[0]["supports"] = offsets[0]["supports"];
  CHECK(largest_difference(points, offsets) < 1e-6);  // figures are written to so many digits
}

TEST_CASE("rollers in both planes in one case give the figures of each alone", "[cases][as-a-user]") {
  const auto both = loads_of(roller_load("flat") + roller_load("edge"));
  REQUIRE(both.size() == 2);
  CHECK(largest_difference(both[0], loads_of(roller_load("flat"))[0]) < 1e-6);
  CHECK(largest_difference(both[1], loads_of(roller_load("edge"))[0]) < 1e-6);
  CHECK(both[1]["supports"] == "rollers at 8, 20, 140 and 152 mm, on the edge");
}

TEST_CASE("a muscle's force bends the construct, wherever its place is said from", "[cases][as-a-user]") {
  const std::string pull =
      "[[load]]\nproximal = \"held\"\ndistal = \"free\"\n[[load.force]]\nposition = \"142 mm\"\n"
      "force = [\"-20 N\", \"0 N\", \"-6 N\"]\n";
  const auto caudal = loads_of(pull + "aspect = \"caudal\"\n"), around = loads_of(pull + "around = \"180 deg\"\n");
  CHECK(largest_difference(caudal, around) < 1e-6);
  CHECK(caudal[0]["acts"] == around[0]["acts"]);
  CHECK(around[0]["acts"] == nlohmann::json({"force[0] (-20, 0, -6) N at 142 mm, 180 deg round"}));
  CHECK(around[0]["plate"]["peak_von_mises_mpa"].get<double>() > 1.0);
  // A plate on the lateral face turns the axes: cranial is then on +y.
  const auto side = loads_of(pull + "aspect = \"lateral\"\n");
  CHECK(side[0]["acts"][0].get<std::string>().find("270 deg") == std::string::npos);
  CHECK(side[0]["acts"][0].get<std::string>().find("-90 deg") != std::string::npos);
}

TEST_CASE("supports that let the construct slide are named with the load", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  const Run run = analyse_tube(
      scratch, "[[load]]\nname = \"rig\"\nproximal = \"guided\"\ndistal = \"guided\"\naxial = \"90 N\"\n");
  CHECK(run.status == 1);
  CHECK(run.err.find("is free to slide along the bone") != std::string::npos);
  CHECK(run.err.find("under load \"rig\"") != std::string::npos);
}

TEST_CASE("a rig's compliance can be varied by a study", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "bench_tube.toml", read_file(fs::path(GAPSTRAIN_EXAMPLES) / "bench_tube.toml"));
  write_file(scratch.path() / "case.toml",
             "base = \"bench_tube.toml\"\n[[load]]\naxial = \"100 N\"\nproximal = \"elastic\"\ndistal = \"ball\"\n"
             "[load.proximal_spring]\nbending_y = \"0.2 N m/deg\"\n" +
                 mesh_of_loads);
  write_file(
      scratch.path() / "study.toml",
      "case = \"case.toml\"\n[[vary]]\nkey = \"load[0].proximal_spring.bending_y\"\nvalues = [\"0.2 N m/deg\", "
      "\"20 N m/deg\"]\n");
  const Run run = run_program({"sweep", "study.toml", "--no-pictures", "--threads", "1"}, scratch.path());
  INFO(run.out << run.err);
  CHECK(run.status == 0);
  CHECK(data_rows(scratch.path() / "study-sweep/rows.csv") == 2);
}
