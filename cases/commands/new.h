// gapstrain new: a case to begin from, out of what is known of a patient.
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_new(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
