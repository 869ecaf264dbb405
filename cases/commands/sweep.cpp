#include "cases/commands/sweep.h"

#include "cases/commands/study_run.h"
#include "cases/figures/figure_words.h"
#include "cases/outputs/sentences/result_head.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/studies/sweep_charts.h"
#include "cases/outputs/studies/sweep_report.h"
#include "cases/page/make_page.h"
#include "cases/page/sweep_cloud.h"
#include "cases/progress/progress.h"
#include "cases/study/sweep_rows.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <memory>

namespace gapstrain::cases {

namespace {

const Stage solving_rows{"solving", 2.0}, looking_at_rows{"looking at which rows the page can solve", 2.0};

// What the rows say, in words and charts.
Status finish_sweep(StudyFolder& folder, const StudyFile& study, SweepRows& rows, const StudyOptions& options,
                    Progress& progress) {
  const SweepReport report = report_sweep(folder.target(), study);
  folder.write("summary.txt", report.text);
  folder.write("study.toml", study.text_beside("case.toml"));  // the folder can be run again as it stands
  folder.write("case.toml", study.base.text);
  if (const auto style = options.pictures.wanted()) {
    progress.begin(drawing_charts.name);
    draw_sweep_charts(*style, folder.target(), study);
  }
  if (options.page) {
    const auto prepared = rows.bodies_of_base();
    PageContent content = make_page(page_case_on(study.base, study.base_tree, prepared),
                                    options.pictures.wanted().has_value(), today(), progress.stages());
    progress.begin(looking_at_rows.name);
    content.cloud =
        sweep_cloud(folder.target(), study, rows, prepared, [&](double share) { progress.reach(share); });
    folder.write("page.html", page_html(content));
  }
  progress.end();
  if (options.quiet)  // the text begins with them
    for (const auto& alarm : alarms_of(report.states)) fmt::print(stderr, "{}: {}\n", study.file, alarm);
  else
    fmt::print("{}\nWritten: {}\n", report.text, folder.target().string());
  return report.states.failed + report.states.doubtful < report.states.rows ? Status::done : Status::does_not_hold;
}

Status run_sweep(const std::string& study_file, const StudyOptions& options, Ranks& ranks) {
  if (options.page) require_page_core();
  const StudyFile study = read_study(study_file, [](const models::Construct&) { return known_findings(); });
  SweepRows rows(study);
  std::vector<Stage> plan{solving_rows};
  const bool with_pictures = options.pictures.wanted().has_value();
  if (with_pictures) plan.push_back(drawing_charts);
  if (options.page) {
    for (const auto& stage : page_plan_of_bodies(1, with_pictures)) plan.push_back(stage);
    plan.push_back(looking_at_rows);
  }
  Progress progress(plan, options.quiet || ranks.rank() != 0);
  progress.begin(solving_rows.name);
  const StudyRun sweep{"sweep",
                       study.fingerprint(),
                       study.rows(),
                       keys_of(study.base.construct.estimated),
                       rows.heading(),
                       std::filesystem::path(study_file).stem().string() + "-sweep",
                       [&](std::size_t row) { return rows.block(row); },
                       [&] { return rows.hire(); },
                       [&](StudyFolder& folder) { return finish_sweep(folder, study, rows, options, progress); }};
  return run_study(sweep, options, ranks, progress);
}

}  // namespace

void add_sweep(CLI::App& program, Job& job, Ranks& ranks) {
  CLI::App* command = program.add_subcommand("sweep", "Vary the values of a case and solve every combination");
  const auto options = std::make_shared<StudyOptions>();
  const auto study_file = std::make_shared<std::string>();
  command->add_option("study", *study_file, "The study file (TOML): a case, and what is varied in it")
      ->required()
      ->type_name("STUDY.toml");
  add_study_options(*command, *options, "the study's name with \"-sweep\", here");
  command->footer(
      "All keys of a study file: gapstrain keys --study. Columns of rows.csv: gapstrain keys --rows.\n"
      "Interrupted or killed, the same command goes on. Several processes: mpirun -n N gapstrain sweep "
      "STUDY.toml.\n"
      "Exit status: 0 done; 1 no construct has a result that holds; 2 bad input; 3 interrupted.");
  command->callback([&job, &ranks, options, study_file] {
    job = [&ranks, options, study_file] { return run_sweep(*study_file, *options, ranks); };
  });
}

}  // namespace gapstrain::cases
