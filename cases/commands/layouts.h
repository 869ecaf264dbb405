// gapstrain layouts: every admissible choice of screws on a case's plate, solved and ranked.
#pragma once

#include "cases/commands/command.h"
#include "cases/study/ranks.h"

namespace gapstrain::cases {

void add_layouts(CLI::App& program, Job& job, Ranks& ranks);

}  // namespace gapstrain::cases
