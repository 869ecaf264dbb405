#include "cases/commands/keys.h"

#include "cases/outputs/findings_keys.h"
#include "cases/reader/case_keys.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <memory>

namespace gapstrain::cases {

void add_keys(CLI::App& program, Job& job) {
  CLI::App* command =
      program.add_subcommand("keys", "Print every key of a case file with unit, default and meaning");
  const auto findings = std::make_shared<bool>(false);
  command->add_flag("--findings", *findings, "The keys of findings.json instead");
  command->callback([&job, findings] {
    job = [findings] {
      fmt::print("{}", *findings ? describe_findings_keys() : describe_case_keys());
      return Status::done;
    };
  });
}

}  // namespace gapstrain::cases
