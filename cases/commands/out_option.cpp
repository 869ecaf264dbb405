#include "cases/commands/out_option.h"

#include <CLI/CLI.hpp>

namespace gapstrain::cases {

CLI::Option* add_out_option(CLI::App& command, std::string& out, const std::string& meaning) {
  return command.add_option("--out", out, meaning)->type_name("DIR")->check([](const std::string& name) {
    return name.empty() ? std::string("needs the name of a folder") : "";
  });
}

}  // namespace gapstrain::cases
