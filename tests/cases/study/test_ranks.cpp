// Studies under mpirun, as a user starts them.
#include "cases/study/crew.h"
#include "tests/cases/as_a_user/run_program.h"
#include "tests/cases/study/toy_worker.h"

#include <sched.h>
#include <sys/wait.h>
#include <catch2/catch.hpp>

#include <cstdlib>

namespace fs = std::filesystem;
using namespace gapstrain::cases;
using namespace gapstrain::tests;

namespace {

constexpr std::size_t rank_rows = 3'000;

Run run(const std::string& command) {
  const ScratchFolder streams;
  const auto out = streams.path() / "out", err = streams.path() / "err";
  const int code = std::system((command + " >" + out.string() + " 2>" + err.string() + " </dev/null").c_str());
  return {WIFEXITED(code) ? WEXITSTATUS(code) : -1, read_file(out), read_file(err)};
}

std::string mpirun(int ranks) {
  return "timeout --kill-after=10 600 " MPIRUN " --oversubscribe --allow-run-as-root -n " + std::to_string(ranks) +
         ' ';
}

std::string toy(const fs::path& out, const std::string& rest) {
  return std::string(TOY_STUDY) + ' ' + out.string() + ' ' + std::to_string(rank_rows) + ' ' + rest;
}

}  // namespace

TEST_CASE("a process on its own is rank 0 of 1", "[cases][study]") {
  Ranks alone;
  CHECK(alone.rank() == 0);
  CHECK(alone.size() == 1);
  CHECK(alone.on_this_node() == 1);
  CHECK_FALSE(alone.receive());
  CHECK(threads_of_a_rank(5, alone) == 5);
  CHECK(threads_of_a_rank(0, alone) >= 1);
  CHECK(threads_of_a_rank(0, alone) <= std::max(1U, std::thread::hardware_concurrency()));

  cpu_set_t all, one;
  REQUIRE(sched_getaffinity(0, sizeof all, &all) == 0);
  CPU_ZERO(&one);
  for (int i = 0; CPU_COUNT(&one) == 0; ++i)
    if (CPU_ISSET(i, &all)) CPU_SET(i, &one);
  REQUIRE(sched_setaffinity(0, sizeof one, &one) == 0);
  CHECK(threads_of_a_rank(0, alone) == 1);  // bound to one processor
  REQUIRE(sched_setaffinity(0, sizeof all, &all) == 0);
}

TEST_CASE("rows are the same bytes with any number of ranks and threads", "[cases][study][mpi]") {
  const ScratchFolder scratch;
  const std::string expected = toy_file(rank_rows);
  for (const int ranks : {1, 2, 3, 4})
    for (const std::string threads : {"1", "3"}) {
      INFO(ranks << " ranks of " << threads << " threads");
      const auto out = scratch.path() / (std::to_string(ranks) + "-" + threads);
      const Run done = run(mpirun(ranks) + toy(out, threads + " 20"));
      CHECK(done.status == 0);
      CHECK(done.err.empty());
      for (int rank = 0; rank < ranks; ++rank)  // every rank knows
        CHECK_THAT(done.out, Catch::Contains("rank " + std::to_string(rank) + " of " + std::to_string(ranks) +
                                             ": 3000 rows, complete"));
      CHECK(read_file(out / "rows.csv") == expected);
    }
}

TEST_CASE("a study that is complete makes no row again on any rank", "[cases][study][mpi]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  REQUIRE(run(toy(out, "2 0")).status == 0);
  const Run again = run(mpirun(3) + toy(out, "1 0 throw 1 0"));  // rank 1 would throw
  CHECK(again.status == 0);
  CHECK_THAT(again.out, Catch::Contains("rank 2 of 3: 0 rows, complete"));
}

TEST_CASE("a fault on any rank ends the whole job with its message", "[cases][study][mpi]") {
  const ScratchFolder scratch;
  for (const std::string rank : {"0", "1", "2"}) {
    const auto out = scratch.path() / rank;
    const Run broken = run(mpirun(3) + toy(out, "2 50 throw " + rank + " 500"));
    CHECK(broken.status == 2);
    CHECK_THAT(broken.err, Catch::Contains("the toy broke"));
    CHECK_FALSE(fs::exists(out / "rows.csv"));
    CHECK(run(mpirun(2) + toy(out, "1 0")).status == 0);
    CHECK(read_file(out / "rows.csv") == toy_file(rank_rows));
  }
}

TEST_CASE("a rank that is killed ends the whole job, and the study goes on", "[cases][study][mpi]") {
  const ScratchFolder scratch;
  for (const std::string rank : {"0", "1"}) {
    const auto out = scratch.path() / rank;
    const Run killed = run(mpirun(2) + toy(out, "2 50 kill " + rank + " 500"));
    CHECK(killed.status != 0);
    REQUIRE(fs::exists(out / "rows.csv.part"));
    CHECK(run(mpirun(3) + toy(out, "1 0")).status == 0);
    CHECK(read_file(out / "rows.csv") == toy_file(rank_rows));
  }
}

TEST_CASE("a folder that rank 0 refuses ends the whole job", "[cases][study][mpi]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  fs::create_directory(out);
  write_file(out / "thesis.txt", "years of work");
  const Run refused = run(mpirun(3) + toy(out, "1 0"));
  CHECK(refused.status == 2);
  CHECK_THAT(refused.err, Catch::Contains("thesis.txt"));
}

TEST_CASE("a fault that all ranks find is said once", "[cases][study][mpi]") {
  const ScratchFolder scratch;
  const Run refused = run(mpirun(3) + toy(scratch.path() / "out", "many 0"));
  CHECK(refused.status == 2);
  const auto said = refused.err.find("stoul");
  REQUIRE(said != std::string::npos);
  CHECK(refused.err.find("stoul", said + 1) == std::string::npos);
}

TEST_CASE("a program built without MPI refuses to be one of several, and runs alone", "[cases][study][mpi]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  const std::string command = std::string(TOY_STUDY_WITHOUT_MPI) + ' ' + out.string() + " 100 1 0";
  for (const std::string variable : {"OMPI_COMM_WORLD_SIZE", "PMI_SIZE"}) {
    const Run refused = run("env " + variable + "=4 " + command);
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, Catch::Contains("one of 4 processes, but built without MPI"));
    CHECK_FALSE(fs::exists(out));
  }
  CHECK(run("env OMPI_COMM_WORLD_SIZE=1 " + command).status == 0);
  CHECK(read_file(out / "rows.csv") == toy_file(100));
}
