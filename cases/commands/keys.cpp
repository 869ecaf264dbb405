#include "cases/commands/keys.h"

#include "cases/figures/outcome_table.h"
#include "cases/lessons/lesson_keys.h"
#include "cases/outputs/json/findings_keys.h"
#include "cases/reader/case_keys.h"
#include "cases/reader/study_keys.h"
#include "cases/toml/describe_keys.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <memory>

namespace gapstrain::cases {

void add_keys(CLI::App& program, Job& job) {
  CLI::App* command =
      program.add_subcommand("keys", "Print every key of a case file with unit, default and meaning");
  struct Asked {
    bool findings = false, study = false, lesson = false, rows = false;
  };
  const auto asked = std::make_shared<Asked>();
  auto* findings = command->add_flag("--findings", asked->findings, "The keys of findings.json instead");
  auto* study = command->add_flag("--study", asked->study, "The keys of a study file instead")->excludes(findings);
  auto* lesson = command->add_flag("--lesson", asked->lesson, "The keys of a lesson file instead")
                     ->excludes(findings)
                     ->excludes(study);
  command->add_flag("--rows", asked->rows, "The columns of rows.csv, and so the names of findings, instead")
      ->excludes(findings)
      ->excludes(study)
      ->excludes(lesson);
  command->callback([&job, asked] {
    job = [asked] {
      fmt::print("{}", asked->findings ? describe_findings_keys()
                       : asked->rows   ? describe_outcome_columns()
                       : asked->study  ? describe_keys(study_keys(), "study")
                       : asked->lesson ? describe_keys(lesson_keys(), "lesson")
                                       : describe_keys(case_keys(), "case"));
      return Status::done;
    };
  });
}

}  // namespace gapstrain::cases
