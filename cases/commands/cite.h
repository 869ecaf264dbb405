// gapstrain cite: how to cite the program, and the published sources of its method.
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_cite(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
