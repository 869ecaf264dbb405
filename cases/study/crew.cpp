#include "cases/study/crew.h"

#include "cases/study/row_window.h"

#include <sched.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cstdint>
#include <cstring>
#include <utility>

namespace gapstrain::cases {

namespace {

enum MessageKind : int { request, lines, answer };

// A request: {threads of the rank, whether it was interrupted}. Lines: {first, count}, then the text. An answer:
// {first, count} of a block, or at the end {rows written, 0, whether all}.
using Numbers = std::array<std::uint64_t, 3>;

std::string packed(const Numbers& numbers, std::string_view text = {}) {
  std::string all(sizeof numbers + text.size(), '\0');
  std::memcpy(all.data(), numbers.data(), sizeof numbers);
  std::copy(text.begin(), text.end(), all.begin() + sizeof numbers);
  return all;
}

Numbers numbers_of(const Letter& letter) {
  assert(letter.text.size() >= sizeof(Numbers));
  Numbers numbers;
  std::memcpy(numbers.data(), letter.text.data(), sizeof numbers);
  return numbers;
}

// Alone nothing comes but from the threads, which wake the one who waits; MPI has to be asked.
std::chrono::microseconds patience(const Ranks& ranks) {
  return std::chrono::microseconds(ranks.size() == 1 ? 50'000 : 200);
}

// Rank 0.
class Head {
 public:
  Head(const Work& work, std::size_t threads, Ranks& ranks)
      : work_(work),
        ranks_(ranks),
        window_(work.first, work.end, work.block),
        all_threads_(threads),
        team_(threads, work.hire) {}

  Outcome run(const WriteRows& write, const std::function<bool()>& stop) {
    while (!window_.over()) {
      if (stop() || interrupted_) window_.close(team_.drop_waiting());
      hand_out();
      for (auto& made : team_.collect(patience(ranks_))) window_.take_in(std::move(made));
      read_letters();
      while (const auto made = window_.next()) {
        write(made->lines, made->block.count);
        rows_ += made->block.count;
      }
    }
    const Outcome outcome{rows_, work_.first + rows_ == work_.end};
    dismiss(outcome);
    return outcome;
  }

 private:
  void read_letters() {
    while (auto letter = ranks_.receive()) {
      const auto [first, second, third] = numbers_of(*letter);
      if (letter->kind == lines) {
        letter->text.erase(0, sizeof(Numbers));
        window_.take_in({{first, second}, std::move(letter->text)});
      } else {
        if (third == 0) all_threads_ += first;  // its first request
        interrupted_ = interrupted_ || second != 0;
        asking_.push_back(letter->from);
      }
    }
  }

  void hand_out() {
    const std::size_t most = work_.most_blocks == 0 ? 16 * all_threads_ : work_.most_blocks;
    while (!asking_.empty()) {
      const auto block = window_.hand_out(most);
      if (!block) return;
      ranks_.send(asking_.front(), answer, packed({block->first, block->count}));
      asking_.pop_front();
    }
    while (team_.waiting() < team_.threads()) {
      const auto block = window_.hand_out(most);
      if (!block) return;
      team_.give(*block);
    }
  }

  void dismiss(const Outcome& outcome) {
    for (int left = ranks_.size() - 1; left > 0; std::this_thread::sleep_for(patience(ranks_))) {
      read_letters();
      for (; !asking_.empty(); asking_.pop_front(), --left)
        ranks_.send(asking_.front(), answer, packed({outcome.rows, 0, outcome.complete ? 1U : 0U}));
    }
  }

  const Work& work_;
  Ranks& ranks_;
  RowWindow window_;
  std::size_t all_threads_;  // of all ranks that have asked
  std::deque<int> asking_;   // ranks, in the order of their requests
  std::size_t rows_ = 0;
  bool interrupted_ = false;
  Team team_;
};

// Any other rank: asks for one block ahead of what its threads are at.
Outcome lend_a_hand(const Work& work, std::size_t threads, Ranks& ranks, const std::function<bool()>& stop) {
  Team team(threads, work.hire);
  bool asked = false, told = false;
  for (std::uint64_t requests = 0; true;) {
    const bool interrupted = stop();
    if (!asked && (team.waiting() == 0 || (interrupted && !told))) {
      ranks.send(0, request, packed({threads, interrupted ? 1U : 0U, requests++}));
      asked = true;
      told = interrupted;
    }
    for (auto& made : team.collect(patience(ranks)))
      ranks.send(0, lines, packed({made.block.first, made.block.count}, made.lines));
    while (const auto letter = ranks.receive()) {
      const auto [first, count, complete] = numbers_of(*letter);
      if (count == 0) return {first, complete != 0};
      team.give({first, count});
      asked = false;
    }
  }
}

}  // namespace

std::size_t threads_of_a_rank(std::size_t asked, const Ranks& ranks) {
  if (asked != 0) return asked;
  std::size_t processors = std::thread::hardware_concurrency() / static_cast<unsigned>(ranks.on_this_node());
  cpu_set_t bound;
  if (sched_getaffinity(0, sizeof bound, &bound) == 0)
    processors = std::min(processors, static_cast<std::size_t>(CPU_COUNT(&bound)));
  return std::max<std::size_t>(processors, 1);
}

Outcome make_rows(const Work& work, std::size_t threads, Ranks& ranks, const WriteRows& write,
                  const std::function<bool()>& stop) {
  const Outcome outcome =
      ranks.rank() == 0 ? Head(work, threads, ranks).run(write, stop) : lend_a_hand(work, threads, ranks, stop);
  ranks.wait_for_all();  // else a rank's first request of a next call could reach this one
  return outcome;
}

}  // namespace gapstrain::cases
