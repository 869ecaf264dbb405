// The option --page of commands that write a folder.
#pragma once

namespace CLI {
class App;
}

namespace gapstrain::cases {

void add_page_flag(CLI::App& command, bool& page);

}  // namespace gapstrain::cases
