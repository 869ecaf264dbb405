#include "cases/progress/interrupt.h"

#include <atomic>

namespace gapstrain::cases {

namespace {

std::atomic<bool> noted = false;  // a signal may arrive in any thread
static_assert(std::atomic<bool>::is_always_lock_free);

extern "C" void note_signal(int number) {
  if (!noted.exchange(true)) return;
  std::signal(number, SIG_DFL);
  std::raise(number);
}

}  // namespace

Interrupt::Interrupt() {
  noted = false;
  struct sigaction note {};
  note.sa_handler = note_signal;
  note.sa_flags = SA_RESTART;
  sigemptyset(&note.sa_mask);
  sigaction(SIGINT, &note, &former_int_);
  sigaction(SIGTERM, &note, &former_term_);
}

Interrupt::~Interrupt() {
  sigaction(SIGINT, &former_int_, nullptr);
  sigaction(SIGTERM, &former_term_, nullptr);
}

bool Interrupt::asked() const { return noted; }

}  // namespace gapstrain::cases
