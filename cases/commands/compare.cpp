#include "cases/commands/compare.h"

#include "cases/commands/out_option.h"
#include "cases/commands/page_flag.h"
#include "cases/commands/picture_options.h"
#include "cases/files/output_folder.h"
#include "cases/outputs/assessment_files.h"
#include "cases/outputs/json/comparison_json.h"
#include "cases/outputs/json/findings_json.h"
#include "cases/outputs/pictures/comparison_pictures.h"
#include "cases/outputs/sentences/comparison_report.h"
#include "cases/outputs/sentences/result_head.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/page/make_page.h"
#include "cases/progress/analysis_plan.h"
#include "cases/progress/progress.h"
#include "cases/reader/read_case.h"
#include "models/layouts/ready_screws.h"
#include "models/preparation/prepare_bodies.h"
#include "viz/drawing/display.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <algorithm>
#include <map>
#include <memory>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t most_constructs = 4;  // that a picture shows legibly
const Stage comparison_pictures{"drawing", 4.0};

struct CompareOptions {
  std::vector<std::string> files;
  std::string out = "comparison";
  PictureOptions pictures;
  bool page = false, quiet = false;
};

// Constructs of one name are told apart by their files.
void tell_apart(std::vector<CaseFile>& files) {
  std::map<std::string, int> uses;
  for (const auto& file : files) ++uses[file.construct.name];
  for (auto& file : files)
    if (uses[file.construct.name] > 1)
      file.construct.name = fmt::format("{} ({})", file.construct.name, fs::path(file.file).stem().string());
}

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
  if (options.page) require_page_core();
  std::vector<CaseFile> files;
  for (const auto& name : options.files) files.push_back(read_case(name));
  for (const auto& file : files) fmt::print(stderr, "{}", format_problems(file.file, file.warnings));
  tell_apart(files);
  check_one_patient(files);
  OutputFolder folder(options.out);
  folder.workspace();  // a folder that cannot be made is found before the work

  std::vector<Stage> plan;
  for (const auto& file : files) plan = plan + assessment_plan(file.construct);
  const auto style = options.pictures.wanted();
  if (style) plan.push_back(comparison_pictures);
  if (options.page) plan = std::move(plan) + page_plan_of_bodies(files.size(), style.has_value());
  Progress progress(plan, options.quiet);
  std::vector<ComparedCase> cases;
  std::vector<models::Construct> constructs;
  std::vector<models::AssessedConstruct> assessed;
  std::vector<std::shared_ptr<const models::PreparedBodies>> prepared;  // kept for a page alone
  for (const auto& file : files) {
    constructs.push_back(file.construct);
    const auto stages = progress.stages(file.construct.name);
    const auto screws = models::screws_to_make_ready(file.construct);
    auto bodies = models::prepare_bodies(file.construct, screws, stages);
    assessed.push_back(models::assess(bodies, file.construct, screws, true, stages));
    if (options.page) prepared.push_back(std::move(bodies));
    doubt_not_finite(file.construct, assessed.back());
    cases.push_back({file.file, file.construct, {}});
  }
  const auto comparison = models::compare(constructs, assessed);
  const auto preference = models::find_preference(assessed, comparison);
  for (std::size_t k = 0; k < cases.size(); ++k) cases[k].assessed = std::move(assessed[k]);

  const std::string text = comparison_text(cases, comparison, preference);
  folder.write("comparison.txt", text);
  folder.write("comparison.csv", comparison_csv(cases, comparison));
  for (std::size_t k = 0; k < cases.size(); ++k) {
    folder.write(fmt::format("case_{}.toml", letter_of(k)), files[k].text);
    write_assessment(folder, "_" + letter_of(k), cases[k].assessed.assessment, cases[k].construct,
                     {files[k].file, files[k].text, files[k].assumptions, today()});
  }
  if (style) try {
      progress.begin(comparison_pictures.name);
      draw_comparison(*style, cases, comparison, folder.workspace());
    } catch (const viz::DisplayError& error) {
      progress.say(fmt::format("warning: pictures are missing: {}", error.what()));
    }
  if (options.page) {
    PageContent content = make_page(compared_page(files, prepared), style.has_value(), today(), progress.stages());
    content.title = fmt::format("{}", fmt::join(names_of(cases), " | "));
    content.comparison = Json::parse(comparison_json(cases, comparison, preference, {}));
    for (const char* key : {"program", "cautions", "keys", "files"}) content.comparison.erase(key);
    folder.write("page.html", page_html(content));
  }
  auto written = folder.files();
  written.emplace_back("findings.json");
  std::sort(written.begin(), written.end());
  folder.write("findings.json", comparison_json(cases, comparison, preference, written));
  progress.end();
  folder.publish();
  if (!options.quiet) fmt::print("{}Files: {}\n", text, folder.target().string());
  bool is_trusted = true;
  for (const auto& one : cases) {
    const auto& state = one.assessed.assessment.state;
    is_trusted &= state.not_trusted.empty();
    if (options.quiet)  // the comparison begins with them
      for (const auto& alarm : alarms_of(state)) fmt::print(stderr, "{}: {}\n", one.file, alarm);
  }
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
  add_out_option(*command, options->out, "Folder to write; default: \"comparison\", here");
  add_picture_options(*command, options->pictures);
  add_page_flag(*command, options->page);
  command->add_flag("--quiet", options->quiet, "Print warnings and faults only");
  command->footer(
      "A case given as changes: base = \"other.toml\" and what differs (gapstrain keys).\n"
      "Exit status: 0 done; 1 the model does not hold or a trust check failed; 2 bad input; 3 "
      "interrupted.");
  command->callback([&job, options] { job = [options] { return run(*options); }; });
}

}  // namespace gapstrain::cases
