// gapstrain page: a case as one HTML file with the engine in it.
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_page(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
