#include "cases/study/crew.h"
#include "cases/study/row_window.h"
#include "tests/cases/study/toy_worker.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <stdexcept>

using namespace gapstrain::cases;
using namespace gapstrain::tests;
using namespace std::chrono_literals;

namespace {

// A worker from a function.
struct FreeWorker : Worker {
  using Make = std::function<std::string(std::size_t, std::size_t)>;
  FreeWorker(Make asked_make, std::atomic<int>& counter) : do_make(std::move(asked_make)), alive(counter) {
    ++alive;
  }
  ~FreeWorker() override { --alive; }
  std::string make(std::size_t first, std::size_t count) override { return do_make(first, count); }
  Make do_make;
  std::atomic<int>& alive;
};

std::string toy_lines(std::size_t first, std::size_t count) { return ToyWorker().make(first, count); }

// What is written, and whether each call was of whole blocks in order.
struct Written {
  std::string text = toy_heading + '\n';
  std::size_t rows = 0;
  void operator()(std::string_view lines, std::size_t count) {
    text += lines;
    rows += count;
  }
};

const auto never = [] { return false; };

}  // namespace

TEST_CASE("rows are the same bytes with any number of threads", "[cases][study]") {
  Ranks alone;
  const std::string expected = toy_file(1'000);
  for (const std::size_t threads : {1, 2, 4, 13}) {
    Written written;
    const Work work{0, 1'000, toy_block, [] { return std::make_unique<ToyWorker>(5us); }};
    const auto outcome = make_rows(work, threads, alone, std::ref(written), never);
    CHECK(outcome.complete);
    CHECK(outcome.rows == 1'000);
    CHECK(written.text == expected);
  }
}

TEST_CASE("rows are made from the first missing one on, and none when none is missing", "[cases][study]") {
  Ranks alone;
  Written written;
  const Hire hire = [] { return std::make_unique<ToyWorker>(); };
  CHECK(make_rows({0, 333, toy_block, hire}, 3, alone, std::ref(written), never).complete);
  const auto outcome = make_rows({333, 500, toy_block, hire}, 2, alone, std::ref(written), never);
  CHECK(outcome.rows == 167);
  CHECK(written.text == toy_file(500));
  const Hire nobody = []() -> std::unique_ptr<Worker> { throw std::logic_error("nobody is needed"); };
  CHECK(make_rows({500, 500, toy_block, nobody}, 2, alone, std::ref(written), never).complete);
  CHECK(written.rows == 500);
}

TEST_CASE("no more blocks are out or held back than allowed, however slow one is", "[cases][study]") {
  Ranks alone;
  std::atomic<std::size_t> begun = 0, written = 0, most = 0, asked = 0;
  std::atomic<int> alive = 0;
  const auto make = [&](std::size_t first, std::size_t count) {
    const std::size_t held = ++begun - written;
    for (std::size_t seen = most; held > seen && !most.compare_exchange_weak(seen, held);) {
    }
    if (first == 0) {  // the others get as far as they can, and are offered more
      while (begun < 7) std::this_thread::sleep_for(1ms);
      const std::size_t before = asked;
      while (asked < before + 3) std::this_thread::sleep_for(1ms);
    }
    return toy_lines(first, count);
  };
  const Hire hire = [&] { return std::make_unique<FreeWorker>(make, alive); };
  const Work work{0, 2'000, [](std::size_t) { return 10; }, hire, 7};
  const auto count = [&](std::string_view, std::size_t) { ++written; };
  const auto stop = [&] {  // asked whenever blocks are handed out
    ++asked;
    return false;
  };
  CHECK(make_rows(work, 3, alone, count, stop).complete);
  CHECK(most == 7);
  CHECK(written == 200);
}

TEST_CASE("a stop leaves whole blocks in order, from which another run goes on", "[cases][study]") {
  Ranks alone;
  Written written;
  const Work work{0, 5'000, toy_block, [] { return std::make_unique<ToyWorker>(20us); }};
  const auto stop = [&] { return written.rows > 700; };
  const auto outcome = make_rows(work, 4, alone, std::ref(written), stop);
  CHECK_FALSE(outcome.complete);
  CHECK(outcome.rows == written.rows);
  CHECK(written.rows > 700);
  CHECK(written.rows < 2'000);
  CHECK(written.text == toy_file(written.rows));
  Work rest = work;
  rest.first = written.rows;
  CHECK(make_rows(rest, 4, alone, std::ref(written), never).complete);
  CHECK(written.text == toy_file(5'000));
}

TEST_CASE("a stop is heard while nothing is made", "[cases][study]") {
  Ranks alone;
  std::atomic<int> alive = 0;
  std::atomic<bool> stopped = false;
  const auto make = [&](std::size_t first, std::size_t count) {
    while (!stopped) std::this_thread::sleep_for(1ms);
    return toy_lines(first, count);
  };
  const Hire hire = [&] { return std::make_unique<FreeWorker>(make, alive); };
  const auto stop = [&, asked = 0]() mutable { return stopped = ++asked > 2; };
  Written written;
  const auto outcome = make_rows({0, 100, [](std::size_t) { return 1; }, hire}, 2, alone, std::ref(written), stop);
  CHECK_FALSE(outcome.complete);
  CHECK(outcome.rows <= 2);  // what the two threads had begun
}

TEST_CASE("what a worker throws ends the run and comes out once all threads have ended", "[cases][study]") {
  Ranks alone;
  std::atomic<int> alive = 0;
  const auto make = [](std::size_t first, std::size_t count) {
    if (first + count > 600) throw std::out_of_range("row 600");
    return toy_lines(first, count);
  };
  const Hire hire = [&] { return std::make_unique<FreeWorker>(make, alive); };
  Written written;
  CHECK_THROWS_AS(make_rows({0, 5'000, toy_block, hire}, 4, alone, std::ref(written), never), std::out_of_range);
  CHECK(alive == 0);
  CHECK(written.rows <= 600);
  CHECK(written.text == toy_file(written.rows));
}

TEST_CASE("so does what hiring or writing throws, and a worker that makes lines too many or too few",
          "[cases][study]") {
  Ranks alone;
  std::atomic<int> alive = 0;
  const auto hire = [&](const FreeWorker::Make& make) -> Hire {
    return [&alive, make] { return std::make_unique<FreeWorker>(make, alive); };
  };
  const auto run = [&](const Hire& hired, const WriteRows& write) {
    return make_rows({0, 500, toy_block, hired}, 3, alone, write, never);
  };
  Written written;
  const Hire nobody = []() -> std::unique_ptr<Worker> { throw std::domain_error("nobody wants to"); };
  CHECK_THROWS_AS(run(nobody, std::ref(written)), std::domain_error);
  CHECK_THROWS_AS(run(hire(toy_lines), [](std::string_view, std::size_t) { throw std::domain_error("no room"); }),
                  std::domain_error);
  for (const std::string lines : {"", "torn", "1\n2\n", "1\n2"}) {
    const auto make = [&](std::size_t first, std::size_t count) {
      return count == 1 ? lines : toy_lines(first, count);
    };
    CHECK_THROWS_AS(run(hire(make), std::ref(written)), std::logic_error);
  }
  CHECK(alive == 0);
}

TEST_CASE("a window hands out in order, up to its bound, and gives back in order", "[cases][study]") {
  RowWindow window(10, 20, [](std::size_t) { return 4; });
  const auto a = window.hand_out(2), b = window.hand_out(2);
  REQUIRE((a && b));
  CHECK((a->first == 10 && a->count == 4 && b->first == 14));
  CHECK_FALSE(window.hand_out(2));
  window.take_in({*b, "1\n2\n3\n4\n"});
  CHECK_FALSE(window.next());
  CHECK_FALSE(window.hand_out(2));  // what is held back counts
  window.take_in({*a, "a\nb\nc\nd\n"});
  CHECK(window.next()->lines == "a\nb\nc\nd\n");
  CHECK(window.next()->block.first == 14);
  const auto last = window.hand_out(2);
  CHECK(last->count == 2);  // cut off at the end
  CHECK_FALSE(window.over());
  window.take_in({*last, "x\ny\n"});
  CHECK(window.over());
}
