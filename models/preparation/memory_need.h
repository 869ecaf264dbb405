// Whether a construct's bodies fit in the memory of this machine, asked before they are meshed.
#pragma once

#include "models/parts/construct.h"

#include <cstddef>
#include <stdexcept>
#include <vector>

namespace gapstrain::models {

// The construct is too fine for this machine; one sentence with what it needs, what there is and what to change.
struct TooLargeError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

struct MemoryNeed {
  double unknowns = 0.0;  // of all bodies together
  double bytes = 0.0;     // at the peak, while bodies are factored and condensed
};

// Within a third, from areas and element sizes, set by measurements (memory_need.cpp). `screws`: all that get
// ports.
MemoryNeed memory_need(const Construct& construct, std::size_t screws);

// What this process may still take, bytes: free memory of the machine, less where a limit is set on the process.
double free_memory();

// @throw TooLargeError if the construct needs more than there is
void require_memory(const Construct& construct, std::size_t screws);

}  // namespace gapstrain::models
