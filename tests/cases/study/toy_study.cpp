// A study of toy rows as a program of its own, to be started under mpirun:
//   toy_study OUT ROWS THREADS MICROSECONDS [throw|kill RANK ROW]
// The named rank breaks down in the first block it makes that ends after the named row.
#include "tests/cases/study/toy_worker.h"

#include <fmt/format.h>

#include <csignal>
#include <cstdlib>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

using namespace gapstrain;

struct Breakdown {
  std::string kind;
  std::size_t row = 0;
};

struct BreakingWorker : tests::ToyWorker {
  BreakingWorker(std::chrono::microseconds asked_cost, const Breakdown& planned)
      : ToyWorker(asked_cost), breakdown(planned) {}
  std::string make(std::size_t first, std::size_t count) override {
    if (first + count > breakdown.row && breakdown.kind == "kill") std::raise(SIGKILL);
    if (first + count > breakdown.row && breakdown.kind == "throw") throw std::runtime_error("the toy broke");
    return ToyWorker::make(first, count);
  }
  Breakdown breakdown;
};

int run(const std::vector<std::string>& arguments, cases::Ranks& ranks) {
  const auto number = [&](std::size_t i) { return static_cast<std::size_t>(std::stoul(arguments.at(i))); };
  const std::chrono::microseconds cost(number(3));
  Breakdown breakdown;
  if (arguments.size() > 4 && number(5) == static_cast<std::size_t>(ranks.rank()))
    breakdown = {arguments[4], number(6)};
  auto work = tests::toy_work(number(2), cost);
  work.hire = [=] { return std::make_unique<BreakingWorker>(cost, breakdown); };
  cases::Progress progress({}, ranks.rank() != 0);
  std::optional<cases::StudyFolder> folder;
  if (ranks.rank() == 0) folder.emplace(arguments.at(0), tests::toy_study(number(1)), tests::toy_heading);
  const auto outcome = cases::make_missing_rows(folder ? &*folder : nullptr, work, ranks, progress);
  fmt::print("rank {} of {}: {} rows, {}\n", ranks.rank(), ranks.size(), outcome.rows,
             outcome.complete ? "complete" : "stopped");
  return outcome.complete ? 0 : 3;
}

}  // namespace

int main(int argc, char** argv) {
  std::optional<cases::Ranks> ranks;
  try {
    ranks.emplace();
  } catch (const std::exception& fault) {
    fmt::print(stderr, "{}\n", fault.what());
    return 2;
  }
  try {
    return run({argv + 1, argv + argc}, *ranks);
  } catch (const std::exception& fault) {
    ranks->give_up(2, fault.what());
    return 2;
  }
}
