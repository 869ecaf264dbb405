// gapstrain merge: the parts of a study as one, with its charts.
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_merge(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
