#include "cases/commands/compare.h"

#include "cases/commands/stages.h"
#include "cases/outputs/comparison_json.h"
#include "cases/outputs/comparison_pictures.h"
#include "cases/outputs/comparison_report.h"
#include "cases/outputs/margins_text.h"
#include "cases/outputs/output_folder.h"
#include "cases/outputs/plan_text.h"
#include "cases/outputs/race_csv.h"
#include "cases/outputs/review_text.h"
#include "cases/outputs/summary.h"
#include "cases/reader/read_case.h"
#include "viz/display.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <algorithm>
#include <memory>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t most_constructs = 4;  // that a picture shows legibly

struct CompareOptions {
  std::vector<std::string> files;
  std::string out = "comparison";
  bool no_pictures = false;
  bool quiet = false;
};

// Figures of different patients, or under different loads, say nothing about constructs.
void check_one_patient(const std::vector<CaseFile>& files) {
  for (std::size_t k = 1; k < files.size(); ++k) {
    const auto differences = models::patient_differences(files[0].construct, files[k].construct);
    if (!differences.empty())
      throw CaseError(
          files[k].file,
          {{Place{}, "",
            fmt::format("this is another patient than that of {}, with another {}. Give both constructs the same, "
                        "best as changes to one base case (base = \"...\").",
                        files[0].file, fmt::join(differences, ", another "))}});
    for (std::size_t j = 0; j < k; ++j)
      if (files[j].construct.name == files[k].construct.name)
        throw CaseError(files[k].file,
                        {{Place{}, "name",
                          fmt::format("found \"{}\", which is also the name of {}; give each construct its own",
                                      files[k].construct.name, files[j].file)}});
  }
}

Status run(const CompareOptions& options) {
  std::vector<CaseFile> files;
  for (const auto& name : options.files) files.push_back(read_case(name));
  for (const auto& file : files) fmt::print(stderr, "{}", format_problems(file.file, file.warnings));
  check_one_patient(files);
  OutputFolder folder(options.out);

  const auto progress = tell_stages(options.quiet);
  std::vector<ComparedCase> cases;
  std::vector<models::Construct> constructs;
  std::vector<models::AssessedConstruct> assessed;
  for (const auto& file : files) {
    if (progress)
      progress(fmt::format("construct {} of {}: {}", cases.size() + 1, files.size(), file.construct.name));
    constructs.push_back(file.construct);
    assessed.push_back(models::assess(file.construct, progress));
    cases.push_back({file.file, file.construct, {}});
  }
  const auto comparison = models::compare(constructs, assessed);
  for (std::size_t k = 0; k < cases.size(); ++k) cases[k].assessed = std::move(assessed[k]);

  const std::string text = comparison_text(cases, comparison);
  folder.write("comparison.txt", text);
  folder.write("comparison.csv", comparison_csv(comparison));
  for (std::size_t k = 0; k < cases.size(); ++k) {
    const auto& assessment = cases[k].assessed.assessment;
    folder.write(fmt::format("case_{}.toml", letter_of(k)), files[k].text);
    folder.write(fmt::format("margins_{}.txt", letter_of(k)),
                 margins_text(assessment.margins, assessment.margins_left_out));
    folder.write(fmt::format("review_{}.txt", letter_of(k)), review_text(assessment.review));
    folder.write(fmt::format("plan_{}.txt", letter_of(k)),
                 plan_text(assessment.plan, cases[k].construct.name, cases[k].file));
    if (assessment.race)
      folder.write(fmt::format("race_{}.csv", letter_of(k)), race_csv(*assessment.race, *assessment.history));
  }
  if (!options.no_pictures) try {
      if (progress) progress("drawing");
      draw_comparison(cases, comparison, folder.workspace());
    } catch (const viz::DisplayError& error) {
      fmt::print(stderr, "warning: no pictures: {}\n", error.what());
    }
  auto written = folder.files();
  written.emplace_back("findings.json");
  std::sort(written.begin(), written.end());
  folder.write("findings.json", comparison_json(cases, comparison, written));
  folder.publish();
  if (!options.quiet) fmt::print("{}Files: {}\n", text, folder.target().string());
  const bool is_trusted = std::all_of(cases.begin(), cases.end(), [](const ComparedCase& one) {
    return one.assessed.analysis.findings.trust.passed();
  });
  return is_trusted ? Status::done : Status::does_not_hold;
}

}  // namespace

void add_compare(CLI::App& program, Job& job) {
  CLI::App* command = program.add_subcommand(
      "compare", "Hold several constructs for one patient against each other: table, pictures, verdict");
  const auto options = std::make_shared<CompareOptions>();
  command->add_option("cases", options->files, "The case files (TOML), best as changes to one base case")
      ->required()
      ->expected(2, static_cast<int>(most_constructs))
      ->type_name("CASE.toml");
  command->add_option("--out", options->out, "Folder to write; default: \"comparison\", here")->type_name("DIR");
  command->add_flag("--no-pictures", options->no_pictures, "Draw no pictures");
  command->add_flag("--quiet", options->quiet, "Print warnings and faults only");
  command->footer(
      "A case given as changes: base = \"other.toml\" and what differs (gapstrain keys).\n"
      "Exit status: 0 done; 1 the model does not hold or a trust check failed; 2 bad input.");
  command->callback([&job, options] { job = [options] { return run(*options); }; });
}

}  // namespace gapstrain::cases
