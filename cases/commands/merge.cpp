#include "cases/commands/merge.h"

#include "cases/commands/out_option.h"
#include "cases/commands/study_run.h"
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
  add_out_option(*command, *out, "Folder to write the whole into")->required();
  command->footer(
      "Then the command that made the parts, with this --out and without --part, adds summary and charts.");
  command->callback([&job, parts, out] {
    job = [parts, out] {
      Progress progress({{"joining", 1.0}}, false);
      progress.begin("joining");
      try {
        merge_rows({parts->begin(), parts->end()}, *out, progress);
      } catch (const Interrupted&) {
        progress.end();
        return interrupted_work(*out);
      }
      progress.end();
      fmt::print(
          "Merged into {}. The command that made the parts, with --out {} and without --part, adds summary and "
          "charts.\n",
          *out, *out);
      return Status::done;
    };
  });
}

}  // namespace gapstrain::cases
