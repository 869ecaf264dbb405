#include "cases/commands/cite.h"

#include "cases/commands/choice.h"
#include "cases/help/citation.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <memory>

namespace gapstrain::cases {

void add_cite(CLI::App& program, Job& job) {
  CLI::App* command =
      program.add_subcommand("cite", "Say how to cite the program, and the published sources of its method");
  const auto format = std::make_shared<std::string>("text");
  take_one_of(*command->add_option("--format", *format, "Of what is printed; default: text"),
              {"text", "bibtex", "cff"});
  command->footer("A result is traced by version and commit; both stand in findings.json and run.json as well.");
  command->callback([&job, format] {
    job = [format] {
      fmt::print("{}", *format == "bibtex" ? citation_bibtex()
                       : *format == "cff"  ? citation_cff()
                                           : citation_text());
      return Status::done;
    };
  });
}

}  // namespace gapstrain::cases
