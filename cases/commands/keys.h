// gapstrain keys: every key of a case file, of a study file or of findings.json, with its meaning.
#pragma once

#include "cases/commands/command.h"

namespace gapstrain::cases {

void add_keys(CLI::App& program, Job& job);

}  // namespace gapstrain::cases
