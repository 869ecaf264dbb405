// gapstrain lesson
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_lesson(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
