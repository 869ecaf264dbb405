#include "cases/commands/page.h"

#include "cases/files/output_file.h"
#include "cases/outputs/sentences/result_head.h"
#include "cases/page/make_page.h"
#include "cases/page/page_variants.h"
#include "cases/progress/analysis_plan.h"
#include "cases/progress/progress.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace gapstrain::cases {

namespace {

struct PageOptions {
  std::string case_file, out;
  std::vector<std::string> vary;
  bool force = false, quiet = false, no_pictures = false;
};

Status run(const PageOptions& options) {
  const std::string file =
      options.out.empty() ? std::filesystem::path(options.case_file).stem().string() + ".html" : options.out;
  refuse_unusable_file(file, options.force);
  require_page_core();
  const PageCase page = read_page_case(options.case_file, options.vary);
  fmt::print(stderr, "{}", format_problems(page.entered.file, page.entered.warnings));

  Progress progress(page_plan(page, !options.no_pictures), options.quiet);
  const PageContent content = make_page(page, !options.no_pictures, today(), progress.stages());
  progress.begin("writing files");
  const std::string html = page_html(content);
  write_file_whole(file, html);
  progress.end();
  if (content.pictures_missing)
    fmt::print(stderr, "warning: pictures are missing: {}\n", *content.pictures_missing);
  if (!options.quiet)
    fmt::print("{}Page: {} ({:.1f} MB)\n", content.summary, file, static_cast<double>(html.size()) / 1e6);
  return content.is_trusted ? Status::done : Status::does_not_hold;
}

}  // namespace

void add_page(CLI::App& program, Job& job) {
  CLI::App* command = program.add_subcommand(
      "page", "Write one HTML file in which screws, loads and steps can be changed and are solved again, offline");
  const auto options = std::make_shared<PageOptions>();
  command->add_option("case", options->case_file, "The case file (TOML)")->required()->type_name("CASE.toml");
  command->add_option("--out", options->out, "File to write; default: the case's name with .html, here")
      ->type_name("FILE");
  command
      ->add_option(
          "--vary", options->vary,
          "A key of the case and other values, such as plate.standoff=1mm,2mm: bodies are made ready for each "
          "as well; may be repeated")
      ->type_name("KEY=VALUES")
      ->allow_extra_args(false);
  command->add_flag("--force", options->force, "Replace a file that is there already");
  command->add_flag("--no-pictures", options->no_pictures, "No still pictures for where scripts are off");
  command->add_flag("--quiet", options->quiet, "Print warnings and faults only");
  command->footer(
      "The mesh is made ready for all screws that the plate's holes take; the case that the page shows for "
      "copying "
      "lists them ([[candidate]]), so that gapstrain analyse gives the same figures.\n"
      "Exit status: 0 written; 1 written, but a check of the solution failed, or the model does not hold; 2 bad "
      "input; "
      "3 interrupted.");
  command->callback([&job, options] { job = [options] { return run(*options); }; });
}

}  // namespace gapstrain::cases
