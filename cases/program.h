// The command line as a whole.
#pragma once

#include "cases/status.h"

namespace gapstrain::cases {

// Runs the command the arguments name. Every fault ends as a sentence on stderr and a status.
Status run_program(int argc, const char* const* argv);

}  // namespace gapstrain::cases
