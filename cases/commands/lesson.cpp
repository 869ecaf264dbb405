#include "cases/commands/lesson.h"

#include "cases/files/output_file.h"
#include "cases/lessons/make_lesson.h"
#include "cases/outputs/sentences/result_head.h"
#include "cases/progress/progress.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <filesystem>
#include <memory>
#include <string>

namespace gapstrain::cases {

namespace {

struct LessonOptions {
  std::string lesson_file, out;
  bool force = false, quiet = false, no_pictures = false;
};

Status run(const LessonOptions& options) {
  const std::string file =
      options.out.empty() ? std::filesystem::path(options.lesson_file).stem().string() + ".html" : options.out;
  refuse_unusable_file(file, options.force);
  require_page_core();
  const Lesson lesson = read_lesson(options.lesson_file);
  fmt::print(stderr, "{}", format_problems(lesson.page.entered.file, lesson.page.entered.warnings));

  const bool with_pictures = !options.no_pictures;
  Progress progress(lesson_plan(lesson, with_pictures), options.quiet);
  const LessonPage page = make_lesson(lesson, with_pictures, today(), progress.stages());
  progress.begin("writing files");
  const std::string html = page_html(page.content);
  write_file_whole(file, html);
  progress.end();
  for (const auto& doubt : page.doubts) fmt::print(stderr, "{}: {}\n", lesson.file, doubt);
  if (page.content.pictures_missing)
    fmt::print(stderr, "warning: pictures are missing: {}\n", *page.content.pictures_missing);
  if (!options.quiet)
    fmt::print("{}\nLesson: {} ({:.1f} MB), {} scenes\n", lesson.name, file,
               static_cast<double>(html.size()) / 1e6, lesson.scenes.size());
  return page.content.is_trusted ? Status::done : Status::does_not_hold;
}

}  // namespace

void add_lesson(CLI::App& program, Job& job) {
  CLI::App* command = program.add_subcommand(
      "lesson", "Write one HTML file for teaching: scenes of a case with questions, answered by trying, offline");
  const auto options = std::make_shared<LessonOptions>();
  command->add_option("lesson", options->lesson_file, "The lesson file (TOML)")
      ->required()
      ->type_name("LESSON.toml");
  command->add_option("--out", options->out, "File to write; default: the lesson's name with .html, here")
      ->type_name("FILE");
  command->add_flag("--force", options->force, "Replace a file that is there already");
  command->add_flag("--no-pictures", options->no_pictures, "No still pictures for where scripts are off");
  command->add_flag("--quiet", options->quiet, "Print warnings and faults only");
  command->footer(
      "Each scene's state is solved once before the file is written: figures stand in its texts as marks, such as "
      "{peak_stress}, and what is said without a number is held by limits; gapstrain keys --lesson tells the "
      "keys.\n"
      "Exit status: 0 written; 1 written, but a check of a scene's solution failed, or the model does not hold "
      "and "
      "nothing is written; 2 bad input, or the solved scenes do not bear out what is said; 3 interrupted.");
  command->callback([&job, options] { job = [options] { return run(*options); }; });
}

}  // namespace gapstrain::cases
