#include "cases/commands/man.h"

#include "cases/help/manual_page.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

namespace gapstrain::cases {

void add_man(CLI::App& program, Job& job) {
  CLI::App* command = program.add_subcommand("man", "Print the manual page, for man");
  command->footer(
      "To read it: gapstrain man | man -l -\n"
      "To keep it: gapstrain man > ~/.local/share/man/man1/gapstrain.1");
  command->callback([&program, &job] {
    job = [&program] {
      fmt::print("{}", manual_page(describe_program(program)));
      return Status::done;
    };
  });
}

}  // namespace gapstrain::cases
