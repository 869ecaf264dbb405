#include "cases/help/completion.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

std::string fish_quoted(const std::string& text) {
  std::string safe = "'";
  for (const char c : text) {
    if (c == '\'' || c == '\\') safe += '\\';
    safe += c;
  }
  return safe + '\'';
}

// What is offered for a value; empty: nothing.
std::string fish_offer(const OptionHelp& option) {
  switch (option.kind) {
    case ValueKind::toml_file:
      return " -a '(__fish_complete_suffix .toml)'";
    case ValueKind::file:
      return " -F";
    case ValueKind::folder:
      return " -a '(__fish_complete_directories)'";
    case ValueKind::words:
      return fmt::format(" -a '{}'", fmt::join(option.words, " "));
    default:
      return "";
  }
}

// @param when the condition under which it is offered
std::string line(const ProgramHelp& program, const std::string& when, const OptionHelp& option) {
  const std::string start = fmt::format("complete -c {} -n '{}'", program.name, when);
  if (option.is_argument) return fmt::format("{}{}\n", start, fish_offer(option));
  return fmt::format("{} -l {}{}{} -d {}\n", start, option.name.substr(2),
                     option.kind == ValueKind::none ? "" : " -r", fish_offer(option), fish_quoted(option.meaning));
}

}  // namespace

std::string fish_completion(const ProgramHelp& program) {
  const std::string no_command = "__fish_use_subcommand";
  std::string script = fmt::format(
      "# Completion of {0} for fish: {0} completion fish > ~/.config/fish/completions/{0}.fish\n"
      "complete -c {0} -f\n",
      program.name);
  for (const auto& option : program.options) script += line(program, no_command, option);
  for (const auto& command : program.commands) {
    script += fmt::format("complete -c {} -n {} -a {} -d {}\n", program.name, no_command, command.name,
                          fish_quoted(command.meaning));
    for (const auto& option : command.options)
      script += line(program, "__fish_seen_subcommand_from " + command.name, option);
  }
  return script;
}

}  // namespace gapstrain::cases
