#include "cases/help/command_tree.h"

#include <CLI/CLI.hpp>

#include <sstream>

namespace gapstrain::cases {

namespace {

std::vector<std::string> split(const std::string& text, char separator) {
  std::istringstream stream(text);
  std::vector<std::string> parts;
  for (std::string part; std::getline(stream, part, separator);) parts.push_back(part);
  return parts;
}

ValueKind kind_of(const std::string& value) {
  if (value.empty()) return ValueKind::none;
  if (value == "DIR") return ValueKind::folder;
  if (value == "FILE") return ValueKind::file;
  if (value.ends_with(".toml")) return ValueKind::toml_file;
  return value.find('|') == std::string::npos ? ValueKind::text : ValueKind::words;
}

OptionHelp describe_option(const CLI::Option& option) {
  OptionHelp help;
  help.is_argument = option.get_lnames().empty();
  help.name = option.get_name();
  const std::string type = option.get_type_name();  // what is checked stands behind a colon
  if (option.get_items_expected_max() > 0) help.value = type.substr(0, type.find(':'));
  help.kind = kind_of(help.value);
  if (help.kind == ValueKind::words) help.words = split(help.value, '|');
  help.meaning = option.get_description();
  help.is_required = option.get_required();
  help.is_repeated = option.get_items_expected_max() > 1;
  return help;
}

std::vector<OptionHelp> describe_options(const CLI::App& command) {
  std::vector<OptionHelp> options;
  for (const auto* option : command.get_options()) options.push_back(describe_option(*option));
  return options;
}

}  // namespace

ProgramHelp describe_program(const CLI::App& program) {
  ProgramHelp help{program.get_name(), program.get_description(), describe_options(program), {}};
  for (const auto* command : program.get_subcommands([](const CLI::App*) { return true; }))
    help.commands.push_back({command->get_name(), command->get_description(), split(command->get_footer(), '\n'),
                             describe_options(*command)});
  return help;
}

}  // namespace gapstrain::cases
