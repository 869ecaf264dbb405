// gapstrain layouts from the outside: a case in; rows, front, best and summary out.
#include "cases/figures/outcome_table.h"
#include "cases/files/read_table.h"
#include "models/catalogue/outcome_figures.h"
#include "models/rules/rules.h"
#include "tests/cases/as_a_user/study_runs.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <bit>
#include <cmath>
#include <set>
#include <sstream>
#include <tuple>

namespace fs = std::filesystem;
using namespace gapstrain;
using namespace gapstrain::tests;

namespace {

constexpr double most_gap_strain = 0.12;

std::string tube_with_rules() {
  return coarse_tube(10, "[1, 3, 8, 10]") + fmt::format(R"(
[[load]]
name = "turn"
supports = "cantilever"
torsion = "500 N mm"

[layouts]
most_per_fragment = 3
most_in_all = 5
barred = [5]
filled = [1]
rank_by = ["least gap_strain", "least peak_stress"]
front = ["most working_length", "least gap_strain"]

[[layouts.limit]]
finding = "gap_strain"
most = {}
)",
                                                        most_gap_strain);
}

// "1 3 8 10" of every choice of holes that the rules of `tube_with_rules` allow.
std::set<std::string> allowed_layouts() {
  std::set<std::string> allowed;
  for (unsigned set = 0; set < 1U << 10; ++set) {
    const auto has = [&](int hole) { return (set >> (hole - 1) & 1U) != 0; };
    const int proximal = std::popcount(set & 0b11111U), distal = std::popcount(set >> 5);
    if (!has(1) || has(5) || std::min(proximal, distal) < 2 || std::max(proximal, distal) > 3 ||
        proximal + distal > 5)
      continue;
    std::string text;
    for (int hole = 1; hole <= 10; ++hole)
      if (has(hole)) text += (text.empty() ? "" : " ") + std::to_string(hole);
    allowed.insert(text);
  }
  return allowed;
}

// `tube_with_rules`, run once for all tests.
struct Done {
  ScratchFolder scratch;
  Run run;
  fs::path out = scratch.path() / "tube-layouts", rows = out / "rows.csv";
  Done() {
    write_file(scratch.path() / "tube.toml", tube_with_rules());
    run = run_program({"layouts", "tube.toml", "--no-pictures", "--threads", "1"}, scratch.path());
  }
};

const Done& done() {
  static const Done made;
  return made;
}

std::vector<std::string> holes(const fs::path& table) { return cases::read_texts(table, "holes"); }

// As the program compares: less than the third digit is no difference.
double rounded(double value) { return std::stod(fmt::format("{:.2e}", value)); }

// The answer to a case that must not be begun.
void refuses(const std::string& text, const std::string& message, int status = 2) {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", text);
  const Run run = run_program({"layouts", "tube.toml", "--no-pictures"}, scratch.path());
  INFO(run.err);
  CHECK(run.status == status);
  CHECK_THAT(run.err, Catch::Contains(message));
  CHECK(run.out.empty());
  CHECK(contents(scratch.path()).size() == 1);
}

// What the summary tells of a layout that was looked at all over, by its rank ("1", "yours"), in one line.
std::string told_of(const std::string& summary, const std::string& rank) {
  const auto start = summary.find(fmt::format("\n{:>6}  ", rank), summary.find("\nLooked at all over"));
  REQUIRE(start != std::string::npos);
  std::istringstream rest(summary.substr(start + 1));
  std::string line, text;
  while (std::getline(rest, line) && (text.empty() || line.starts_with("        "))) text += line.substr(7);
  return text;
}

}  // namespace

TEST_CASE("every choice of screws that the rules allow is a row, and no other is", "[cases][as-a-user]") {
  INFO(done().run.err);
  REQUIRE(done().run.status == 0);
  CHECK(done().run.err.empty());
  const auto rows = holes(done().rows);
  const auto allowed = allowed_layouts();
  CHECK(rows.size() == allowed.size());
  CHECK(std::set<std::string>(rows.begin(), rows.end()) == allowed);
  const auto numbers = column(done().rows, "layout");
  for (std::size_t row = 0; row < rows.size(); ++row) CHECK(numbers[row] == static_cast<double>(row + 1));
  for (const auto& state : cases::read_texts(done().rows, "state")) CHECK(state == "ok");
}

TEST_CASE("rows have a column for each figure, and for each figure of each load", "[cases][as-a-user]") {
  REQUIRE(done().run.status == 0);
  // Axial forces of small loads do next to nothing: no such figure is told then.
  const std::set<std::string> left_out = {"axial_load_ratio", "second_order_amplification"};
  for (const auto& figure : models::figure_names())
    for (const double value : column(done().rows, cases::figure_column(figure)))
      CHECK((std::isfinite(value) || left_out.contains(figure)));
  for (const auto& figure : models::load_figures()) {
    INFO(figure.name);
    const std::string name(figure.name);
    const auto worst = column(done().rows, cases::figure_column(name));
    const auto one = column(done().rows, cases::load_column(0, name));
    const auto two = column(done().rows, cases::load_column(1, name));
    for (std::size_t row = 0; row < worst.size(); ++row) {
      const double expected =
          figure.high_is_worse ? std::fmax(one[row], two[row]) : std::fmin(one[row], two[row]);  // of what is told
      CHECK((worst[row] == expected || (std::isnan(worst[row]) && std::isnan(expected))));
    }
  }
}

TEST_CASE("the summary shows the case's own layout beside the best, and counts those within the limits",
          "[cases][as-a-user]") {
  REQUIRE(done().run.status == 0);
  const std::string summary = read_file(done().out / "summary.txt");
  CHECK_THAT(summary, Catch::Contains("\n yours 1 3 8 10 "));
  const auto strain = column(done().rows, "gap_strain");
  const auto kept = std::count_if(strain.begin(), strain.end(), [](double s) { return s <= most_gap_strain; });
  CHECK(kept > 10);
  CHECK(kept < 80);
  CHECK_THAT(summary, Catch::Contains(fmt::format("\n{} layouts keep the limits: ", kept)));
  CHECK(done().run.out == summary + "\nWritten: " + done().out.string() + "\n");
  CHECK(read_file(done().out / "case.toml") == tube_with_rules());
}

TEST_CASE("the best come first, within the limits, in the order that was asked for", "[cases][as-a-user]") {
  REQUIRE(done().run.status == 0);
  const auto all = lines_of(read_file(done().rows)), best = lines_of(read_file(done().out / "best.csv"));
  REQUIRE(best.size() == 11);
  CHECK(best.front() == all.front());
  const auto strain = column(done().rows, "gap_strain"), peak = column(done().rows, "peak_stress_MPa");
  const auto better = [&](std::size_t one, std::size_t two) {
    const auto keys = [&](std::size_t row) { return std::pair(rounded(strain[row]), rounded(peak[row])); };
    return keys(one) != keys(two) ? keys(one) < keys(two) : one < two;
  };
  std::vector<std::size_t> order;
  for (std::size_t row = 0; row < strain.size(); ++row)
    if (strain[row] <= most_gap_strain) order.push_back(row);
  std::sort(order.begin(), order.end(), better);
  for (std::size_t k = 0; k < 10; ++k) CHECK(best[k + 1] == all[order[k] + 1]);
}

TEST_CASE("front.csv has the Pareto front of the layouts within the limits, and all of it", "[cases][as-a-user]") {
  REQUIRE(done().run.status == 0);
  const auto all = lines_of(read_file(done().rows)), front = lines_of(read_file(done().out / "front.csv"));
  CHECK(front.front() == all.front());
  CHECK(front.size() > 3);
  const auto strain = column(done().rows, "gap_strain"), length = column(done().rows, "working_length_mm");
  const auto equal = [&](std::size_t one, std::size_t two) {
    return rounded(strain[one]) == rounded(strain[two]) && length[one] == length[two];
  };
  std::set<std::string> expected;
  for (std::size_t row = 0; row < strain.size(); ++row) {
    bool is_front = strain[row] <= most_gap_strain;
    for (std::size_t other = 0; other < strain.size() && is_front; ++other) {
      const bool is_no_worse = strain[other] <= most_gap_strain && length[other] >= length[row] &&
                               rounded(strain[other]) <= rounded(strain[row]);
      if (is_no_worse && (!equal(other, row) || other < row)) is_front = false;
    }
    if (is_front) expected.insert(all[row + 1]);
  }
  CHECK(std::set<std::string>(front.begin() + 1, front.end()) == expected);
}

TEST_CASE("a layout's row is what analyse finds of the case with these holes", "[cases][as-a-user]") {
  REQUIRE(done().run.status == 0);
  const auto rows = holes(done().rows);
  const ScratchFolder scratch;
  for (const auto& [text, toml] :
       {std::pair<std::string, std::string>{"1 3 8 10", "[1, 3, 8, 10]"}, {"1 2 4 6 9", "[1, 2, 4, 6, 9]"}}) {
    write_file(scratch.path() / "case.toml", replaced(tube_with_rules(), "[1, 3, 8, 10]", toml));
    run_program({"analyse", "case.toml", "--no-pictures", "--quiet", "--out", "out"}, scratch.path());
    const auto row = static_cast<std::size_t>(std::find(rows.begin(), rows.end(), text) - rows.begin());
    REQUIRE(row < rows.size());
    check_row_is_analysis(done().rows, row, scratch.path() / "out" / "findings.json");
  }
}

TEST_CASE("of the best and of the case's own layout it is told whether they hold and which rules they break",
          "[cases][as-a-user]") {
  REQUIRE(done().run.status == 0);
  const std::string summary = read_file(done().out / "summary.txt");
  const ScratchFolder scratch;
  write_file(scratch.path() / "case.toml", tube_with_rules());
  run_program({"analyse", "case.toml", "--no-pictures", "--quiet", "--out", "out"}, scratch.path());
  const auto analysed = nlohmann::json::parse(read_file(scratch.path() / "out" / "findings.json"));
  const auto numbers = column(done().out / "best.csv", "layout");
  const auto margin = column(done().rows, "margin"), broken = column(done().rows, "rules_broken");
  const auto own = holes(done().rows);
  std::vector<std::pair<std::string, std::size_t>> told{
      {"yours", static_cast<std::size_t>(std::find(own.begin(), own.end(), "1 3 8 10") - own.begin())}};
  for (std::size_t k = 0; k < numbers.size(); ++k)
    told.emplace_back(fmt::format("{}", k + 1), static_cast<std::size_t>(numbers[k]) - 1);
  for (const auto& [rank, row] : told) {
    const std::string text = told_of(summary, rank);
    INFO(text);
    const bool trusted = !text.starts_with(" NOT TO BE TRUSTED: mesh error");  // so coarse a mesh seldom is
    if (rank == "yours") CHECK(trusted == analysed["trustworthy"].get<bool>());
    if (trusted)
      CHECK(text.starts_with(margin[row] < 1.0 ? " FAILS: " : " holds; "));
    else
      CHECK_THAT(text, Catch::Contains(", limit 0.1; "));
    CHECK_THAT(text, Catch::Contains(fmt::format("least margin {:.2g}, ", margin[row])));
    CHECK_THAT(text, Catch::Contains(broken[row] == 0.0 ? "Breaks no rule" : "of the trade: "));
    for (const auto& rule : models::rule_names()) {
      const bool breaks = column(done().rows, models::rule_figure(rule))[row] == 1.0;
      CHECK((text.find(rule + " (") != std::string::npos) == breaks);
    }
  }
}

TEST_CASE("what holds and keeps the rules comes first when nothing else is asked for, and may be a limit",
          "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", replaced(coarse_tube(10, "[1, 3, 8, 10]"), "100 N", "260 N") + R"(
[layouts]
most_per_fragment = 3

[[layouts.limit]]
finding = "breaks_nearest_screw_to_the_fracture"
most = 0

[[layouts.limit]]
finding = "margin_plate_fatigue"
least = 0.8
)");
  const Run run = run_program({"layouts", "tube.toml", "--no-pictures", "--out", "out"}, scratch.path());
  INFO(run.out << run.err);
  REQUIRE(run.status == 0);
  const fs::path rows = scratch.path() / "out" / "rows.csv";
  const auto near = column(rows, "breaks_nearest_screw_to_the_fracture");
  const auto fatigue = column(rows, "margin_plate_fatigue"), margin = column(rows, "margin");
  const auto failing = column(rows, "margins_failing"), broken = column(rows, "rules_broken");
  const auto screws = column(rows, "screws");
  std::vector<std::size_t> kept;
  std::size_t holding = 0;
  for (std::size_t row = 0; row < near.size(); ++row) {
    if (near[row] > 0.0 || fatigue[row] < 0.8) continue;
    kept.push_back(row);
    holding += margin[row] >= 1.0 ? 1 : 0;
    CHECK((failing[row] > 0.0) == (margin[row] < 1.0));
  }
  const auto soft = column(rows, "margin_soft_screws");
  std::size_t only_bonded = 0;
  for (std::size_t row = 0; row < margin.size(); ++row) {
    CHECK(soft[row] > 0.0);
    CHECK(soft[row] != margin[row]);
    only_bonded += margin[row] >= 1.0 && soft[row] < 1.0 ? 1 : 0;
  }
  const auto said = fmt::format("FAILS AT THE SOFT BOUND: {} of {} rows", only_bonded, margin.size());
  CHECK((run.out.find(said) != std::string::npos) == (only_bonded > 0));
  CHECK(kept.size() < near.size());
  CHECK(holding > 0);
  CHECK(holding < kept.size());
  CHECK_THAT(run.out, Catch::Contains(fmt::format("\n{} layouts keep the limits: ", kept.size())));
  CHECK_THAT(run.out, Catch::Contains(fmt::format("\n{} hold (", holding)));
  std::stable_sort(kept.begin(), kept.end(), [&](std::size_t one, std::size_t two) {
    const auto keys = [&](std::size_t row) {
      return std::tuple(failing[row], broken[row], -rounded(margin[row]), screws[row]);
    };
    return keys(one) < keys(two);
  });
  const auto best = column(scratch.path() / "out" / "best.csv", "layout");
  REQUIRE(best.size() == 10);
  for (std::size_t k = 0; k < best.size(); ++k) CHECK(best[k] == static_cast<double>(kept[k] + 1));
}

TEST_CASE("a plate that yields is a finding: status 0, and quiet is quiet", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", replaced(coarse_tube(6, "[1, 2, 5, 6]"), "100 N", "400 N") +
                                               "\n[layouts]\nbarred = [3, 4]\nfilled = [1, 2, 5, 6]\n");
  const Run run =
      run_program({"layouts", "tube.toml", "--no-pictures", "--quiet", "--out", "out"}, scratch.path());
  CHECK(run.status == 0);
  CHECK(run.out.empty());
  CHECK(run.err.empty());
  REQUIRE(data_rows(scratch.path() / "out" / "rows.csv") == 1);
  CHECK(column(scratch.path() / "out" / "rows.csv", "plate_to_yield").front() < 1.0);
  const std::string summary = read_file(scratch.path() / "out" / "summary.txt");
  CHECK_THAT(summary, Catch::Contains("\nNO layout holds: "));
  CHECK_THAT(summary, Catch::Contains(" FAILS\n yours "));
  CHECK(
      told_of(summary, "1").starts_with(" NOT TO BE TRUSTED: mesh error of the peak stress"));  // so coarse it is
  CHECK_THAT(told_of(summary, "1"), Catch::Contains("; plate, yield 0."));
}

TEST_CASE("faults of a case are answered before anything is written", "[cases][as-a-user]") {
  const std::string tube = coarse_tube(10, "[1, 3, 8, 10]"), rules = tube + "\n[layouts]\n";
  refuses(replaced(tube, "standoff", "standof"), "did you mean \"standoff\"?");
  refuses(rules + "rank_by = [\"least gap_strian\"]\n", "did you mean \"gap_strain\"?");
  refuses(rules + "front = [\"least gap_strain\"]\n", "name just two");
  refuses(rules + "[[layouts.limit]]\nfinding = \"stress\"\nmost = 3\n", "\"stress\", which is no finding");
  refuses(rules + "barred = [11]\n", "There is no hole 11; the plate's holes are 1 to 10.");
  refuses(rules + "filled = [12]\n", "There is no hole 12");
  refuses(rules + "barred = [1]\nfilled = [1]\n", "Hole 1 is barred and filled at once");
  refuses(rules + "kinds = [\"cortical\"]\n", "The case has no screw of one of these kinds");
  refuses(rules + "least_per_fragment = 6\n", "no choice of screws is admissible");
}

TEST_CASE("rows are the same bytes from several threads, processes and parts, and after kills",
          "[cases][as-a-user][mpi]") {
  const ScratchFolder scratch;
  write_file(scratch.path() / "tube.toml", coarse_tube(10, "[1, 3, 8, 10]"));  // without [layouts]
  const auto layouts = [](const std::string& out, std::vector<std::string> rest) {
    rest.insert(rest.begin(), {"layouts", "tube.toml", "--no-pictures", "--quiet", "--out", out});
    return rest;
  };
  REQUIRE(run_program(layouts("once", {"--threads", "1"}), scratch.path()).status == 0);
  const std::string expected = read_file(scratch.path() / "once" / "rows.csv");
  CHECK(data_rows(scratch.path() / "once" / "rows.csv") == 26 * 26);  // two of five and more, in both fragments

  const auto run = [&](int ranks, const std::vector<std::string>& arguments) {
    return run_under_mpirun(ranks, arguments, scratch.path());
  };
  // Half of the rows, for a part has no best ones to look at.
  const auto killed = layouts("killed", {"--threads", "2", "--part", "1/2"});
  std::string half;
  const auto lines = lines_of(read_file(scratch.path() / "once" / "rows.csv"));
  for (std::size_t k = 0; k < 1 + 13 * 26; ++k) half += lines[k] + '\n';
  kill_twelve_times(killed, scratch.path(), scratch.path() / "killed", half);
  CHECK(run(1, killed).status == 0);
  CHECK(read_file(scratch.path() / "killed" / "rows.csv") == half);

  for (const int part : {3, 1, 2}) {
    const auto name = std::to_string(part);
    const Run made = run(part + 1, layouts(name, {"--threads", "1", "--part", name + "/3"}));
    INFO(made.err);
    CHECK(made.status == 0);
  }
  CHECK(run_program({"merge", "2", "3", "1", "--out", "merged"}, scratch.path()).status == 0);
  CHECK(read_file(scratch.path() / "merged" / "rows.csv") == expected);
}
