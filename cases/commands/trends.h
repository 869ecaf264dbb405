// gapstrain trends: published bench tests rebuilt as models, and whether the models say what the papers say.
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_trends(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
