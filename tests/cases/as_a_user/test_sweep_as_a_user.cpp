// gapstrain sweep from the outside: a study and its case in; rows and summary out.
#include "cases/figures/figure_words.h"
#include "cases/files/read_table.h"
#include "cases/study/study_file.h"
#include "tests/cases/as_a_user/study_runs.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <set>

namespace fs = std::filesystem;
using namespace gapstrain;
using namespace gapstrain::tests;

namespace {

std::string vary(const std::string& key, const std::string& rest) {
  return fmt::format("\n[[vary]]\nkey = \"{}\"\n{}\n", key, rest);
}

// A study of the case tube.toml, run in a folder of its own.
struct Swept {
  ScratchFolder scratch;
  Run run;
  fs::path out = scratch.path() / "study-sweep", rows = out / "rows.csv";
  Swept(const std::string& tube, const std::string& study) {
    write_file(scratch.path() / "tube.toml", tube);
    write_file(scratch.path() / "study.toml", "case = \"tube.toml\"\n" + study);
    run = run_program({"sweep", "study.toml", "--no-pictures", "--threads", "1"}, scratch.path());
  }
  std::string summary() const { return read_file(out / "summary.txt"); }
};

// What no body depends on, so that a row costs little.
const std::string sampled_load =
    vary("load[0].axial", "name = \"push\"\ndistribution = \"uniform\"\nlow = \"50 N\"\nhigh = \"130 N\"");
const std::string sampled_bone =
    vary("bone.cortical_bone.youngs_modulus",
         "name = \"bone\"\ndistribution = \"normal\"\nmean = \"17 GPa\"\nsd = \"2 GPa\"");

std::string design(const std::string& kind, int points, int seed) {
  return fmt::format("\n[design]\nkind = \"{}\"\npoints = {}\nseed = {}\n", kind, points, seed);
}

}  // namespace

TEST_CASE("a grid's rows are what analyse finds of the case with their values", "[cases][as-a-user]") {
  // The base case has all holes filled. So the sweep makes them all ready, as layouts make the analysis do: the
  // meshes are then the same, and so are the figures. Else they differ by what the mesh is worth.
  const std::string tube = coarse_tube(6, "[1, 2, 3, 4, 5, 6]");
  const Swept swept(tube, vary("plate.standoff", "values = [\"1 mm\", \"2 mm\"]") +
                              vary("bone.cortical_bone.youngs_modulus", "values = [\"17 GPa\", \"10 GPa\"]") +
                              vary("fracture.tissue", "values = [\"granulation-tissue\", \"soft-callus\"]") +
                              vary("load[0].axial", "values = [\"100 N\", \"-60 N\"]") +
                              vary("screw[0].holes", "values = [[1, 2, 5, 6], [1, 3, 4, 6]]"));
  INFO(swept.run.err << swept.run.out);
  REQUIRE(swept.run.status == 0);
  CHECK(swept.run.err.empty());
  REQUIRE(data_rows(swept.rows) == 32);
  for (const auto& state : cases::read_texts(swept.rows, "state")) CHECK(state == "ok");
  CHECK(swept.run.out == swept.summary() + "\nWritten: " + swept.out.string() + "\n");
  CHECK(read_file(swept.out / "case.toml") == tube);
  CHECK(read_file(swept.out / "study.toml") ==
        "name = 'study'\n" +
            replaced(read_file(swept.scratch.path() / "study.toml"), "\"tube.toml\"", "'case.toml'"));

  struct Values {
    std::size_t row;
    std::string standoff, bone, tissue, axial, holes;
  };
  for (const auto& values : {Values{0, "1", "17", "granulation-tissue", "100", "[1, 2, 5, 6]"},
                             Values{15, "1", "10", "soft-callus", "-60", "[1, 3, 4, 6]"},
                             Values{25, "2", "10", "granulation-tissue", "100", "[1, 3, 4, 6]"}}) {
    std::string text = replaced(tube, "[1, 2, 3, 4, 5, 6]", values.holes);
    text = replaced(text, "standoff = \"1 mm\"", "standoff = \"" + values.standoff + " mm\"");
    text = replaced(text, "17 GPa", values.bone + " GPa");
    text = replaced(text, "gap = \"3 mm\"", "gap = \"3 mm\"\ntissue = \"" + values.tissue + "\"");
    text = replaced(text, "100 N", values.axial + " N");
    write_file(swept.scratch.path() / "row.toml", text + "\n[layouts]\n");
    run_program({"analyse", "row.toml", "--no-pictures", "--quiet", "--out", "row"}, swept.scratch.path());
    CHECK(column(swept.rows, "plate.standoff_mm")[values.row] == std::stod(values.standoff));
    CHECK(column(swept.rows, "load[0].axial_N")[values.row] == std::stod(values.axial));
    CHECK(cases::read_texts(swept.rows, "fracture.tissue")[values.row] == values.tissue);
    check_row_is_analysis(swept.rows, values.row, swept.scratch.path() / "row" / "findings.json");
  }
}

TEST_CASE("a construct that cannot be is a row that failed, with its reason", "[cases][as-a-user]") {
  const Swept swept(coarse_tube(6, "[1, 2, 5, 6]"),
                    vary("fracture.gap", "values = [\"3 mm\", \"12 mm\"]") +
                        vary("screw[0].holes", "values = [[1, 2, 5, 6], [1, 3, 4, 6], [1, 2, 5, 44]]"));
  CHECK(swept.run.status == 0);
  CHECK(cases::read_texts(swept.rows, "state") ==
        std::vector<std::string>{"ok", "ok", "failed", "ok", "failed", "failed"});
  const auto reasons = cases::read_texts(swept.rows, "reason");
  CHECK(reasons[0].empty());
  CHECK_THAT(reasons[2], Catch::Contains("but the plate has holes 1 to 6."));
  CHECK_THAT(reasons[4], Catch::Contains("but the screws next to it are only 11 mm apart"));
  CHECK(std::isnan(column(swept.rows, "gap_strain")[4]));
  CHECK_THAT(swept.summary(), Catch::Contains("3 have no result"));
}

TEST_CASE("a sweep without any result says so by its status", "[cases][as-a-user]") {
  const Swept swept(coarse_tube(6, "[1, 2, 5, 6]"), vary("screw[0].holes", "values = [[1, 2, 5, 44], [1, 66]]"));
  CHECK(swept.run.status == 1);
  CHECK(data_rows(swept.rows) == 2);
}

TEST_CASE("random samples come again with their seed, and others with another", "[cases][as-a-user]") {
  const std::string tube = coarse_tube(6, "[1, 2, 5, 6]");
  const std::string limit = "\n[[limit]]\nfinding = \"gap_strain\"\nmost = 0.06\n";
  const auto study = [&](int seed) {
    return design("monte-carlo", 12, seed) + sampled_load + sampled_bone + limit;
  };
  const Swept first(tube, study(1)), again(tube, study(1)), other(tube, study(2));
  REQUIRE(first.run.status == 0);
  CHECK(data_rows(first.rows) == 12);
  CHECK(read_file(first.rows) == read_file(again.rows));
  CHECK(first.summary() == again.summary());
  const auto pushes = column(first.rows, "push_N"), other_pushes = column(other.rows, "push_N");
  for (std::size_t row = 0; row < pushes.size(); ++row) CHECK(pushes[row] != other_pushes[row]);

  const auto strain = column(first.rows, "gap_strain");
  const auto over = std::count_if(strain.begin(), strain.end(), [](double value) { return value > 0.06; });
  CHECK(over > 0);
  CHECK(over < 12);
  CHECK_THAT(first.summary(),
             Catch::Contains(fmt::format("\n  {:.3g} % of 12 rows are above 6 % (95 % confidence: ",
                                         100.0 * static_cast<double>(over) / 12.0)));
}

TEST_CASE("a latin hypercube has one sample in each share of each distribution", "[cases][as-a-user]") {
  const Swept swept(coarse_tube(6, "[1, 2, 5, 6]"),
                    design("latin-hypercube", 10, 1) + sampled_load + sampled_bone);
  REQUIRE(swept.run.status == 0);
  auto pushes = column(swept.rows, "push_N");
  std::sort(pushes.begin(), pushes.end());
  REQUIRE(pushes.size() == 10);
  for (std::size_t k = 0; k < 10; ++k) {
    CHECK(pushes[k] >= 50.0 + 8.0 * static_cast<double>(k));
    CHECK(pushes[k] <= 58.0 + 8.0 * static_cast<double>(k));
  }
}

TEST_CASE("a Saltelli design prints how much of the variance each variable is answerable for",
          "[cases][as-a-user]") {
  const Swept swept(coarse_tube(6, "[1, 2, 5, 6]"), design("saltelli", 16, 1) + sampled_load + sampled_bone);
  REQUIRE(swept.run.status == 0);
  CHECK(data_rows(swept.rows) == 16 * 4);
  const std::string summary = swept.summary();
  const auto indices = summary.find("Sobol' indices from 16 base points (0 left out)");
  REQUIRE(indices != std::string::npos);
  const auto total_of = [&](const std::string& variable) {
    const auto line = summary.find("    " + variable + " ", indices);
    REQUIRE(line != std::string::npos);
    return std::stod(summary.substr(summary.find("total", line) + 5));
  };
  // The plate's stress rises in proportion to the load, and hardly knows of the bone.
  CHECK(total_of("push") > 0.5);
  CHECK(total_of("bone") < 0.1);
}

TEST_CASE("rows of changing geometry are the same bytes from threads, processes and parts, and after kills",
          "[cases][as-a-user][mpi]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", coarse_tube(4, "[1, 2, 3, 4]"));
  write_file(scratch.path() / "study.toml",
             "case = \"tube.toml\"\n" +
                 vary("load[0].axial", "from = \"10 N\"\nto = \"200 N\"\nsteps = 14\nspacing = \"logarithmic\"") +
                 vary("plate.standoff", "values = [\"1 mm\", \"1.5 mm\"]"));
  const auto sweep = [](const std::string& out, std::vector<std::string> rest) {
    rest.insert(rest.begin(), {"sweep", "study.toml", "--no-pictures", "--quiet", "--out", out});
    return rest;
  };
  REQUIRE(run_program(sweep("once", {"--threads", "1"}), scratch.path()).status == 0);
  const std::string expected = read_file(scratch.path() / "once" / "rows.csv");
  CHECK(data_rows(scratch.path() / "once" / "rows.csv") == 28);

  const auto run = [&](int ranks, const std::vector<std::string>& arguments) {
    return run_under_mpirun(ranks, arguments, scratch.path());
  };
  const auto killed = sweep("killed", {"--threads", "2"});
  kill_twelve_times(killed, scratch.path(), scratch.path() / "killed", expected);
  CHECK(run(1, killed).status == 0);
  CHECK(read_file(scratch.path() / "killed" / "rows.csv") == expected);

  for (const int part : {3, 1, 2}) {
    const auto name = std::to_string(part);
    const Run made = run(part + 1, sweep(name, {"--threads", "1", "--part", name + "/3"}));
    INFO(made.err);
    CHECK(made.status == 0);
  }
  CHECK(run_program({"merge", "2", "3", "1", "--out", "merged"}, scratch.path()).status == 0);
  CHECK(read_file(scratch.path() / "merged" / "rows.csv") == expected);
  CHECK(run_program(sweep("merged", {}), scratch.path()).status == 0);
  CHECK(contents(scratch.path() / "merged") == contents(scratch.path() / "once"));
}

TEST_CASE("every study among the examples can be read", "[cases][study]") {
  const auto files = toml_files(fs::path(GAPSTRAIN_EXAMPLES) / "studies");
  CHECK_FALSE(files.empty());
  for (const auto& file : files) {
    INFO(file);
    std::size_t rows = 0;
    REQUIRE_NOTHROW(
        rows = cases::read_study(file, [](const models::Construct&) { return cases::known_findings(); }).rows());
    CHECK(rows > 0);
  }
}
