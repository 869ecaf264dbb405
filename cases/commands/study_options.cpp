#include "cases/commands/study_options.h"

#include <CLI/CLI.hpp>

namespace gapstrain::cases {

void add_study_options(CLI::App& command, StudyOptions& options, const std::string& default_folder) {
  command.add_option("--out", options.out, "Folder to write and to go on in; default: " + default_folder)
      ->type_name("DIR");
  command
      .add_option("--part", options.part,
                  "Only this part of the rows, such as 3/8, for jobs on several machines: see gapstrain merge")
      ->type_name("I/N");
  command.add_option("--threads", options.threads, "Threads of each process; default: all cores")->type_name("N");
  command.add_flag("--no-pictures", options.no_pictures, "Draw no pictures");
  command.add_flag("--quiet", options.quiet, "Print warnings and faults only");
}

}  // namespace gapstrain::cases
