#include "cases/reader/study_keys.h"
#include "cases/study/study_file.h"
#include "cases/toml/describe_keys.h"
#include "tests/cases/as_a_user/run_program.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <set>

using namespace gapstrain;
using namespace gapstrain::cases;
using gapstrain::tests::ScratchFolder;
using gapstrain::tests::write_file;

namespace {

const std::string comminuted = std::string(GAPSTRAIN_EXAMPLES) + "/comminuted_radius.toml";
const std::string minimal = std::string(GAPSTRAIN_EXAMPLES) + "/minimal.toml";

std::vector<StudyFinding> findings_of(const models::Construct& construct) {
  std::vector<StudyFinding> all{{"gap_strain", ""}, {"peak_stress", "MPa"}, {"axial_stiffness", "N/mm"}};
  for (const auto& load : construct.loads) all.push_back({"motion " + load.name, "mm"});
  return all;
}

StudyFile study(const std::string& body, const std::string& case_file = comminuted) {
  const ScratchFolder scratch;
  const auto path = scratch.path() / "standoffs.toml";
  write_file(path, "case = \"" + case_file + "\"\n" + body);
  return read_study(path, findings_of);
}

std::string vary(const std::string& key, const std::string& rest) {
  return "[[vary]]\nkey = \"" + key + "\"\n" + rest + "\n";
}

std::vector<std::string> texts(const StudyFile& file, std::size_t variable) {
  std::vector<std::string> all;
  for (std::size_t row = 0; row < file.rows(); ++row) all.push_back(file.settings(row).at(variable).text);
  return all;
}

std::vector<double> numbers(const StudyFile& file, std::size_t variable) {
  std::vector<double> all;
  for (std::size_t row = 0; row < file.rows(); ++row)
    all.push_back(file.settings(row).at(variable).number.value());
  return all;
}

std::vector<std::string> words(std::initializer_list<std::string> list) { return list; }

}  // namespace

TEST_CASE("a grid runs through all combinations, the first variable slowest", "[cases][study]") {
  const auto file = study(vary("plate.standoff", "values = [\"0.5 mm\", \"1 mm\"]") +
                          vary("load[0].axial", "values = [\"100 N\", \"0.2 kN\", \"300 N\"]"));
  CHECK(file.rows() == 6);
  CHECK(texts(file, 0) == words({"0.5", "0.5", "0.5", "1", "1", "1"}));
  CHECK(texts(file, 1) == words({"100", "200", "300", "100", "200", "300"}));
  CHECK(file.name == "standoffs");
  CHECK(file.variables[0].name == "plate.standoff");
  CHECK(file.variables[0].unit == "mm");
  CHECK(file.variables[1].unit == "N");
  CHECK(std::get<std::string>(file.settings(1)[1].value.content) == "0.2 kN");  // as it is written
}

TEST_CASE("a row's case is the case with the row's values in their places", "[cases][study]") {
  const auto file = study(vary("plate.standoff", "values = [\"0.5 mm\", \"2 mm\"]") +
                          vary("bone.station[2].cortex", "values = [\"2.0 mm\", \"2.2 mm\"]") +
                          vary("screw[1].holes", "values = [[7, 9, 10], [8, 10]]"));
  const auto row = file.at(7);
  CHECK(only(row.construct.plates).standoff.value() == Approx(2.0));
  CHECK(row.construct.bone.stations[2].cortex.value() == Approx(2.2));
  CHECK(row.construct.screws.size() == 5);
  CHECK(row.construct.screws[3].hole == 8);
  CHECK(texts(file, 2).at(1) == "8 10");
  CHECK_FALSE(file.settings(7)[2].number.has_value());

  const auto first = file.at(0);
  CHECK(only(first.construct.plates).standoff.value() == Approx(0.5));
  CHECK(first.construct.screws.size() == 6);
  CHECK(only(first.construct.fractures).gap.value() == only(file.base.construct.fractures).gap.value());
}

TEST_CASE("a key that the case leaves out can be varied, with its table", "[cases][study]") {
  const auto file = study(vary("mesh.refinement", "values = [0.5, 2]") +
                              vary("screw[0].tilt_along", "values = [\"0.1 rad\", \"5 deg\"]") +
                              vary("body_mass", "values = [\"12000 g\"]"),
                          minimal);
  CHECK(file.at(3).construct.mesh.refinement == 2.0);
  CHECK(file.at(3).construct.screws[0].tilt_along.value() == Approx(5.0 * std::acos(-1.0) / 180.0));
  CHECK(file.variables[1].unit == "deg");  // of the default, "0 deg"
  CHECK(file.variables[2].unit == "g");    // the case says nothing, so as the study writes it
  CHECK(file.at(0).construct.body_mass.value().value() == Approx(12.0));
  CHECK(file.base.construct.mesh.refinement == 1.0);
}

TEST_CASE("numbers of a variable are in the unit in which the case writes the key", "[cases][study]") {
  const auto file = study(vary("plate.standoff", "values = [\"0.5 mm\", \"0.1 cm\", \"2500 um\"]"));
  CHECK(numbers(file, 0)[0] == 0.5);
  CHECK(numbers(file, 0)[1] == Approx(1.0));
  CHECK(numbers(file, 0)[2] == Approx(2.5));
  const auto moments = study(vary("load[1].bending_y", "from = \"500 N mm\"\nto = \"1 N m\"\nsteps = 2"));
  CHECK(moments.variables[0].unit == "N m");
  CHECK(numbers(moments, 0)[0] == Approx(0.5));
  CHECK(moments.at(1).construct.loads[1].bending_y.value() == Approx(1000.0));
}

TEST_CASE("several keys are set together to one value", "[cases][study]") {
  const auto file = study(
      "[[vary]]\nkeys = [\"bone.station[1].cortex\", \"bone.station[2].cortex\"]\nname = \"cortex\"\n"
      "values = [\"1.5 mm\", \"2.5 mm\"]\n");
  CHECK(file.variables[0].name == "cortex");
  CHECK(file.rows() == 2);
  CHECK(file.at(1).construct.bone.stations[1].cortex.value() == Approx(2.5));
  CHECK(file.at(1).construct.bone.stations[2].cortex.value() == Approx(2.5));
  CHECK(file.at(1).construct.bone.stations[3].cortex.value() == Approx(2.0));
}

TEST_CASE("texts are varied as well as quantities", "[cases][study]") {
  const auto file = study(vary("plate.contour", "values = [\"straight\", \"follows-bone\"]"));
  CHECK(texts(file, 0) == words({"straight", "follows-bone"}));
  CHECK(only(file.at(0).construct.plates).contour == models::Contour::straight);
}

TEST_CASE("a range has both its ends and even or logarithmic steps between", "[cases][study]") {
  const auto even = study(vary("fracture.gap", "from = \"2 mm\"\nto = \"20 mm\"\nsteps = 10"));
  REQUIRE(even.rows() == 10);
  for (std::size_t i = 0; i < 10; ++i) CHECK(numbers(even, 0)[i] == Approx(2.0 + 2.0 * static_cast<double>(i)));
  CHECK(numbers(even, 0).back() == 20.0);

  const auto logarithmic =
      study(vary("fracture.gap", "from = \"8 mm\"\nto = \"1 mm\"\nsteps = 4\nspacing = \"logarithmic\""));
  REQUIRE(logarithmic.rows() == 4);
  for (std::size_t i = 0; i < 4; ++i)
    CHECK(numbers(logarithmic, 0)[i] == Approx(std::exp2(3.0 - static_cast<double>(i))));
  CHECK(numbers(logarithmic, 0).back() == 1.0);
  CHECK(only(logarithmic.at(1).construct.fractures).gap.value() == Approx(4.0));

  const auto counts = study(vary("screw[0].cortices", "from = 1\nto = 2\nsteps = 2"));
  CHECK(texts(counts, 0) == words({"1", "2"}));
  CHECK(counts.at(0).construct.screws[0].cortices == 1);
}

TEST_CASE("samples follow their distributions, and lists in equal shares", "[cases][study]") {
  const std::string body =
      vary("plate.standoff", "distribution = \"uniform\"\nlow = \"1 mm\"\nhigh = \"0.3 cm\"") +
      vary("fracture.gap", "distribution = \"normal\"\nmean = \"10 mm\"\nsd = \"2 mm\"") +
      vary("load[0].axial", "distribution = \"lognormal\"\nmean = \"100 N\"\nsd = \"30 N\"\nmost = \"200 N\"") +
      vary("load[2].torsion",
           "distribution = \"triangular\"\nlow = \"0.2 N m\"\nmode = \"0.5 N m\"\nhigh = \"1.1 N m\"") +
      vary("plate.contour", "values = [\"straight\", \"follows-bone\"]");
  for (const std::string kind : {"latin-hypercube", "sobol", "monte-carlo", "saltelli"}) {
    INFO(kind);
    const auto file = study("[design]\nkind = \"" + kind + "\"\npoints = 1024\nseed = 5\n" + body);
    REQUIRE(file.rows() == (kind == "saltelli" ? 1024 * 7 : 1024));
    const double count = static_cast<double>(file.rows());
    const auto mean = [&](std::size_t variable) {
      double sum = 0.0;
      for (const double number : numbers(file, variable)) sum += number / count;
      return sum;
    };
    // Five standard errors of independent points.
    CHECK(mean(0) == Approx(2.0).margin(5.0 * 0.577 / 32.0));
    CHECK(mean(1) == Approx(10.0).margin(5.0 * 2.0 / 32.0));
    CHECK(mean(3) == Approx(0.6).margin(5.0 * 0.187 / 32.0));
    for (const double number : numbers(file, 0)) CHECK((number > 1.0 && number < 3.0));
    for (const double number : numbers(file, 2)) CHECK((number > 0.0 && number <= 200.0));
    const auto contours = texts(file, 4);
    const auto straight = static_cast<double>(std::count(contours.begin(), contours.end(), "straight"));
    CHECK(straight / count == Approx(0.5).margin(5.0 * 0.5 / 32.0));
  }
}

TEST_CASE("a sampled row can be asked for alone, and another seed gives other rows", "[cases][study]") {
  const std::string body = vary("fracture.gap", "distribution = \"uniform\"\nlow = \"2 mm\"\nhigh = \"20 mm\"") +
                           vary("screw[0].cortices", "distribution = \"uniform\"\nlow = 1\nhigh = 2");
  const auto file = study("[design]\nkind = \"sobol\"\npoints = 64\n" + body);
  const auto again = study("[design]\nkind = \"sobol\"\npoints = 64\nseed = 1\n" + body);
  const auto other = study("[design]\nkind = \"sobol\"\npoints = 64\nseed = 2\n" + body);
  const auto last = file.settings(63);
  const auto in_order = numbers(file, 0);
  CHECK(last[0].number.value() == in_order[63]);
  CHECK(numbers(again, 0) == in_order);
  CHECK(numbers(other, 0) != in_order);
  const auto cortices = texts(file, 1);
  CHECK(std::set<std::string>(cortices.begin(), cortices.end()) == std::set<std::string>{"1", "2"});
  CHECK(only(file.at(63).construct.fractures).gap.value() == Approx(in_order[63]).epsilon(1e-15));
}

TEST_CASE("Saltelli rows of one base point differ in one variable from the first", "[cases][study]") {
  const auto file = study("[design]\nkind = \"saltelli\"\npoints = 8\n" +
                          vary("fracture.gap", "distribution = \"uniform\"\nlow = \"2 mm\"\nhigh = \"20 mm\"") +
                          vary("plate.standoff", "distribution = \"uniform\"\nlow = \"1 mm\"\nhigh = \"3 mm\""));
  CHECK(file.rows() == 8 * 4);
  const auto a = file.settings(4), b = file.settings(5), first = file.settings(6), second = file.settings(7);
  CHECK(first[0].text == b[0].text);
  CHECK(first[1].text == a[1].text);
  CHECK(second[0].text == a[0].text);
  CHECK(second[1].text == b[1].text);
}

TEST_CASE("a row that makes a wrong construct says why, and the other rows go on", "[cases][study]") {
  const auto file = study(vary("screw[0].holes", "values = [[1, 2, 4], [1, 2, 44]]") +
                          vary("plate.hole_diameter", "values = [\"3.6 mm\", \"25 mm\"]"));
  CHECK_NOTHROW(file.at(0));
  CHECK_THROWS_WITH(file.at(1), Catch::Contains("plate.hole_diameter"));
  CHECK_THROWS_AS(file.at(2), CaseError);
  try {
    file.at(2);
  } catch (const CaseError& error) {
    REQUIRE(error.problems.size() == 1);
    CHECK(error.problems[0].key == "screw[0].holes[2]");
    CHECK(error.problems[0].place.line == 68);
  }
}

TEST_CASE("limits are in the unit of their finding", "[cases][study]") {
  const auto file = study(vary("plate.standoff", "values = [\"1 mm\"]") +
                          "[[limit]]\nfinding = \"gap_strain\"\nleast = 0.02\nmost = 0.1\n"
                          "[[limit]]\nfinding = \"peak_stress\"\nmost = \"0.3 GPa\"\n"
                          "[[limit]]\nfinding = \"axial_stiffness\"\nleast = \"500 N/mm\"\n"
                          "[[limit]]\nfinding = \"motion axial 130 N\"\nmost = \"200 um\"\n");
  REQUIRE(file.limits.size() == 4);
  CHECK(file.limits[0].least == 0.02);
  CHECK(file.limits[0].most == 0.1);
  CHECK_FALSE(file.limits[1].least.has_value());
  CHECK(file.limits[1].most.value() == Approx(300.0));
  CHECK(file.limits[1].unit == "MPa");
  CHECK(file.limits[2].least == 500.0);
  CHECK(file.limits[3].most.value() == Approx(0.2));
}

TEST_CASE("charts name what is varied and what is found", "[cases][study]") {
  const auto file = study("name = \"Standoff\"\n" + vary("plate.standoff", "values = [\"1 mm\"]") +
                          vary("fracture.gap", "name = \"gap\"\nvalues = [\"9 mm\"]") +
                          "[[chart]]\nx = \"plate.standoff\"\ny = [\"peak_stress\", \"gap_strain\"]\nseries = "
                          "\"gap\"\n[[chart]]\nx = \"gap_strain\"\ny = \"peak_stress\"\n");
  CHECK(file.name == "Standoff");
  REQUIRE(file.charts.size() == 2);
  CHECK(file.charts[0].y == words({"peak_stress", "gap_strain"}));
  CHECK(file.charts[0].series == "gap");
  CHECK(file.charts[1].x == "gap_strain");
  CHECK_FALSE(file.charts[1].series.has_value());
}

TEST_CASE("the case is looked for from the study's folder", "[cases][study]") {
  const ScratchFolder scratch;
  std::filesystem::create_directory(scratch.path() / "studies");
  std::filesystem::copy_file(minimal, scratch.path() / "small.toml");
  const auto path = scratch.path() / "studies" / "s.toml";
  write_file(path, "case = \"../small.toml\"\n" + vary("plate.standoff", "values = [\"1 mm\"]"));
  const auto file = read_study(path, findings_of);
  CHECK(file.base.file == (scratch.path() / "small.toml").string());
  CHECK(file.rows() == 1);
}

TEST_CASE("the fingerprint changes with the study and with the case", "[cases][study]") {
  const ScratchFolder scratch;
  const auto path = scratch.path() / "s.toml", case_path = scratch.path() / "small.toml";
  std::filesystem::copy_file(minimal, case_path);
  const std::string text = "case = \"small.toml\"\n" + vary("plate.standoff", "values = [\"1 mm\"]");
  const auto fingerprint = [&](const std::string& study_text, const std::string& behind_case) {
    write_file(path, study_text);
    write_file(case_path, tests::read_file(minimal) + behind_case);
    return read_study(path, findings_of).fingerprint();
  };
  const std::string first = fingerprint(text, "");
  CHECK(first.size() == 16);
  CHECK(fingerprint(text, "") == first);
  CHECK(fingerprint(text + "\n", "") == first);  // how it is laid out makes no other rows
  CHECK(fingerprint(text, "\n") != first);
  const std::string other = "case = \"small.toml\"\n" + vary("plate.standoff", "values = [\"2 mm\"]");
  CHECK(fingerprint(other, "") != first);
}

TEST_CASE("the help lists every key of a study with its meaning", "[cases][study]") {
  const std::string help = describe_keys(study_keys(), "study");
  for (const auto& key : study_keys().keys()) {
    INFO(key.table << "." << key.name);
    CHECK_FALSE(key.meaning.empty());
    CHECK((key.kind == Kind::choice) == !key.choices.empty());
    CHECK((key.need == Need::literal || key.need == Need::derived) == !key.fallback.empty());
    CHECK(help.find(key.name) != std::string::npos);
    CHECK(help.find(key.meaning) != std::string::npos);
  }
}
