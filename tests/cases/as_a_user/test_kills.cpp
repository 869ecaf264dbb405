// Runs that are ended from outside, in a process of their own. What they are ended at is a state of theirs, never
// a time: a run holds before a given row, so that it cannot be over before it is ended, however busy the machine
// is.
#include "cases/progress/interrupt.h"
#include "tests/cases/as_a_user/run_program.h"
#include "tests/cases/as_a_user/small_disk.h"
#include "tests/cases/study/toy_worker.h"

#include <sys/wait.h>
#include <unistd.h>
#include <catch2/catch.hpp>

#include <algorithm>
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

bool has_ended(pid_t child) {
  siginfo_t end = {};
  return waitid(P_PID, static_cast<id_t>(child), &end, WEXITED | WNOHANG | WNOWAIT) == 0 && end.si_pid == child;
}

// Makes no row from `held` on before a file `release` is there.
struct HoldingWorker : ToyWorker {
  HoldingWorker(std::size_t asked_held, fs::path asked_release)
      : held(asked_held), release(std::move(asked_release)) {}
  std::string make(std::size_t first, std::size_t count) override {
    while (first + count > held && !fs::exists(release)) std::this_thread::sleep_for(1ms);
    return ToyWorker::make(first, count);
  }
  std::size_t held;
  fs::path release;
};

int make_toy_study(const fs::path& out, std::size_t rows, const Hire& hire) {
  Ranks alone;
  StudyFolder folder(out, toy_study(rows), toy_heading);
  return make_rows_silently(&folder, {toy_block, hire, 2}, alone).complete ? complete : stopped;
}

int make_toy_study(const fs::path& out, std::size_t rows) {
  return make_toy_study(out, rows, [] { return std::make_unique<ToyWorker>(); });
}

int make_toy_study_held(const fs::path& out, std::size_t rows, std::size_t held) {
  return make_toy_study(out, rows, [&] { return std::make_unique<HoldingWorker>(held, out / "release"); });
}

std::size_t size_of(const fs::path& file) {
  std::error_code missing;
  const auto size = fs::file_size(file, missing);
  return missing ? 0 : static_cast<std::size_t>(size);
}

// Until the file has so many bytes. @returns false if the child ended before
bool wait_for_bytes(pid_t child, const fs::path& file, std::size_t bytes) {
  while (size_of(file) < bytes) {
    if (has_ended(child)) return false;
    std::this_thread::sleep_for(50us);
  }
  return true;
}

// Of a whole file, up to the row.
std::size_t bytes_before(std::size_t row) { return toy_file(row).size(); }

}  // namespace

TEST_CASE("a study killed thirty times among its rows ends as if it had never been", "[cases][study]") {
  constexpr std::size_t rows = 20'000, rows_a_kill = 600, longest_block = 23;
  const std::string expected = toy_file(rows);
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out", part = out / "rows.csv.part";
  std::mt19937 random(20'260);
  for (std::size_t kill_number = 0; kill_number < 30; ++kill_number) {
    const std::size_t before = size_of(part);
    const auto rows_before = static_cast<std::size_t>(
        std::count(expected.begin(), expected.begin() + static_cast<std::ptrdiff_t>(before), '\n'));
    const std::size_t held = rows_before + rows_a_kill;
    // Anywhere among the rows that it makes before it holds, and sometimes before the first of them.
    const std::size_t reached = bytes_before(held - longest_block);
    const std::size_t asked = kill_number % 5 == 0 ? 0 : before + 1 + random() % (reached - before);
    const pid_t child = start([&] { return make_toy_study_held(out, rows, held); });
    REQUIRE(wait_for_bytes(child, part, asked));
    kill(child, SIGKILL);
    REQUIRE(wait_for(child).signal == SIGKILL);
    const std::string left = fs::exists(part) ? read_file(part) : "";
    REQUIRE(left.size() >= asked);  // the kill hit a run that had made these rows, and not all
    REQUIRE(left.size() < expected.size());
    REQUIRE(left == expected.substr(0, left.size()));
  }
  CHECK(wait_for(start([&] { return make_toy_study(out, rows); })).status == complete);
  CHECK(read_file(out / "rows.csv") == expected);
  CHECK_FALSE(fs::exists(part));
}

TEST_CASE("a study killed within a write ends as if it had never been", "[cases][study]") {
  // A file that may not grow further: the kernel writes up to there, and kills at the next call.
  constexpr std::size_t rows = 60;
  const auto line = [](std::size_t row) { return std::to_string(row) + ',' + std::string(10'000, 'x') + '\n'; };
  std::string expected = "row,text\n";
  for (std::size_t row = 0; row < rows; ++row) expected += line(row);
  const std::size_t heading = expected.find('\n') + 1;
  const ScratchFolder scratch;
  const auto path = scratch.path() / "rows";
  std::mt19937 random(20'261);
  for (int kill_number = 0; kill_number < 30; ++kill_number) {
    fs::remove(path);
    const std::size_t cut = heading + random() % (expected.size() - heading);
    const pid_t child = start([&] {
      const SmallDisk disk(cut);
      std::signal(SIGXFSZ, SIG_DFL);
      const rlimit no_core{};
      setrlimit(RLIMIT_CORE, &no_core);
      RowsFile(path, "row,text").append(expected.substr(heading), rows);
      return complete;
    });
    REQUIRE(wait_for(child).signal == SIGXFSZ);
    REQUIRE(read_file(path) == expected.substr(0, cut));
    RowsFile file(path, "row,text");
    for (std::size_t row = file.rows(); row < rows; ++row) file.append(line(row), 1);
    REQUIRE(read_file(path) == expected);
  }
}

TEST_CASE("an interrupt ends a study cleanly, and it goes on", "[cases][study]") {
  constexpr std::size_t rows = 20'000;
  const ScratchFolder scratch;
  for (const int signal : {SIGINT, SIGTERM}) {
    const auto out = scratch.path() / std::to_string(signal), part = out / "rows.csv.part";
    const pid_t child = start([&] { return make_toy_study_held(out, rows, 100); });
    REQUIRE(wait_for_bytes(child, part, 1'000));
    kill(child, signal);
    write_file(out / "release", "");  // without the signal it would now be made to its end
    CHECK(wait_for(child).status == stopped);
    fs::remove(out / "release");
    const std::string left = read_file(part);
    CHECK(left.back() == '\n');
    CHECK(left == toy_file(rows).substr(0, left.size()));
    CHECK(wait_for(start([&] { return make_toy_study(out, rows); })).status == complete);
    CHECK(read_file(out / "rows.csv") == toy_file(rows));
  }
}

TEST_CASE("a second interrupt ends the process at once", "[cases][study]") {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  const pid_t child = start([&] { return make_toy_study_held(out, 50'000, 100); });  // held for good
  REQUIRE(wait_for_bytes(child, out / "rows.csv.part", 1'000));
  kill(child, SIGINT);
  kill(child, SIGTERM);
  const int signal = wait_for(child).signal;  // whichever came second
  CHECK((signal == SIGINT || signal == SIGTERM));
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
    CHECK_THROWS_WITH(make_toy_study(out, 5'000), Catch::Contains("room on the disk"));
  }
  const std::string left = read_file(out / "rows.csv.part");
  CHECK(left.back() == '\n');
  CHECK(left == toy_file(5'000).substr(0, left.size()));
  CHECK(make_toy_study(out, 5'000) == complete);
  CHECK(read_file(out / "rows.csv") == toy_file(5'000));
}
