// gapstrain analyse: a case file in, findings out.
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_analyse(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
