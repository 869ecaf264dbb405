#include "cases/commands/page_flag.h"

#include <CLI/CLI.hpp>

namespace gapstrain::cases {

void add_page_flag(CLI::App& command, bool& page) {
  command.add_flag(
      "--page", page,
      "Write page.html as well: the report as one file that opens offline, in which screws, loads and "
      "steps can be changed and are solved again");
}

}  // namespace gapstrain::cases
