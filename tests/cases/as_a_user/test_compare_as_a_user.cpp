// gapstrain compare, as a person runs it. A coarse mesh, since figures are proved elsewhere.
#include "cases/cautions.h"
#include "cases/outputs/sentences/summary.h"
#include "cases/text/columns.h"
#include "tests/cases/as_a_user/expected_messages.h"
#include "tests/cases/as_a_user/run_program.h"
#include "tests/cases/as_a_user/texts.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <limits>
#include <numbers>
#include <sstream>

namespace fs = std::filesystem;
using namespace gapstrain::tests;
using Catch::Matchers::Contains;
using gapstrain::cases::columns;
using gapstrain::cases::screen_columns;

namespace {

const std::string healing = "\n[healing]\nweeks_from = 8\nweeks_to = 12\n";

// A plate over a gap, four locking screws.
std::string spanned(const std::string& name, const std::string& more = healing) {
  return "name = \"" + name + "\"\n" + R"(body_mass = "20 kg"

[bone]
length = "150 mm"
width = "13 mm"
cortex = "2.2 mm"
material = "canine-femur"

[fracture]
position = "73 mm"
gap = "2.5 mm"

[plate]
length = "86 mm"
width = "8.5 mm"
thickness = "2.6 mm"
holes = 8
pitch = "10.5 mm"
hole_diameter = "3.1 mm"
material = "stainless-steel-cold-worked"
standoff = "1 mm"

[screws]
kind = "locking"
size = "locking 2.4"

[[screw]]
holes = [1, 3, 6, 8]

[[load]]
name = "walk"
axial = "90 N"
cycles_per_day = 1500

[mesh]
refinement = 0.5
rim_elements = 24
)" + more;
}

// The same patient, the inner screws next to the gap.
const std::string short_span = "base = \"wide.toml\"\nname = \"Short\"\n[[screw]]\nholes = [1, 4, 5, 8]\n";

std::vector<std::string> files_of(const fs::path& folder) {
  std::vector<std::string> files;
  for (const auto& entry : fs::directory_iterator(folder)) files.push_back(entry.path().filename());
  std::sort(files.begin(), files.end());
  return files;
}

std::string one_line(const std::string& text) {
  std::string joined;
  for (const auto& line : lines_of(text)) {
    const auto start = line.find_first_not_of(' ');
    joined += " " + (start == std::string::npos ? "" : line.substr(start));
  }
  return joined;
}

// The cells of a table whose first column may be in quotation marks.
std::vector<std::vector<std::string>> rows_of(const fs::path& csv) {
  std::vector<std::vector<std::string>> rows;
  for (auto line : lines_of(read_file(csv))) {
    REQUIRE(line.ends_with('\r'));
    line.pop_back();
    rows.emplace_back();
    if (line.starts_with('"')) {
      const auto end = line.find('"', 1);
      rows.back().push_back(line.substr(1, end - 1));
      line = line.substr(end + 2);
    }
    std::istringstream stream(line + ",");
    for (std::string cell; std::getline(stream, cell, ',');) rows.back().push_back(cell);
  }
  return rows;
}

// Alike but for the last digits, which hang on the order of threads.
void check_same_numbers(const std::vector<std::vector<std::string>>& a,
                        const std::vector<std::vector<std::string>>& b) {
  REQUIRE(a.size() == b.size());
  for (std::size_t r = 0; r < a.size(); ++r) {
    REQUIRE(a[r].size() == b[r].size());
    for (std::size_t c = 0; c < a[r].size(); ++c) {
      INFO("row " << r << ", column " << c);
      if (r == 0 || c == 0 || a[0][c] == "result")
        CHECK(a[r][c] == b[r][c]);
      else
        CHECK(std::stod(a[r][c]) == Approx(std::stod(b[r][c])).epsilon(1e-6));
    }
  }
}

void check_same_margins(const nlohmann::json& a, const nlohmann::json& b) {
  REQUIRE(a.size() == b.size());
  CHECK(a.size() >= 6);
  for (std::size_t i = 0; i < a.size(); ++i) {
    INFO(a[i]["part"]);
    CHECK(a[i]["part"] == b[i]["part"]);
    CHECK(a[i]["load"] == b[i]["load"]);
    CHECK(a[i]["factor"].get<double>() == Approx(b[i]["factor"].get<double>()).epsilon(1e-6));
  }
}

// Two constructs compared and one of them analysed by itself, once for all tests.
struct Compared {
  ScratchFolder scratch;
  Run run;
  fs::path folder = scratch.path() / "comparison";

  Compared() {
    write_file(scratch.path() / "wide.toml", spanned("Wide"));
    write_file(scratch.path() / "short.toml", short_span);
    run = run_program({"compare", "wide.toml", "short.toml", "--no-pictures"}, scratch.path());
  }
  nlohmann::json json() const { return nlohmann::json::parse(read_file(folder / "findings.json")); }
  std::string text() const { return read_file(folder / "comparison.txt"); }
};

const Compared& compared() {
  static const Compared once;
  return once;
}

// Compares two cases in a folder of their own; nothing may be written.
Run refused(const std::string& first, const std::string& second) {
  const ScratchFolder scratch;
  write_file(scratch.path() / "first.toml", first);
  write_file(scratch.path() / "second.toml", second);
  Run run = run_program({"compare", "first.toml", "second.toml", "--no-pictures"}, scratch.path());
  INFO(run.err);
  CHECK(run.status == 2);
  CHECK(run.out.empty());
  CHECK(files_of(scratch.path()) == std::vector<std::string>{"first.toml", "second.toml"});
  return run;
}

}  // namespace

TEST_CASE("a comparison writes its files and lists them", "[cases][as-a-user]") {
  INFO(compared().run.out << compared().run.err);
  REQUIRE(compared().run.status == 0);
  CHECK(compared().run.err.empty());
  const std::vector<std::string> files{"case_A.toml",   "case_B.toml",   "comparison.csv", "comparison.txt",
                                       "findings.json", "margins_A.txt", "margins_B.txt",  "plan_A.txt",
                                       "plan_B.txt",    "race_A.csv",    "race_B.csv",     "review_A.txt",
                                       "review_B.txt"};
  CHECK(files_of(compared().folder) == files);
  CHECK(compared().json()["files"].get<std::vector<std::string>>() == files);
  CHECK(compared().run.out.starts_with(compared().text()));
  CHECK(compared().run.out.find("Files: ") != std::string::npos);
}

TEST_CASE("a comparison's text names its constructs, its cautions, and fits the screen", "[cases][as-a-user]") {
  const std::string text = compared().text();
  for (const auto& line : lines_of(text)) {
    INFO(line);
    CHECK(columns(line) <= screen_columns);
  }
  CHECK(text.starts_with("Prefer "));
  CHECK_THAT(text, Contains("\nA  Wide (wide.toml): ") && Contains("\nB  Short (short.toml): "));
  for (const auto caution : gapstrain::cases::cautions) CHECK(text.find(caution) != std::string::npos);
  const auto json = compared().json();
  CHECK(json["cautions"].size() == gapstrain::cases::cautions.size());
  const std::string words = one_line(text);
  const auto verdict = json["verdict"].get<std::vector<std::string>>();
  REQUIRE(verdict.size() >= 4);
  for (const auto& sentence : verdict) CHECK_THAT(words, Contains(sentence));
  // Which of both lasts longer is one sentence about the two.
  const auto race = std::find_if(verdict.begin(), verdict.end(), [](const std::string& sentence) {
    return sentence.find("\"Wide\"") != std::string::npos && sentence.find("\"Short\"") != std::string::npos;
  });
  CHECK(race != verdict.end());
}

TEST_CASE("table, JSON and text of a comparison hold the same figures in the same order", "[cases][as-a-user]") {
  const auto rows = rows_of(compared().folder / "comparison.csv");
  const auto figures = compared().json()["figures"];
  const auto lines = lines_of(compared().text());
  CHECK(rows[0] ==
        std::vector<std::string>{"figure", "unit", "A", "B", "ratio", "model_error", "told_apart", "best"});
  REQUIRE(rows.size() == figures.size() + 2);  // heading, and each construct's state
  CHECK(rows.back()[0] == "result");
  CHECK(rows.size() > 15);
  auto line = std::find_if(lines.begin(), lines.end(), [](const auto& l) { return l.starts_with("Figure"); });
  REQUIRE(line != lines.end());
  bool still_apart = true;
  double widest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < figures.size(); ++i) {
    const auto& row = rows[i + 1];
    const auto& figure = figures[i];
    INFO(row[0]);
    REQUIRE(row.size() == rows[0].size());
    CHECK(row[0] == figure["figure"]);
    CHECK(row[1] == figure["unit"]);
    for (std::size_t k = 0; k < 2; ++k)
      if (row[2 + k].empty())
        CHECK(figure["values"][k].is_null());
      else
        CHECK(std::stod(row[2 + k]) == Approx(figure["values"][k].get<double>()).epsilon(1e-8));
    CHECK(figure.contains("ratio") == !row[4].empty());
    if (!row[4].empty()) CHECK(std::stod(row[4]) == Approx(figure["ratio"].get<double>()).epsilon(1e-8));
    CHECK(row[6] == (figure["told_apart"].get<bool>() ? "yes" : "no"));
    CHECK(row[7] == (figure.contains("best") ? figure["best"].get<std::string>() : ""));
    ++line;
    if (line->starts_with("Not told apart")) ++line;
    CHECK(line->starts_with(row[0]));
    // Those that are told apart first, the widest difference first.
    if (still_apart && row[6] == "no") widest = std::numeric_limits<double>::infinity();
    CHECK((still_apart || row[6] == "no"));
    still_apart = row[6] == "yes";
    const double ratio = row[4].empty() ? 0.0 : std::stod(row[4]);
    CHECK(ratio <= widest);
    widest = ratio;
  }
}

TEST_CASE("a comparison gives the figures of each case by itself", "[cases][as-a-user]") {
  const auto& scratch = compared().scratch;
  const Run alone =
      run_program({"analyse", "wide.toml", "--no-pictures", "--quiet", "--out", "wide"}, scratch.path());
  REQUIRE(alone.status == 0);
  const fs::path folder = scratch.path() / "wide";
  const auto json = nlohmann::json::parse(read_file(folder / "findings.json"));
  const auto both = compared().json();
  const auto& wide = both["constructs"][0];
  CHECK(wide["letter"] == "A");
  CHECK(wide["name"] == "Wide");
  check_same_margins(wide["margins"], json["margins"]);
  CHECK(wide["review"] == json["review"]);
  CHECK(wide["race"]["verdict"] == json["race"]["verdict"]);
  CHECK(read_file(compared().folder / "plan_A.txt") == read_file(folder / "plan.txt"));
  CHECK(read_file(compared().folder / "case_A.toml") == read_file(folder / "case.toml"));
  check_same_numbers(rows_of(compared().folder / "race_A.csv"), rows_of(folder / "race.csv"));

  const auto value = [&](const std::string& name) {
    for (const auto& figure : both["figures"])
      if (figure["figure"] == name) return figure["values"][0].get<double>();
    FAIL("no figure " << name);
    return 0.0;
  };
  const auto& load = json["loads"][0];
  CHECK(value("plate stress, largest") == Approx(load["plate"]["peak_von_mises_mpa"].get<double>()).epsilon(1e-6));
  CHECK(value("gap motion, largest") == Approx(load["gap"]["largest_motion_mm"].get<double>()).epsilon(1e-6));
  CHECK(value("stiffness, axial") == Approx(json["stiffness"]["axial_n_per_mm"].get<double>()).epsilon(1e-6));
  CHECK(value("working length") == Approx(json["construct"]["working_length_mm"].get<double>()));
  CHECK(value("stiffness, torsion") ==
        Approx(json["stiffness"]["torsion_n_mm_per_rad"].get<double>() * std::numbers::pi / 180.0 / 1000.0)
            .epsilon(1e-6));
}

TEST_CASE("a case of changes is kept whole, and runs", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "case.toml", read_file(compared().folder / "case_B.toml"));
  const Run run =
      run_program({"analyse", "case.toml", "--no-pictures", "--quiet", "--out", "out"}, scratch.path());
  INFO(run.err);
  REQUIRE(run.status == 0);
  const auto json = nlohmann::json::parse(read_file(scratch.path() / "out" / "findings.json"));
  CHECK(json["construct"]["name"] == "Short");
  CHECK(json["construct"]["working_length_mm"].get<double>() == Approx(10.5));
  check_same_margins(json["margins"], compared().json()["constructs"][1]["margins"]);
}

TEST_CASE("a construct is not told apart from its own copy", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "wide.toml", spanned("Wide"));
  write_file(scratch.path() / "copy.toml", "base = \"wide.toml\"\nname = \"Copy\"\n");
  const Run run = run_program({"compare", "wide.toml", "copy.toml", "--no-pictures", "--quiet", "--out", "out"},
                              scratch.path());
  CHECK(run.status == 0);
  CHECK(run.out.empty());
  CHECK(run.err.empty());
  const std::string text = one_line(read_file(scratch.path() / "out" / "comparison.txt"));
  CHECK_THAT(text, Contains("\"Wide\"") && Contains("\"Copy\"") && Contains("is within the uncertainty") &&
                       Contains("within the model's own error"));
  const auto rows = rows_of(scratch.path() / "out" / "comparison.csv");
  for (std::size_t r = 1; r + 1 < rows.size(); ++r) {
    INFO(rows[r][0]);
    CHECK(rows[r][6] == "no");
    CHECK(rows[r][7].empty());
  }
  const auto json = nlohmann::json::parse(read_file(scratch.path() / "out" / "findings.json"));
  REQUIRE(json["pairs"].size() == 1);
  REQUIRE(json["pairs"][0]["races"].size() == 3);
  for (const auto& race : json["pairs"][0]["races"]) {
    CHECK(race["first_outlasts"].get<double>() == Approx(0.5).margin(0.05));
    CHECK(race["ratio"]["low"].get<double>() < 1.0);
    CHECK(race["ratio"]["high"].get<double>() > 1.0);
  }
}

TEST_CASE("constructs for different patients are not compared, and what differs is named", "[cases][as-a-user]") {
  const std::string one = spanned("One"), other = spanned("Other");
  CHECK_THAT(
      refused(one, replaced(other, "20 kg", "21 kg")).err,
      Contains("second.toml") && Contains("another patient than that of first.toml, with another body mass."));
  CHECK_THAT(refused(one, replaced(other, "\"13 mm\"", "\"13.2 mm\"")).err, Contains(", with another bone."));
  CHECK_THAT(refused(one, replaced(other, "\"90 N\"", "\"91 N\"")).err, Contains(", with another set of loads."));
  CHECK_THAT(refused(one, replaced(other, "1500", "1400")).err, Contains(", with another set of loads."));
  CHECK_THAT(refused(one, replaced(replaced(other, "20 kg", "21 kg"), "\"90 N\"", "\"91 N\"")).err,
             Contains(", with another body mass, another set of loads."));
}

TEST_CASE("a comparison's other bad inputs are told, and nothing is written", "[cases][as-a-user]") {
  CHECK_THAT(refused(spanned("One"), replaced(spanned("Other"), "thickness", "thicknes")).err,
             Contains("second.toml:17:1: plate.thicknes: unknown key"));

  const ScratchFolder scratch;
  fs::create_directory(scratch.path() / "again");
  write_file(scratch.path() / "again" / "one.toml", spanned("One"));
  write_file(scratch.path() / "one.toml", spanned("One"));
  write_file(scratch.path() / "other.toml", spanned("Other"));
  const auto answer = [&](std::vector<std::string> cases, const std::vector<std::string>& options = {}) {
    cases.insert(cases.begin(), "compare");
    cases.insert(cases.end(), options.begin(), options.end());
    const auto before = files_of(scratch.path());
    const Run run = run_program(cases, scratch.path());
    CHECK(run.status == 2);
    CHECK(run.out.empty());
    CHECK(files_of(scratch.path()) == before);
    return run.err;
  };
  CHECK_THAT(answer({"one.toml"}), Contains("At least 2 required"));
  CHECK_THAT(answer({"one.toml", "one.toml", "one.toml", "one.toml", "one.toml"}), Contains("At Most 4 required"));
  CHECK_THAT(answer({"one.toml", "again/one.toml"}),
             Contains("again/one.toml") && Contains("which is also the name of one.toml"));
  CHECK_THAT(answer({"one.toml", "absent.toml"}), Contains("absent.toml:1:1: there is no such file"));
  fs::create_directory(scratch.path() / "thesis");
  write_file(scratch.path() / "thesis" / "chapter.txt", "years of work");
  CHECK_THAT(answer({"one.toml", "other.toml"}, {"--out", "thesis"}), Contains("was not written by gapstrain"));
  CHECK_THAT(answer({"one.toml", "other.toml"}, {"--out", "one.toml"}), Contains("is not a folder"));
  CHECK(files_of(scratch.path() / "thesis") == std::vector<std::string>{"chapter.txt"});
}

TEST_CASE("without healing a comparison says what to enter for the race", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "one.toml", spanned("One", ""));
  write_file(scratch.path() / "other.toml",
             "base = \"one.toml\"\nname = \"Other\"\n[plate]\nstandoff = \"2 mm\"\n");
  const std::vector<std::string> arguments{"compare", "one.toml", "other.toml", "--no-pictures", "--out", "out"};
  const Run run = run_program(arguments, scratch.path());
  CHECK(run.status == 0);
  const std::string text = one_line(run.out);
  for (const auto* name : {"One", "Other"})
    CHECK_THAT(text,
               Contains("\"" + std::string(name) + "\": no race against healing: ") && Contains("[healing]"));
  const auto json = nlohmann::json::parse(read_file(scratch.path() / "out" / "findings.json"));
  CHECK(json["pairs"][0]["races"].empty());
  CHECK_FALSE(json["constructs"][0].contains("race"));
  CHECK(json["constructs"][0]["no_race"]["reason"] == "no_healing");
  CHECK_THAT(json["constructs"][0]["no_race"]["sentence"].get<std::string>(), Contains("weeks_from"));
  CHECK_FALSE(fs::exists(scratch.path() / "out" / "race_A.csv"));

  // The same command again takes the place of what it wrote.
  write_file(scratch.path() / "one.toml", spanned("One", healing));
  CHECK(run_program(arguments, scratch.path()).status == 0);
  CHECK(fs::exists(scratch.path() / "out" / "race_A.csv"));
}
