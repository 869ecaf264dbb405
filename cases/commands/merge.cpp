#include "cases/commands/merge.h"

#include "cases/study/merge.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <memory>
#include <string>
#include <vector>

namespace gapstrain::cases {

void add_merge(CLI::App& program, Job& job) {
  CLI::App* command = program.add_subcommand("merge", "Join the parts of a study into the rows of the whole");
  const auto parts = std::make_shared<std::vector<std::string>>();
  const auto out = std::make_shared<std::string>();
  command->add_option("parts", *parts, "Folders of all parts, in any order")->required()->type_name("DIR");
  command->add_option("--out", *out, "Folder to write the whole into")->required()->type_name("DIR");
  command->footer(
      "Then the command that made the parts, with this --out and without --part, adds summary and charts.");
  command->callback([&job, parts, out] {
    job = [parts, out] {
      merge_rows({parts->begin(), parts->end()}, *out);
      fmt::print(
          "Merged into {}. The command that made the parts, with --out {} and without --part, adds summary and "
          "charts.\n",
          *out, *out);
      return Status::done;
    };
  });
}

}  // namespace gapstrain::cases
