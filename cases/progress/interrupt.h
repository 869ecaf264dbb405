// Ctrl-C and a batch system's request to end, as a question that long work asks.
#pragma once

#include <csignal>

namespace gapstrain::cases {

// Long work was asked to end and did so at its next stage. No std::exception, so that nothing takes it for a fault
// of a construct.
struct Interrupted {};

// While it lives, the first SIGINT or SIGTERM is noted; a second one ends the process at once, as it would
// without. One at a time.
class Interrupt {
 public:
  Interrupt();
  ~Interrupt();
  Interrupt(const Interrupt&) = delete;
  Interrupt& operator=(const Interrupt&) = delete;

  bool asked() const;

 private:
  struct sigaction former_int_ = {};
  struct sigaction former_term_ = {};
};

}  // namespace gapstrain::cases
