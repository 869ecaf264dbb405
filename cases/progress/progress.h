// Long work's side of a conversation: it tells how far it is and how long it will take, and hears when to end.
#pragma once

#include "cases/progress/interrupt.h"
#include "cases/progress/progress_text.h"
#include "cases/progress/time_left.h"

#include <chrono>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <thread>

namespace gapstrain::cases {

// Tells it on stderr, some times a second on one line of a terminal, else once a minute; nothing when `silent`.
// One at a time. Its functions may be called from any thread.
class Progress {
 public:
  Progress(std::vector<Stage> plan, bool silent);
  // Takes its line away.
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  // What is done now.
  // @param stage begins with the name of one in the plan, or leaves the time left as it was
  // @param of what it is a stage of, told before it; may be empty
  void tell(const std::string& stage, const std::string& of = {});

  // The same, and the place where work ends that was asked to. @throw Interrupted
  void begin(const std::string& stage, const std::string& of = {});

  // @param share of the stage under way that is done, from 0 to 1
  void reach(double share);

  // `begin` as a function.
  std::function<void(const std::string& stage)> stages(const std::string& of = {});

  // Rows of the stage under way. @param made of the `done` ones by this run, of `to_make`
  void count(std::size_t done, std::size_t all, std::size_t made, std::size_t to_make);

  // SIGINT or SIGTERM came.
  bool interrupted() const { return interrupt_.asked(); }

  // A line for stderr that does not run into the one under way.
  void say(const std::string& line);

  // Nothing is told from here on. More than once does no harm.
  void end();

 private:
  using Clock = std::chrono::steady_clock;
  double now() const;
  std::string text(double now) const;
  void show_until(std::stop_token stop);

  Interrupt interrupt_;
  Clock::time_point start_ = Clock::now();
  mutable std::mutex mutex_;  // of all below but the thread
  TimeLeft left_;
  std::string stage_;
  double begun_ = 0.0;
  struct Count {
    std::size_t done, all, made;
    double seconds;
  };
  std::optional<Count> count_;
  ProgressOutlet outlet_;
  std::condition_variable_any ending_;
  std::jthread teller_;
};

}  // namespace gapstrain::cases
