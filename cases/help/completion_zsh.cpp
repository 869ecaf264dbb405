#include "cases/help/completion.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

// Inside single quotes, and without what _arguments and _describe read as signs of their own.
std::string zsh_quoted(const std::string& text) {
  std::string safe;
  for (const char c : text) {
    if (c == '\'')
      safe += "'\\''";
    else if (c == ':' || c == '[' || c == ']' || c == '\\')
      safe.append("\\").push_back(c);
    else
      safe.push_back(c);
  }
  return safe;
}

std::string action(const OptionHelp& option) {
  switch (option.kind) {
    case ValueKind::toml_file:
      return "_files -g \"*.toml\"";
    case ValueKind::file:
      return "_files";
    case ValueKind::folder:
      return "_files -/";
    case ValueKind::words:
      return fmt::format("({})", fmt::join(option.words, " "));
    default:
      return " ";
  }
}

std::string specification(const OptionHelp& option) {
  const std::string value = fmt::format(":{}:{}", zsh_quoted(option.value), action(option));
  if (option.is_argument) return fmt::format("'{}{}'", option.is_repeated ? "*" : "", value);
  return fmt::format("'{}{}[{}]{}'", option.is_repeated ? "*" : "", option.name, zsh_quoted(option.meaning),
                     option.kind == ValueKind::none ? "" : value);
}

std::string specifications(const std::vector<OptionHelp>& options) {
  std::vector<std::string> all;
  for (const auto& option : options) all.push_back(specification(option));
  return fmt::format("{}", fmt::join(all, " \\\n        "));
}

}  // namespace

std::string zsh_completion(const ProgramHelp& program) {
  std::string names, cases;
  for (const auto& command : program.commands) {
    names += fmt::format("    '{}:{}'\n", command.name, zsh_quoted(command.meaning));
    cases += fmt::format("    {})\n      _arguments \\\n        {} ;;\n", command.name,
                         specifications(command.options));
  }
  return fmt::format(R"(#compdef {0}
# Completion of {0} for zsh: save it as _{0} in a folder of $fpath.
_{0}() {{
  local -a commands
  commands=(
{1}  )
  if (( CURRENT == 2 )); then
    _describe command commands
    _arguments \
        {2}
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
{3}  esac
}}
compdef _{0} {0} 2>/dev/null
)",
                     program.name, names, specifications(program.options), cases);
}

}  // namespace gapstrain::cases
