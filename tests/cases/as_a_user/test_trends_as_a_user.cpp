// The command as a person runs it, at a coarse mesh.
#include "tests/cases/as_a_user/run_program.h"

#include <catch2/catch.hpp>

#include <sstream>

namespace fs = std::filesystem;
using namespace gapstrain::tests;

TEST_CASE("trends prints statements, figures and verdicts in 110 columns, and writes them", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  const Run run =
      run_program({"trends", "--only", "stoffel", "--refinement", "0.5", "--csv", "t.csv"}, scratch.path());
  INFO(run.out << run.err);
  REQUIRE(run.status == 0);
  CHECK(run.err.empty());  // no terminal, no progress
  std::istringstream text(run.out);
  for (std::string line; std::getline(text, line);) CHECK(line.size() <= 110);
  for (const char* words : {"-- working length", "-- plate to bone", "from memory", "agree, ", "hang on a guess, ",
                            "Known: ", "Guessed: ", "Held to: ", "balls on the bone's axis:", "shaft, gap 1 mm: ",
                            "invented", "not a medical device"}) {
    INFO(words);
    CHECK(run.out.find(words) != std::string::npos);
  }
  CHECK(run.out.find("Wainberg") == std::string::npos);

  const std::string table = read_file(scratch.path() / "t.csv");
  CHECK(table.starts_with("topic,statement,source,"));
  CHECK(data_rows(scratch.path() / "t.csv") >= 10);
  CHECK(table.find("\"Stoffel et al. 2003, Injury 34 Suppl 2:B11\",from memory") != std::string::npos);
  CHECK(std::distance(fs::directory_iterator(scratch.path()), {}) == 1);
}

TEST_CASE("a statement without a model of ours is printed without figures", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  const Run run = run_program({"trends", "--only", "undersized"}, scratch.path());
  CHECK(run.status == 0);
  CHECK(run.out.find("not comparable. All our threads") != std::string::npos);
  CHECK(run.out.find("0 agree, 0 hang on a guess, 0 disagree, 1 not comparable") != std::string::npos);
}

TEST_CASE("trends says what it cannot do before it works", "[cases][as-a-user]") {
  const ScratchFolder scratch;
  const auto fault = [&](const std::vector<std::string>& arguments, const std::string& words) {
    const Run run = run_program(arguments, scratch.path());
    INFO(run.err);
    CHECK(run.status == 2);
    CHECK(run.out.empty());
    CHECK(run.err.find(words) != std::string::npos);
  };
  fault({"trends", "--only", "zebra"}, "topics are: cortices, heads");
  fault({"trends", "--csv", "nowhere/t.csv"}, "nowhere; make it or choose another file with --csv");
  fault({"trends", "--csv", "."}, "is a folder");
  fault({"trends", "--refinement", "9"}, "--refinement");
  CHECK(fs::is_empty(scratch.path()));
}
