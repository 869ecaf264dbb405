// gapstrain completion: a script with which a shell completes commands, options and files.
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_completion(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
