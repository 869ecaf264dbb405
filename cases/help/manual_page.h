// The manual page.
#pragma once

#include "cases/help/command_tree.h"

namespace gapstrain::cases {

// As roff with the macros of man(7).
std::string manual_page(const ProgramHelp& program);

}  // namespace gapstrain::cases
