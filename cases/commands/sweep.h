// gapstrain sweep: a case whose values are varied, row by row.
#pragma once

#include "cases/commands/command.h"
#include "cases/study/ranks.h"

namespace gapstrain::cases {

void add_sweep(CLI::App& program, Job& job, Ranks& ranks);

}  // namespace gapstrain::cases
