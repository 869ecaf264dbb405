#include "cases/commands/analyse.h"

#include "cases/commands/stages.h"
#include "cases/outputs/output_folder.h"
#include "cases/outputs/summary.h"
#include "cases/outputs/write_outputs.h"
#include "cases/reader/read_case.h"
#include "models/review/assess.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <memory>

namespace gapstrain::cases {

namespace {

struct AnalyseOptions {
  std::string case_file;
  std::string out;
  bool no_pictures = false;
  bool quiet = false;
};

Status run(const AnalyseOptions& options) {
  const CaseFile file = read_case(options.case_file);
  fmt::print(stderr, "{}", format_problems(file.file, file.warnings));
  const std::filesystem::path stem = std::filesystem::path(options.case_file).stem();
  OutputFolder folder(options.out.empty() ? stem.string() + "-findings" : options.out);

  const auto progress = tell_stages(options.quiet);
  const models::AssessedConstruct assessed = models::assess(file.construct, progress);
  const models::Findings& findings = assessed.analysis.findings;
  const CaseOrigin origin{file.file, file.text, file.assumptions};
  const auto written = write_outputs(folder, file.construct, assessed, origin, !options.no_pictures, progress);
  folder.publish();

  const auto reasons = doubts(findings, written.not_finite);
  if (options.quiet)  // the summary begins with them
    for (const auto& reason : reasons) fmt::print(stderr, "{}: not to be trusted: {}\n", file.file, reason);
  if (written.pictures_missing) fmt::print(stderr, "warning: no pictures: {}\n", *written.pictures_missing);
  if (!options.quiet)
    fmt::print("{}",
               summarise(findings, assessed.assessment, origin, written.not_finite, folder.target().string()));
  return reasons.empty() ? Status::done : Status::does_not_hold;
}

}  // namespace

void add_analyse(CLI::App& program, Job& job) {
  CLI::App* command =
      program.add_subcommand("analyse", "Solve a case and write its findings, tables, fields and pictures");
  const auto options = std::make_shared<AnalyseOptions>();
  command->add_option("case", options->case_file, "The case file (TOML)")->required()->type_name("CASE.toml");
  command->add_option("--out", options->out, "Folder to write; default: the case's name with \"-findings\", here")
      ->type_name("DIR");
  command->add_flag("--no-pictures", options->no_pictures, "Draw no pictures");
  command->add_flag("--quiet", options->quiet, "Print warnings and faults only");
  command->footer(
      "All keys of a case file: gapstrain keys. All keys of findings.json: gapstrain keys --findings.\n"
      "Exit status: 0 done; 1 the model does not hold or a trust check failed; 2 bad input.");
  command->callback([&job, options] { job = [options] { return run(*options); }; });
}

}  // namespace gapstrain::cases
