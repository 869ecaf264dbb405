#include "tests/cases/as_a_user/study_runs.h"

#include "cases/files/read_table.h"
#include "models/catalogue/outcome_figures.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/wait.h>
#include <unistd.h>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <csignal>
#include <cstdlib>
#include <limits>
#include <map>
#include <random>
#include <thread>

namespace gapstrain::tests {

namespace fs = std::filesystem;
using namespace std::chrono_literals;

namespace {

std::vector<char*> argument_list(std::vector<std::string>& words) {
  std::vector<char*> list;
  for (auto& word : words) list.push_back(word.data());
  list.push_back(nullptr);
  return list;
}

void redirect(const fs::path& file, int stream) {
  const int opened = open(file.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  if (opened < 0 || dup2(opened, stream) < 0) _exit(127);
}

std::size_t size_of(const fs::path& file) {
  std::error_code missing;
  const auto size = fs::file_size(file, missing);
  return missing ? 0 : static_cast<std::size_t>(size);
}

}  // namespace

std::string coarse_tube(int plate_holes, const std::string& holes_with_screw) {
  const int row = 11 * plate_holes;
  return fmt::format(R"(name = "Coarse tube"

[bone]
length = "{0} mm"
width = "13 mm"
cortex = "2.2 mm"

[bone.cortical_bone]
youngs_modulus = "17 GPa"
poissons_ratio = 0.3
source = "chosen for the test"

[plate]
length = "{1} mm"
width = "8.5 mm"
thickness = "2.6 mm"
holes = {2}
pitch = "11 mm"
hole_diameter = "3.6 mm"
material = "stainless-steel-cold-worked"
standoff = "1 mm"

[fracture]
position = "{3} mm"
gap = "3 mm"

[[screw]]
holes = {4}
size = "locking 3.5"

[[load]]
name = "push"
axial = "100 N"

[mesh]
refinement = 0.4
rim_elements = 20
)",
                     row + 40, row + 2, plate_holes, row / 2 + 20, holes_with_screw);
}

Started::Started(const std::vector<std::string>& arguments, const fs::path& directory,
                 const std::optional<RowHold>& hold)
    : held_(hold ? hold->bytes : 0) {
  std::vector<std::string> words{GAPSTRAIN_PROGRAM};
  words.insert(words.end(), arguments.begin(), arguments.end());
  const auto list = argument_list(words);
  process_ = fork();
  if (process_ != 0) return;
  for (const int signal : {SIGINT, SIGTERM}) std::signal(signal, SIG_DFL);
  redirect(streams_.path() / "out", STDOUT_FILENO);
  redirect(streams_.path() / "err", STDERR_FILENO);
  if (hold) {
    setenv("LD_PRELOAD", HOLD_ROWS, 1);
    setenv("HOLD_ROWS_AT", std::to_string(hold->bytes).c_str(), 1);
    setenv("HOLD_ROWS_UNTIL", hold->release.c_str(), 1);
  }
  if (chdir(directory.c_str()) == 0) execv(list[0], list.data());
  _exit(127);
}

Started::~Started() {
  if (!is_running()) return;
  send(SIGKILL);
  waitpid(process_, nullptr, 0);
}

void Started::send(int signal) const {
  if (!has_ended_) kill(process_, signal);
}

bool Started::is_running() {
  if (!has_ended_) has_ended_ = waitpid(process_, &code_, WNOHANG) != 0;
  return !has_ended_;
}

bool Started::wait_for_hold(const fs::path& out) {
  while (size_of(out / "rows.csv.part") < held_) {
    if (!is_running()) return false;
    std::this_thread::sleep_for(1ms);
  }
  return true;
}

Run Started::wait() {
  if (is_running()) waitpid(process_, &code_, 0);
  has_ended_ = true;
  return {WIFEXITED(code_) ? WEXITSTATUS(code_) : -1, read_file(streams_.path() / "out"),
          without_progress(read_file(streams_.path() / "err"))};
}

Run run_under_mpirun(int ranks, const std::vector<std::string>& arguments, const fs::path& directory) {
  const ScratchFolder streams;
  const auto out = streams.path() / "out", err = streams.path() / "err";
  const std::string command = fmt::format(
      "cd '{}' && timeout --kill-after=10 600 '{}' --oversubscribe --allow-run-as-root -n {} '{}' '{}' >{} 2>{} "
      "</dev/null",
      directory.string(), MPIRUN, ranks, GAPSTRAIN_PROGRAM, fmt::join(arguments, "' '"), out.string(),
      err.string());
  const int code = std::system(command.c_str());
  return {WIFEXITED(code) ? WEXITSTATUS(code) : -1, read_file(out), without_progress(read_file(err))};
}

void kill_twelve_times(const std::vector<std::string>& arguments, const fs::path& directory, const fs::path& out,
                       const std::string& expected) {
  std::mt19937 random(20'270);
  const fs::path rows = out / "rows.csv.part";
  for (std::size_t left_to_do = 12; left_to_do > 0; --left_to_do) {
    const std::size_t before = size_of(rows);
    const std::size_t bytes = before + 1 + random() % ((expected.size() - before - 1) / left_to_do);
    Started study(arguments, directory, RowHold{bytes, directory / "never"});
    REQUIRE(study.wait_for_hold(out));
    study.send(SIGKILL);
    REQUIRE(study.wait().status == -1);
    const std::string left = read_file(rows);
    REQUIRE(left.size() == bytes);
    REQUIRE(left == expected.substr(0, bytes));
  }
}

void check_row_is_analysis(const fs::path& rows, std::size_t row, const fs::path& findings) {
  const auto json = nlohmann::json::parse(read_file(findings));
  const auto agrees = [&](const std::string& name, double expected) {
    INFO(name << " of row " << row + 1);
    CHECK(column(rows, name).at(row) == Approx(expected).epsilon(1e-8));
  };
  agrees("working_length_mm", json["construct"]["working_length_mm"]);
  agrees("screws_proximal", json["construct"]["screws_proximal"]);
  agrees("screws_distal", json["construct"]["screws_distal"]);
  agrees("plate_screw_density", json["construct"]["plate_screw_density"]);
  agrees("plate_span_ratio", json["construct"]["plate_span_ratio"]);
  agrees("axial_stiffness_N_mm", json["stiffness"]["axial_n_per_mm"]);
  agrees("bending_stiffness_flat_N_mm_rad", json["stiffness"]["bending_y_n_mm_per_rad"]);
  agrees("bending_stiffness_edge_N_mm_rad", json["stiffness"]["bending_z_n_mm_per_rad"]);
  agrees("torsional_stiffness_N_mm_rad", json["stiffness"]["torsion_n_mm_per_rad"]);
  double worst_strain = 0.0, worst_peak = 0.0;
  for (std::size_t l = 0; l < json["loads"].size(); ++l) {
    const auto& load = json["loads"][l];
    const auto& gap = load["gap"];
    const std::string prefix = fmt::format("load{}_", l + 1);
    const double strain = std::max(std::abs(gap["axial_strain"]["min"].get<double>()),
                                   std::abs(gap["axial_strain"]["max"].get<double>()));
    worst_strain = std::max(worst_strain, strain);
    agrees(prefix + "gap_strain", strain);
    agrees(prefix + "gap_strain_mean", gap["axial_strain"]["mean"]);
    agrees(prefix + "shear_strain", gap["shear_strain"]["max"]);
    agrees(prefix + "gap_motion_mm", gap["largest_motion_mm"]);
    agrees(prefix + "gap_motion_near_mm", gap["near"]["axial_motion_mm"]);
    agrees(prefix + "gap_motion_far_mm", gap["far"]["axial_motion_mm"]);
    agrees(prefix + "plate_clearance_mm", load["plate_clearance_mm"]);

    double pull = 0.0, to_yield = std::numeric_limits<double>::infinity();
    for (const auto& screw : load["screws"]) {
      pull = std::max(pull, screw["axial_n"].get<double>());
      to_yield = std::min(to_yield, screw["factor_to_yield"].get<double>());
    }
    agrees(prefix + "screw_pull_N", pull);
    agrees(prefix + "screw_to_yield", to_yield);

    agrees(prefix + "peak_stress_MPa", load["plate"]["peak_von_mises_mpa"]);
    worst_peak = std::max(worst_peak, load["plate"]["peak_von_mises_mpa"].get<double>());
  }
  // Of each kind the least margin, of all of them the least, and the rules by name.
  std::map<std::string, double> least;
  for (const auto& margin : json["margins"]) {
    const std::string part = margin["part"];
    if (margin["indicative"] || part.starts_with("bone")) continue;
    const bool is_plate = part.starts_with("plate");
    std::string kind = part.find("yield") != std::string::npos     ? "_yield"
                       : part.find("fatigue") != std::string::npos ? "_fatigue"
                                                                   : "";
    kind = kind.empty() ? "margin_pull_out" : (is_plate ? "margin_plate" : "margin_screw") + kind;
    for (const std::string& name : {kind, std::string("margin")})
      least[name] = std::min(least.contains(name) ? least[name] : margin["factor"].get<double>(),
                             margin["factor"].get<double>());
  }
  CHECK(least.size() == 6);
  for (const auto& [name, factor] : least) agrees(name, factor);
  double broken = 0.0;
  for (const auto& rule : json["review"]) {
    const double breaks = rule["verdict"] == "broken" ? 1.0 : 0.0;
    broken += breaks;
    agrees(models::rule_figure(rule["rule"].get<std::string>()), breaks);
  }
  CHECK(json["review"].size() > 10);
  agrees("rules_broken", broken);
  agrees("gap_strain", worst_strain);
  agrees("peak_stress_MPa", worst_peak);
}

std::vector<double> column(const fs::path& table, const std::string& name) {
  return cases::read_numbers(table, {name}).front();
}

std::map<std::string, std::string> contents(const fs::path& folder) {
  std::map<std::string, std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (!entry.is_directory())
      files[fs::relative(entry.path(), folder).generic_string()] = read_file(entry.path());
  return files;
}

}  // namespace gapstrain::tests
