#include "cases/help/completion.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

// The call of `_gapstrain_offer` for a value.
std::string bash_offer(const OptionHelp& option) {
  switch (option.kind) {
    case ValueKind::toml_file:
      return "toml";
    case ValueKind::file:
      return "file";
    case ValueKind::folder:
      return "folder";
    case ValueKind::words:
      return fmt::format("words \"{}\"", fmt::join(option.words, " "));
    default:
      return "nothing";
  }
}

std::string names_of(const std::vector<OptionHelp>& options) {
  std::vector<std::string> names;
  for (const auto& option : options)
    if (!option.is_argument) names.push_back(option.name);
  return fmt::format("{}", fmt::join(names, " "));
}

std::string case_of(const CommandHelp& command) {
  std::string values, argument = "nothing";
  for (const auto& option : command.options) {
    if (option.is_argument)
      argument = bash_offer(option);
    else if (option.kind != ValueKind::none)
      values += fmt::format("        {}) _gapstrain_offer {}; return ;;\n", option.name, bash_offer(option));
  }
  return fmt::format(
      "    {}){}\n"
      "      case \"$current\" in\n"
      "        -*) _gapstrain_offer words \"{}\" ;;\n"
      "        *) _gapstrain_offer {} ;;\n"
      "      esac ;;\n",
      command.name, values.empty() ? "" : fmt::format("\n      case \"$previous\" in\n{}      esac", values),
      names_of(command.options), argument);
}

}  // namespace

std::string bash_completion(const ProgramHelp& program) {
  std::vector<std::string> names;
  std::string cases;
  for (const auto& command : program.commands) {
    names.push_back(command.name);
    cases += case_of(command);
  }
  return fmt::format(R"(# Completion of {0} for bash. For this shell: source <({0} completion bash)
# For good: {0} completion bash > ~/.local/share/bash-completion/completions/{0}
_gapstrain_offer() {{
  local found=()
  case "$1" in
    words) mapfile -t found < <(compgen -W "$2" -- "$current") ;;
    toml) mapfile -t found < <(compgen -f -X '!*.toml' -- "$current"; compgen -d -- "$current") ;;
    file) mapfile -t found < <(compgen -f -- "$current") ;;
    folder) mapfile -t found < <(compgen -d -- "$current") ;;
  esac
  [ "$1" = words ] || compopt -o filenames 2>/dev/null
  COMPREPLY=("${{found[@]}}")
}}
_gapstrain() {{
  local current="${{COMP_WORDS[COMP_CWORD]}}" previous="${{COMP_WORDS[COMP_CWORD-1]}}"
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    _gapstrain_offer words "{1} {2}"
    return
  fi
  case "${{COMP_WORDS[1]}}" in
{3}  esac
}}
complete -F _gapstrain {0}
)",
                     program.name, fmt::join(names, " "), names_of(program.options), cases);
}

}  // namespace gapstrain::cases
