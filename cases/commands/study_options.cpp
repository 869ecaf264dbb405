#include "cases/commands/study_options.h"

#include "cases/commands/out_option.h"
#include "cases/commands/page_flag.h"

#include <CLI/CLI.hpp>

namespace gapstrain::cases {

void add_study_options(CLI::App& command, StudyOptions& options, const std::string& default_folder) {
  add_out_option(command, options.out, "Folder to write and to go on in; default: " + default_folder);
  command
      .add_option("--part", options.part,
                  "Only this part of the rows, such as 3/8, for jobs on several machines: see gapstrain merge")
      ->type_name("I/N");
  constexpr std::size_t most_threads = 256;  // of one process: more than the machines it is meant for have cores
  command.add_option("--threads", options.threads, "Threads of each process; default: all cores")
      ->check(CLI::Range(std::size_t{1}, most_threads))
      ->type_name("N");
  add_picture_options(command, options.pictures);
  add_page_flag(command, options.page);
  command.add_flag("--quiet", options.quiet, "Print warnings and faults only");
}

}  // namespace gapstrain::cases
