#include "cases/commands/completion.h"

#include "cases/commands/choice.h"
#include "cases/help/completion.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <memory>

namespace gapstrain::cases {

void add_completion(CLI::App& program, Job& job) {
  CLI::App* command = program.add_subcommand(
      "completion", "Print a script with which a shell completes commands, options and files");
  const auto shell = std::make_shared<std::string>();
  take_one_of(*command->add_option("shell", *shell, "The shell")->required(), {"bash", "zsh", "fish"});
  command->footer(
      "For this bash: source <(gapstrain completion bash). Where to keep it: see the script's first lines.");
  command->callback([&program, &job, shell] {
    job = [&program, shell] {
      const ProgramHelp help = describe_program(program);
      fmt::print("{}", *shell == "bash"  ? bash_completion(help)
                       : *shell == "zsh" ? zsh_completion(help)
                                         : fish_completion(help));
      return Status::done;
    };
  });
}

}  // namespace gapstrain::cases
