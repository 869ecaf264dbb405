// gapstrain man: the manual page, as roff.
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_man(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
