#include "cases/study/progress.h"

#include <fcntl.h>
#include <unistd.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <functional>
#include <thread>

using namespace gapstrain::cases;
using namespace std::chrono_literals;

namespace {

// What `job` writes to stderr while that is `file`; `reader` is where it comes out.
std::string written_to(int file, int reader, const std::function<void()>& job) {
  const int former = dup(STDERR_FILENO);
  dup2(file, STDERR_FILENO);
  job();
  dup2(former, STDERR_FILENO);
  close(former);
  fcntl(reader, F_SETFL, O_NONBLOCK);
  std::string text, piece(4096, '\0');
  for (ssize_t got = 0; (got = read(reader, piece.data(), piece.size())) > 0;)
    text.append(piece, 0, static_cast<std::size_t>(got));
  return text;
}

void make_ten_thousand(bool quiet) {
  RowProgress progress(0, 10'000, quiet);
  const auto start = std::chrono::steady_clock::now();
  for (int i = 0; i < 10'000; ++i) {
    if (i % 100 == 0) std::this_thread::sleep_until(start + i * 60us);
    progress.add(1);
  }
}

}  // namespace

TEST_CASE("progress is told as rows, rate and time left", "[cases][study]") {
  CHECK(progress_line(12'034, 16'384, 5'200, 1.) == "12 034 of 16 384 rows, 5 200 a second, 1 s left");
  CHECK(progress_line(1'000'000, 1'000'000, 1'000, 10.) == "1 000 000 of 1 000 000 rows, 100 a second, 0 s left");
  CHECK(progress_line(40, 1'000, 40, 100.) == "40 of 1 000 rows, 0.4 a second, 40 min left");
  CHECK(progress_line(1, 1'000'000, 1, 1.) == "1 of 1 000 000 rows, 1 a second, 278 h left");
  CHECK(progress_line(7'000, 16'384, 0, 3.) == "7 000 of 16 384 rows");
}

TEST_CASE("rows of earlier runs do not count into the rate", "[cases][study]") {
  CHECK(progress_line(900'000, 1'000'000, 500, 10.) == "900 000 of 1 000 000 rows, 50 a second, 33 min left");
}

TEST_CASE("progress is shown some times a second on a terminal, ends its line, and is silent elsewhere",
          "[cases][study]") {
  int ends[2] = {};
  REQUIRE(pipe(ends) == 0);
  CHECK(written_to(ends[1], ends[0], [] { make_ten_thousand(false); }).empty());

  const int master = posix_openpt(O_RDWR | O_NOCTTY);
  REQUIRE(master >= 0);
  REQUIRE(grantpt(master) == 0);
  REQUIRE(unlockpt(master) == 0);
  const int terminal = open(ptsname(master), O_RDWR | O_NOCTTY);
  REQUIRE(terminal >= 0);
  CHECK(written_to(terminal, master, [] { make_ten_thousand(true); }).empty());
  const std::string text = written_to(terminal, master, [] { make_ten_thousand(false); });
  const auto lines = std::count(text.begin(), text.end(), 'f');  // of "of"
  CHECK(lines >= 2);
  CHECK(lines <= 8);  // 0.6 s, on a busy machine somewhat longer
  CHECK_THAT(text, Catch::Contains("10 000 of 10 000 rows"));
  CHECK(text.back() == '\n');
  for (const int file : {ends[0], ends[1], terminal, master}) close(file);
}
