#include "cases/commands/sweep.h"

#include "cases/commands/study_run.h"
#include "cases/outputs/figure_words.h"
#include "cases/outputs/sweep_charts.h"
#include "cases/outputs/sweep_report.h"
#include "cases/study/sweep_rows.h"
#include "viz/display.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <memory>

namespace gapstrain::cases {

namespace {

// What the rows say, in words and charts.
Status finish_sweep(StudyFolder& folder, const StudyFile& study, const StudyOptions& options) {
  const SweepReport report = report_sweep(folder.target(), study);
  folder.write("summary.txt", report.text);
  folder.write("study.toml", study.text);
  folder.write("case.toml", study.base.text);
  if (!options.no_pictures) try {
      draw_sweep_charts(folder.target(), study);
    } catch (const viz::DisplayError& error) {
      fmt::print(stderr, "warning: no pictures: {}\n", error.what());
    }
  if (!options.quiet) fmt::print("{}\nWritten: {}\n", report.text, folder.target().string());
  return report.failed + report.doubtful < report.rows ? Status::done : Status::does_not_hold;
}

Status run(const std::string& study_file, const StudyOptions& options, Ranks& ranks) {
  const StudyFile study = read_study(study_file, [](const models::Construct&) { return known_findings(); });
  SweepRows rows(study);
  const StudyRun sweep{"sweep",
                       study.fingerprint(),
                       study.rows(),
                       rows.heading(),
                       std::filesystem::path(study_file).stem().string() + "-sweep",
                       [&](std::size_t row) { return rows.block(row); },
                       [&] { return rows.hire(); },
                       [&](StudyFolder& folder) { return finish_sweep(folder, study, options); }};
  return run_study(sweep, options, ranks);
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
    job = [&ranks, options, study_file] { return run(*study_file, *options, ranks); };
  });
}

}  // namespace gapstrain::cases
