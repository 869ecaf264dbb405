// The option --out of commands that write a folder.
#pragma once

#include <string>

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace gapstrain::cases {

// A folder without a name is a fault of the command line, not the default.
CLI::Option* add_out_option(CLI::App& command, std::string& out, const std::string& meaning);

}  // namespace gapstrain::cases
