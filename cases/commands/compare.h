// gapstrain compare: several constructs for one patient against each other.
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_compare(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
