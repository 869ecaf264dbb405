// Another host: who has nothing but a C++ compiler answers as this program does, from bodies that it is given.
#include "cases/reader/read_case.h"
#include "models/assembly/bodies_archive.h"
#include "models/layouts/ready_screws.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/cases/as_a_user/run_program.h"
#include "tests/core/figures_of_case.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>
#include <sstream>
#include <string>

namespace gapstrain {

namespace {

namespace fs = std::filesystem;

// What a command prints. @pre it ends well
std::string output_of(const std::string& command) {
  std::FILE* pipe = ::popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string text;
  for (int letter = std::fgetc(pipe); letter != EOF; letter = std::fgetc(pipe)) text += static_cast<char>(letter);
  INFO(command);
  REQUIRE(::pclose(pipe) == 0);
  return text;
}

tests::FiguresOfCase figures_of_core(const fs::path& case_file, const fs::path& bodies) {
  std::istringstream lines(
      output_of(std::string(GAPSTRAIN_CORE_ALONE) + " '" + case_file.string() + "' '" + bodies.string() + "'"));
  tests::FiguresOfCase figures;
  for (std::string kind, name, value;
       std::getline(lines, kind, '\t') && std::getline(lines, name, '\t') && std::getline(lines, value);)
    (kind == "outcome" ? figures.outcome : figures.analysis)[name] = std::stod(value);
  return figures;
}

// The example on a coarse mesh, so that a plain host factors it in seconds.
fs::path coarse(const tests::ScratchFolder& scratch, const std::string& example) {
  const fs::path file = scratch.path() / "case.toml";
  std::string text = tests::read_file(fs::path(GAPSTRAIN_SOURCE_DIR) / "cases/examples" / example);
  REQUIRE(text.find("[mesh]") == std::string::npos);
  tests::write_file(file, text + "\n[mesh]\nrefinement = 0.5\nrim_elements = 32\n");
  return file;
}

}  // namespace

TEST_CASE("the core alone answers as the program does", "[core]") {
  const auto example = GENERATE(as<std::string>(), "transverse_radius.toml", "patient_radius_bridged.toml");
  CAPTURE(example);
  const tests::ScratchFolder scratch;
  const fs::path case_file = coarse(scratch, example), bodies = scratch.path() / "bodies";
  const models::Construct construct = cases::read_case(case_file).construct;
  {
    std::ofstream stream(bodies, std::ios::binary);
    models::write_bodies(stream, *models::prepare_bodies(construct, models::screws_to_make_ready(construct)));
  }
  const auto native = tests::figures_of_case(case_file, bodies), core = figures_of_core(case_file, bodies);

  // The same machine code on the same compliances.
  CHECK(native.outcome.size() > 40);
  CHECK(core.outcome == native.outcome);

  // Bodies are factored by Eigen there, by CHOLMOD here: fields agree as far as both are exact. Friction is
  // iterated to 1e-10, and a fatigue life goes as some twelfth power of stress.
  REQUIRE(core.analysis.size() == native.analysis.size());
  CHECK(core.analysis.size() > 10);
  for (const auto& [name, value] : native.analysis) {
    CAPTURE(name);
    CHECK(core.analysis.at(name) == Approx(value).epsilon(1e-7));
  }
}

TEST_CASE("the core alone is linked to nothing but the compiler's own libraries, {fmt} and toml++", "[core]") {
  std::istringstream lines(output_of(std::string("ldd ") + GAPSTRAIN_CORE_ALONE));
  int count = 0;
  for (std::string line; std::getline(lines, line); ++count) {
    INFO(line);
    const bool is_known =
        line.find("libstdc++.") != std::string::npos || line.find("libm.") != std::string::npos ||
        line.find("libgcc_s.") != std::string::npos || line.find("libc.") != std::string::npos ||
        line.find("libfmt.") != std::string::npos || line.find("libtomlplusplus.") != std::string::npos ||
        line.find("ld-linux") != std::string::npos || line.find("linux-vdso") != std::string::npos ||
        line.find("libasan.") != std::string::npos || line.find("libubsan.") != std::string::npos;
    CHECK(is_known);
  }
  CHECK(count >= 4);
}

}  // namespace gapstrain
