// Runs that are ended from outside, in a process of their own.
#include "cases/study/interrupt.h"
#include "tests/cases/run_program.h"
#include "tests/cases/small_disk.h"
#include "tests/cases/toy_worker.h"

#include <sys/wait.h>
#include <unistd.h>
#include <catch2/catch.hpp>

#include <csignal>
#include <functional>
#include <random>

namespace fs = std::filesystem;
using namespace gapstrain::cases;
using namespace gapstrain::tests;
using namespace std::chrono_literals;

namespace {

constexpr int complete = 0, stopped = 3, broken = 4;

// @returns the process
pid_t start(const std::function<int()>& job) {
  const pid_t child = fork();
  if (child != 0) return child;
  for (const int signal : {SIGINT, SIGTERM}) std::signal(signal, SIG_DFL);  // Catch2 has handlers of its own
  int status = broken;
  try {
    status = job();
  } catch (...) {  // said by the status
  }
  _exit(status);  // nothing of the test's own is cleaned up twice
}

struct End {
  int status = -1, signal = 0;
};

End wait_for(pid_t child) {
  int code = 0;
  waitpid(child, &code, 0);
  return {WIFEXITED(code) ? WEXITSTATUS(code) : -1, WIFSIGNALED(code) ? WTERMSIG(code) : 0};
}

int make_toy_study(const fs::path& out, std::size_t rows, std::chrono::microseconds cost) {
  Ranks alone;
  StudyFolder folder(out, toy_study(rows), toy_heading);
  return make_missing_rows(&folder, toy_work(2, cost), alone).complete ? complete : stopped;
}

// Until some rows are on the disk.
void wait_for_rows(const fs::path& rows) {
  for (int i = 0; i < 10'000 && (!fs::exists(rows) || fs::file_size(rows) < 1'000); ++i)
    std::this_thread::sleep_for(1ms);
}

}  // namespace

TEST_CASE("a study killed thirty times at random moments ends as if it had never been", "[cases][study]") {
  constexpr std::size_t rows = 20'000;
  const std::string expected = toy_file(rows);
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  std::mt19937 random(20'260);
  std::uniform_int_distribution<int> delay(0, 40'000);
  for (int kill_number = 0; kill_number < 30; ++kill_number) {
    const pid_t child = start([&] { return make_toy_study(out, rows, 60us); });
    std::this_thread::sleep_for(std::chrono::microseconds(delay(random)));
    kill(child, SIGKILL);
    REQUIRE(wait_for(child).signal == SIGKILL);  // not ended by itself before
    if (!fs::exists(out / "rows.csv.part")) continue;
    const std::string left = read_file(out / "rows.csv.part");
    REQUIRE(left == expected.substr(0, left.size()));
  }
  const std::string left = read_file(out / "rows.csv.part");
  CHECK(left.size() > expected.size() / 100);  // the kills hit a run that was making rows
  CHECK(left.size() < expected.size());
  CHECK(wait_for(start([&] { return make_toy_study(out, rows, 0us); })).status == complete);
  CHECK(read_file(out / "rows.csv") == expected);
  CHECK_FALSE(fs::exists(out / "rows.csv.part"));
}

TEST_CASE("a study killed during its writes ends as if it had never been", "[cases][study]") {
  // One block of 6 MB takes the kernel some milliseconds to write, and a kill ends that between two pages.
  constexpr std::size_t rows = 60;
  const auto line = [](std::size_t row) { return std::to_string(row) + ',' + std::string(100'000, 'x') + '\n'; };
  std::string expected = "row,text\n";
  for (std::size_t row = 0; row < rows; ++row) expected += line(row);
  const std::string lines = expected.substr(expected.find('\n') + 1);
  const ScratchFolder scratch;
  const auto path = scratch.path() / "rows";
  std::mt19937 random(20'261);
  int torn = 0;
  for (int kill_number = 0; kill_number < 30; ++kill_number) {
    fs::remove(path);
    const pid_t child = start([&] {
      RowsFile(path, "row,text").append(lines, rows);
      return complete;
    });
    while (!fs::exists(path) || fs::file_size(path) < 100) std::this_thread::sleep_for(10us);
    std::this_thread::sleep_for(std::chrono::microseconds(random() % 2'000));
    kill(child, SIGKILL);
    wait_for(child);
    const std::string left = read_file(path);
    REQUIRE(left == expected.substr(0, left.size()));
    if (left.back() != '\n') ++torn;
    RowsFile file(path, "row,text");
    for (std::size_t row = file.rows(); row < rows; ++row) file.append(line(row), 1);
    REQUIRE(read_file(path) == expected);
  }
  CHECK(torn > 0);  // otherwise no kill hit a write
}

TEST_CASE("an interrupt ends a study cleanly, and it goes on", "[cases][study]") {
  const ScratchFolder scratch;
  for (const int signal : {SIGINT, SIGTERM}) {
    const auto out = scratch.path() / std::to_string(signal);
    const pid_t child = start([&] { return make_toy_study(out, 20'000, 100us); });
    wait_for_rows(out / "rows.csv.part");
    kill(child, signal);
    CHECK(wait_for(child).status == stopped);
    const std::string left = read_file(out / "rows.csv.part");
    CHECK(left.back() == '\n');
    CHECK(left == toy_file(20'000).substr(0, left.size()));
    CHECK(wait_for(start([&] { return make_toy_study(out, 20'000, 0us); })).status == complete);
    CHECK(read_file(out / "rows.csv") == toy_file(20'000));
  }
}

TEST_CASE("a second interrupt ends the process at once", "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  const pid_t child = start([&] {
    Ranks alone;
    StudyFolder folder(out, toy_study(50'000), toy_heading);
    auto work = toy_work(1, 500us);
    work.block = [](std::size_t row) { return row < 50 ? 50 : 50'000; };  // the last block takes half a minute
    return make_missing_rows(&folder, work, alone).complete ? complete : stopped;
  });
  wait_for_rows(out / "rows.csv.part");
  kill(child, SIGINT);
  std::this_thread::sleep_for(50ms);
  kill(child, SIGTERM);
  CHECK(wait_for(child).signal == SIGTERM);
}

TEST_CASE("signals are as before once long work is over", "[cases][study]") {
  const pid_t child = start([] {
    {
      const Interrupt interrupt;
      std::raise(SIGTERM);
      if (!interrupt.asked()) return broken;
    }
    const Interrupt again;
    return again.asked() ? broken : complete;
  });
  CHECK(wait_for(child).status == complete);
  const pid_t other = start([] {
    { const Interrupt interrupt; }
    std::raise(SIGTERM);
    return complete;
  });
  CHECK(wait_for(other).signal == SIGTERM);
}

TEST_CASE("a study that met a full disk says so and goes on once there is room", "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  {
    const SmallDisk disk(100'000);
    CHECK_THROWS_WITH(make_toy_study(out, 5'000, 0us), Catch::Contains("room on the disk"));
  }
  const std::string left = read_file(out / "rows.csv.part");
  CHECK(left.back() == '\n');
  CHECK(left == toy_file(5'000).substr(0, left.size()));
  CHECK(make_toy_study(out, 5'000, 0us) == complete);
  CHECK(read_file(out / "rows.csv") == toy_file(5'000));
}
