// The command line as data, read off the parser: what completion and the manual page are written from.
#pragma once

#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace gapstrain::cases {

enum class ValueKind { none, text, words, toml_file, file, folder };

struct OptionHelp {
  std::string name;   // "--out"; of an argument without dashes its name
  std::string value;  // as help shows it: "DIR", "CASE.toml", "bash|zsh|fish"; empty: a flag
  std::string meaning;
  ValueKind kind = ValueKind::none;
  std::vector<std::string> words;  // all values there are, where those are few
  bool is_argument = false, is_required = false, is_repeated = false;
};

struct CommandHelp {
  std::string name, meaning;
  std::vector<std::string> remarks;  // below the options, a line each
  std::vector<OptionHelp> options;
};

struct ProgramHelp {
  std::string name, meaning;
  std::vector<OptionHelp> options;
  std::vector<CommandHelp> commands;
};

// @pre a value is named DIR, FILE, ....toml, or by its words with | between; anything else is text
ProgramHelp describe_program(const CLI::App& program);

}  // namespace gapstrain::cases
