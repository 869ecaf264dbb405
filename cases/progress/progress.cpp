#include "cases/progress/progress.h"

#include "mesh/gmsh_session.h"

#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>

namespace gapstrain::cases {

namespace {

constexpr auto interval = std::chrono::milliseconds(250);

ProgressOutlet outlet_on_stderr() {
  if (isatty(STDERR_FILENO) == 0) return {ProgressOutlet::Kind::log, 0};
  winsize window = {};
  const bool known = ioctl(STDERR_FILENO, TIOCGWINSZ, &window) == 0 && window.ws_col > 0;
  return {ProgressOutlet::Kind::terminal, known ? window.ws_col : 80U};
}

void write_now(const std::string& text) {
  if (text.empty()) return;
  fmt::print(stderr, "{}", text);
  std::fflush(stderr);
}

}  // namespace

Progress::Progress(std::vector<Stage> plan, bool silent) : left_(std::move(plan)), outlet_(outlet_on_stderr()) {
  if (!silent) teller_ = std::jthread([this](std::stop_token stop) { show_until(std::move(stop)); });
}

Progress::~Progress() { end(); }

double Progress::now() const { return std::chrono::duration<double>(Clock::now() - start_).count(); }

void Progress::begin(const std::string& stage, const std::string& of) {
  if (interrupted()) throw Interrupted{};
  tell(stage, of);
}

void Progress::tell(const std::string& stage, const std::string& of) {
  const std::scoped_lock lock(mutex_);
  begun_ = now();
  left_.begin(stage, begun_);
  stage_ = of.empty() ? stage : of + ": " + stage;
  count_.reset();
}

void Progress::reach(double share) {
  const std::scoped_lock lock(mutex_);
  left_.reach(share, now());
}

std::function<void(const std::string&)> Progress::stages(const std::string& of) {
  return [this, of](const std::string& stage) { begin(stage, of); };
}

void Progress::count(std::size_t done, std::size_t all, std::size_t made, std::size_t to_make) {
  const std::scoped_lock lock(mutex_);
  const double time = now();
  count_ = Count{done, all, made, time - begun_};
  if (to_make > 0) left_.reach(static_cast<double>(made) / static_cast<double>(to_make), time);
}

void Progress::say(const std::string& line) {
  const std::scoped_lock lock(mutex_);
  write_now(outlet_.clear() + line + '\n');
}

void Progress::end() {
  if (teller_.joinable()) {
    teller_.request_stop();
    teller_.join();
  }
  const std::scoped_lock lock(mutex_);
  write_now(outlet_.clear());
}

std::string Progress::text(double now) const {
  if (interrupted()) return "interrupted: ending after this stage; a second interrupt ends at once";
  std::string told = count_ ? rows_text(count_->done, count_->all, count_->made, count_->seconds) : stage_;
  if (const auto left = left_.at(now)) told += ", " + time_left_text(*left);
  return told;
}

void Progress::show_until(std::stop_token stop) {
  std::unique_lock lock(mutex_);
  while (true) {
    ending_.wait_for(lock, stop, interval, [] { return false; });
    if (stop.stop_requested()) return;
    lock.unlock();
    const mesh::BesideMeshing no_meshing_meanwhile;  // what is told takes memory
    lock.lock();
    if (!stage_.empty()) write_now(outlet_.show(text(now()), now()));
  }
}

}  // namespace gapstrain::cases
