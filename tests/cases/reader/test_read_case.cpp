#include "cases/reader/case_keys.h"
#include "cases/reader/read_case.h"
#include "cases/toml/case_places.h"
#include "cases/toml/describe_keys.h"
#include "cases/toml/parse_value.h"
#include "tests/cases/as_a_user/run_program.h"
#include "tests/cases/as_a_user/texts.h"

#include <catch2/catch.hpp>

#include <set>

using namespace gapstrain;
using namespace gapstrain::cases;
using gapstrain::tests::read_file;

using gapstrain::tests::replaced;

namespace {

const std::filesystem::path case_folder = GAPSTRAIN_EXAMPLES;

models::Construct minimal_with(const std::string& from, const std::string& to) {
  return read_case_text("minimal.toml", replaced(read_file(case_folder / "minimal.toml"), from, to)).construct;
}

}  // namespace

TEST_CASE("every example is read without error or warning", "[cases][reader]") {
  const auto files = tests::toml_files(case_folder);
  REQUIRE(files.size() >= 3);
  for (const auto& file : files) {
    INFO(file.string());
    const auto problems = read_case(file).warnings;
    INFO(format_problems(file.string(), problems));
    CHECK(problems.empty());
  }
}

TEST_CASE("the bench tube is read as it stands in the file", "[cases][reader]") {
  const auto construct = read_case(case_folder / "bench_tube.toml").construct;
  CHECK(construct.name == "Bench tube");
  REQUIRE(construct.bone.stations.size() == 1);
  CHECK(construct.bone.stations[0].width_mediolateral.value() == Approx(14.0));
  CHECK(construct.bone.stations[0].width_craniocaudal.value() == Approx(14.0));
  CHECK(construct.bone.stations[0].cortex.value() == Approx(2.5));
  CHECK(construct.bone.cortex.longitudinal_modulus.value() == Approx(17000.0));
  CHECK(construct.bone.cortex.shear_modulus_lr.value() == Approx(17000.0 / 2.6));
  REQUIRE(only(construct.plates).holes.size() == 10);
  for (int k = 0; k < 10; ++k)
    CHECK(only(construct.plates).holes[static_cast<std::size_t>(k)].position.value() == Approx(6.5 + 11.0 * k));
  CHECK(only(construct.plates).proximal_end.value() == Approx(24.0));
  CHECK(only(construct.plates).material.youngs_modulus.value() == Approx(110000.0));
  CHECK_FALSE(only(construct.plates).material.yield_strength.has_value());
  REQUIRE(construct.screws.size() == 6);
  CHECK(construct.screws[4].hole == 8);
  CHECK(construct.screws[4].label == "S8");
  CHECK(construct.screws[4].size.core_diameter.value() == Approx(2.4));
  CHECK(construct.screws[4].material.youngs_modulus.value() == Approx(110000.0));
  REQUIRE(construct.loads.size() == 3);
  CHECK(construct.loads[0].axial_compression.value() == Approx(100.0));
  CHECK(construct.loads[0].ball_distance.value() == Approx(4.0));
  CHECK(construct.loads[1].bending_y.value() == Approx(1000.0));
  CHECK(construct.loads[2].supports == models::cantilever());
  CHECK(construct.loads[2].torsion.value() == Approx(1000.0));
  CHECK_FALSE(only(construct.fractures).tissue.has_value());
}

TEST_CASE("what a case leaves out is taken from the documented defaults", "[cases][reader]") {
  const auto file = read_case(case_folder / "minimal.toml");
  const auto& construct = file.construct;
  CHECK(construct.name == "minimal");
  CHECK_FALSE(construct.body_mass.has_value());
  CHECK(construct.metal_law == models::MetalLaw::elastic_plastic);
  CHECK(minimal_with("[bone]", "metals = \"elastic\"\n[bone]").metal_law == models::MetalLaw::elastic);
  CHECK(only(construct.plates).aspect == models::Aspect::cranial);
  CHECK(only(construct.plates).standoff.value() == Approx(1.0));
  CHECK(only(construct.plates).contour == models::Contour::follows_bone);
  CHECK(only(construct.plates).proximal_end.value() == Approx(73.0 - 43.0));
  CHECK(only(construct.plates).holes.front().position.value() == Approx((86.0 - 7 * 10.5) / 2));
  CHECK(construct.screws[0].cortices == 2);
  CHECK(construct.screws[0].material.name == only(construct.plates).material.name);
  CHECK(construct.screws[0].tilt_along.value() == 0.0);
  CHECK(construct.mesh.refinement == 1.0);
  CHECK(construct.mesh.rim_elements == models::MeshDensity{}.rim_elements);
  REQUIRE(construct.loads.size() == 3);
  CHECK(construct.loads[0].axial_compression.value() == Approx(100.0));
  CHECK(construct.loads[1].bending_y.value() == Approx(1000.0));
  CHECK(construct.loads[2].torsion.value() == Approx(1000.0));
  REQUIRE(file.assumptions.size() == 1);
  CHECK(file.assumptions[0].find("names no load") != std::string::npos);
}

TEST_CASE("how bone holds screws is said by a word or a number, for all or for one", "[cases][reader]") {
  const auto text = read_file(case_folder / "minimal.toml");
  const auto with = [&](const std::string& tables, const std::string& of_one) {
    return read_case_text("minimal.toml", replaced(text, "[[screw]]", tables + "\n[[screw]]\n" + of_one))
        .construct;
  };
  const auto silent = read_case_text("minimal.toml", text).construct;
  CHECK(silent.screw_interface == models::bonded_interface);
  CHECK_FALSE(silent.screws[0].interface);
  CHECK(with("[screws]\ninterface = \"mean\"", "").screw_interface == models::mean_interface);
  CHECK(with("[screws]\ninterface = \"soft\"", "").screw_interface == models::soft_interface);
  CHECK(with("[screws]\ninterface = \"bonded\"", "").screw_interface == 1.0);
  CHECK(with("[screws]\ninterface = 1", "").screw_interface == 1.0);
  const auto softens = with(
      "[[screws.interface_course]]\nweek = 4\ninterface = \"mean\"\n"
      "[[screws.interface_course]]\nweek = 9.5\ninterface = 0.4",
      "");
  CHECK(softens.screw_interface == 1.0);
  CHECK(softens.interface_course ==
        std::vector<models::InterfaceStage>{{4.0, models::mean_interface}, {9.5, 0.4}});
  CHECK(silent.interface_course.empty());
  const auto both = with("[screws]\ninterface = 0.7\nroot_radius = \"0.15 mm\"", "interface = 0.3\n");
  CHECK(both.screw_interface == 0.7);
  CHECK(both.screws[0].interface == 0.3);
  CHECK(both.screws[0].size.root_radius->value() == Approx(0.15));
}

TEST_CASE("the same case in other units is the same construct", "[cases][reader][units]") {
  const auto in_mm = read_case(case_folder / "minimal.toml").construct;
  auto text = read_file(case_folder / "minimal.toml");
  text = replaced(text, "\"150 mm\"", "\"15 cm\"");
  text = replaced(text, "\"13 mm\"", "\"0.013 m\"");
  text = replaced(text, "\"2.2 mm\"", "\"2200 um\"");
  text = replaced(text, "\"10.5 mm\"", "\"1.05 cm\"");
  text = replaced(text, "\"73 mm\"", "\"0.073 m\"");
  const auto in_others = read_case_text("minimal.toml", text).construct;
  CHECK(in_others.bone.length.value() == Approx(in_mm.bone.length.value()).epsilon(1e-14));
  CHECK(in_others.bone.stations[0].width_craniocaudal.value() ==
        Approx(in_mm.bone.stations[0].width_craniocaudal.value()).epsilon(1e-14));
  CHECK(in_others.bone.stations[0].cortex.value() == Approx(in_mm.bone.stations[0].cortex.value()).epsilon(1e-14));
  CHECK(only(in_others.plates).proximal_end.value() ==
        Approx(only(in_mm.plates).proximal_end.value()).epsilon(1e-14));
  for (std::size_t i = 0; i < only(in_mm.plates).holes.size(); ++i)
    CHECK(only(in_others.plates).holes[i].position.value() ==
          Approx(only(in_mm.plates).holes[i].position.value()).epsilon(1e-14));
}

TEST_CASE("the middle spacing widens the row between its halves only", "[cases][reader]") {
  const auto holes = only(minimal_with("holes = 8", "holes = 8\nmiddle_spacing = \"13 mm\"").plates).holes;
  REQUIRE(holes.size() == 8);
  for (std::size_t i = 1; i < 8; ++i)
    CHECK((holes[i].position - holes[i - 1].position).value() == Approx(i == 4 ? 13.0 : 10.5));
  CHECK(holes.front().position.value() == Approx(86.0 - holes.back().position.value()));
}

TEST_CASE("a screw takes from [screws] what it does not say itself", "[cases][reader]") {
  const auto screws =
      minimal_with("[[screw]]\nholes = [1, 3, 6, 8]\nsize = \"locking 3.5\"",
                   "[screws]\nsize = \"locking 2.4\"\ncortices = 1\n\n[[screw]]\nholes = [1, 3]\n\n"
                   "[[screw]]\nhole = 6\ncortices = 2\nlabel = \"inner\"\n\n[[screw]]\nhole = 8\n"
                   "thread_diameter = \"3.0 mm\"\ncore_diameter = \"2.1 mm\"\npitch = \"0.9 mm\"")
          .screws;
  REQUIRE(screws.size() == 4);
  CHECK(screws[1].size.designation == "locking 2.4");
  CHECK(screws[1].cortices == 1);
  CHECK(screws[1].label == "S3");
  CHECK(screws[2].cortices == 2);
  CHECK(screws[2].label == "inner");
  CHECK(screws[3].size.core_diameter.value() == Approx(2.1));
}

TEST_CASE("candidates are read as screws are, in their order, and are no part of the construct",
          "[cases][reader]") {
  const CaseFile file =
      read_case_text("minimal.toml", read_file(case_folder / "minimal.toml") +
                                         "\n[[candidate]]\nholes = [2, 1]\nsize = \"locking 3.5\"\n"
                                         "[[candidate]]\nhole = 3\nsize = \"locking 3.5\"\ncortices = 1\n");
  REQUIRE(file.candidates.size() == 3);
  CHECK(file.candidates[0].hole == 2);
  CHECK(file.candidates[1].hole == 1);
  CHECK(file.candidates[2].cortices == 1);
  CHECK(file.construct.screws.size() == 4);
  // The construct's own screws that are no candidates come last; one that is keeps its place in the list.
  const auto ready = file.screws_to_make_ready();
  REQUIRE(ready.size() == 6);
  CHECK(ready[0].hole == 2);
  CHECK(ready[1] == file.construct.screws[0]);
  CHECK(ready[3] == file.construct.screws[1]);
}

TEST_CASE("a load's factor multiplies all that acts and nothing that holds", "[cases][reader]") {
  const std::string load =
      "\n[[load]]\naxial = \"100 N\"\nbending_y = \"1 N m\"\nball_distance = \"5 mm\"\n[[load.force]]\n"
      "position = \"40 mm\"\naround = \"180 deg\"\nforce = [\"1 N\", \"-2 N\", \"3 N\"]\n";
  const auto read = [&](const std::string& with) {
    return read_case_text("minimal.toml", read_file(case_folder / "minimal.toml") + replaced(load, "axial", with))
        .construct.loads.at(0);
  };
  const auto once = read("axial"), twice = read("factor = 2\naxial");
  CHECK(twice.axial_compression == 2.0 * once.axial_compression);
  CHECK(twice.bending_y == 2.0 * once.bending_y);
  CHECK(twice.forces[0].force.y == 2.0 * once.forces[0].force.y);
  CHECK(twice.ball_distance == once.ball_distance);
  CHECK(read("factor = 1\naxial") == once);
}

TEST_CASE("anterior and posterior are the human words for cranial and caudal", "[cases][reader]") {
  CHECK(only(minimal_with("holes = 8", "aspect = \"anterior\"\nholes = 8").plates).aspect ==
        models::Aspect::cranial);
  CHECK(only(minimal_with("holes = 8", "aspect = \"posterior\"\nholes = 8").plates).aspect ==
        models::Aspect::caudal);
}

TEST_CASE("a part of the construct is found where the file writes it", "[cases][reader]") {
  CasePlaces places;
  places.add("plate", {4, 1});
  places.add("plate.thickness", {7, 13});
  places.add("screw[0]", {20, 1});
  places.add("screw[0].holes", {21, 9});
  places.add("screw[1]", {30, 1});
  places.add("screw[1].hole", {31, 8});
  places.alias("plate.section[0]", "plate");
  places.alias("screw[1]", "screw[0]");
  places.add("screw[0].holes[1]", {21, 13});
  places.add("screw[0].size", {22, 8});
  places.stand_in("screw[1]", "screw[0].holes[1]");
  places.alias("screw[2]", "screw[1]");
  CHECK(places.find("plate.section[0].thickness").place == Place{7, 13});
  CHECK(places.find("plate.section[0].thickness").key == "plate.thickness");
  CHECK(places.find("plate.standoff").key == "plate");  // not written: the enclosing table
  CHECK(places.find("screw[1]").place == Place{21, 13});
  CHECK(places.find("screw[1].hole").place == Place{21, 13});
  CHECK(places.find("screw[1].size").place == Place{22, 8});
  CHECK(places.find("screw[2].hole").place == Place{31, 8});  // the construct's third is the file's second
  CHECK(places.find("screw[2].size").place == Place{30, 1});
}

TEST_CASE("the help lists every key with its meaning, unit and default", "[cases][reader]") {
  const std::string help = describe_keys(case_keys(), "case");
  std::set<std::pair<std::string_view, std::string_view>> seen;
  for (const auto& key : case_keys().keys()) {
    INFO(key.table << "." << key.name);
    CHECK(seen.emplace(key.table, key.name).second);
    CHECK_FALSE(key.meaning.empty());
    if (key.kind == Kind::choice) CHECK_FALSE(key.choices.empty());
    if (!key.choices.empty()) CHECK((key.kind == Kind::choice || key.kind == Kind::texts));
    CHECK((key.need == Need::literal || key.need == Need::derived) == !key.fallback.empty());
    CHECK(help.find(key.name) != std::string::npos);
    CHECK(help.find(key.meaning) != std::string::npos);
  }
}
