#include "cases/commands/analyse.h"

#include "cases/commands/out_option.h"
#include "cases/commands/page_flag.h"
#include "cases/commands/picture_options.h"
#include "cases/files/output_folder.h"
#include "cases/outputs/json/findings_json.h"
#include "cases/outputs/sentences/result_head.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/sentences/summary.h"
#include "cases/outputs/write_outputs.h"
#include "cases/page/make_page.h"
#include "cases/progress/analysis_plan.h"
#include "cases/progress/progress.h"
#include "cases/reader/read_case.h"
#include "models/assessment/assess.h"
#include "models/preparation/prepare_bodies.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <memory>

namespace gapstrain::cases {

namespace {

struct AnalyseOptions {
  std::string case_file;
  std::string out;
  PictureOptions pictures;
  bool page = false, quiet = false;
};

Status run(const AnalyseOptions& options) {
  if (options.page) require_page_core();
  const CaseFile file = read_case(options.case_file);
  fmt::print(stderr, "{}", format_problems(file.file, file.warnings));
  const std::filesystem::path stem = std::filesystem::path(options.case_file).stem();
  OutputFolder folder(options.out.empty() ? stem.string() + "-findings" : options.out);
  folder.workspace();  // a folder that cannot be made is found before the work

  const auto style = options.pictures.wanted();
  std::vector<Stage> plan = assessment_plan(file.construct);
  if (options.page) plan = std::move(plan) + page_plan_of_bodies(1, style.has_value());
  Progress progress(std::move(plan) + outputs_plan(file.construct, style.has_value()), options.quiet);
  const auto screws = file.screws_to_make_ready();
  const auto prepared = models::prepare_bodies(file.construct, screws, progress.stages());
  models::AssessedConstruct assessed = models::assess(prepared, file.construct, screws, true, progress.stages());
  doubt_not_finite(file.construct, assessed);
  const models::ResultState& state = assessed.assessment.state;
  const models::Findings& findings = assessed.analysis.findings;
  const CaseOrigin origin{file.file, file.text, file.assumptions, today()};
  if (options.page)  // before findings.json, which lists all files
    folder.write("page.html", page_html(make_page(page_case_on(file, prepared), style.has_value(), origin.date,
                                                  progress.stages())));
  const auto written = write_outputs(folder, file.construct, assessed, origin, style, progress.stages());
  progress.end();
  folder.publish();

  if (options.quiet)  // the summary begins with them
    for (const auto& alarm : alarms_of(state)) fmt::print(stderr, "{}: {}\n", file.file, alarm);
  if (written.pictures_missing)
    fmt::print(stderr, "warning: pictures are missing: {}\n", *written.pictures_missing);
  if (!options.quiet)
    fmt::print("{}", summarise(file.construct, findings, assessed.assessment, origin, folder.target().string()));
  return state.not_trusted.empty() ? Status::done : Status::does_not_hold;
}

}  // namespace

void add_analyse(CLI::App& program, Job& job) {
  CLI::App* command =
      program.add_subcommand("analyse", "Solve a case and write its findings, tables, fields and pictures");
  const auto options = std::make_shared<AnalyseOptions>();
  command->add_option("case", options->case_file, "The case file (TOML)")->required()->type_name("CASE.toml");
  add_out_option(*command, options->out, "Folder to write; default: the case's name with \"-findings\", here");
  add_picture_options(*command, options->pictures);
  add_page_flag(*command, options->page);
  command->add_flag("--quiet", options->quiet, "Print warnings and faults only");
  command->footer(
      "All keys of a case file: gapstrain keys. All keys of findings.json: gapstrain keys --findings.\n"
      "Exit status: 0 done; 1 the model does not hold or a trust check failed; 2 bad input; 3 "
      "interrupted.");
  command->callback([&job, options] { job = [options] { return run(*options); }; });
}

}  // namespace gapstrain::cases
