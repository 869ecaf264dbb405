#include "cases/commands/study_options.h"

#include <fmt/format.h>
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

Part part_of(const StudyOptions& options) { return options.part.empty() ? Part{} : parse_part(options.part); }

std::string folder_of(const StudyOptions& options, const std::string& default_folder) {
  if (!options.out.empty()) return options.out;
  const Part part = part_of(options);
  return part.of == 1 ? default_folder : fmt::format("{}-{}-of-{}", default_folder, part.number, part.of);
}

void tell_interrupted(const std::string& folder) {
  fmt::print(stderr, "interrupted; the same command goes on where it stopped, in {}\n", folder);
}

void tell_part(const std::string& folder, const Part& part) {
  fmt::print("Part {} is complete: {}\nWhen all parts are: gapstrain merge\n", part_text(part), folder);
}

}  // namespace gapstrain::cases
