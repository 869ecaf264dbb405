// Scripts with which shells complete gapstrain's commands, options and files.
#pragma once

#include "cases/help/command_tree.h"

namespace gapstrain::cases {

std::string bash_completion(const ProgramHelp& program);
std::string zsh_completion(const ProgramHelp& program);
std::string fish_completion(const ProgramHelp& program);

}  // namespace gapstrain::cases
