#include "cases/commands/picture_options.h"

#include "cases/commands/choice.h"

#include <CLI/CLI.hpp>

#include <string>

namespace gapstrain::cases {

namespace {

viz::PictureFormat format_of(const std::string& word) {
  if (word == "svg") return viz::PictureFormat::svg;
  return word == "pdf" ? viz::PictureFormat::pdf : viz::PictureFormat::png;
}

}  // namespace

void add_picture_options(CLI::App& command, PictureOptions& options) {
  constexpr int least_width = 400, most_width = 8000;
  take_one_of(*command.add_option_function<std::string>(
                  "--format", [&options](const std::string& word) { options.style.format = format_of(word); },
                  "Of pictures; png by default"),
              {"png", "svg", "pdf"});
  command
      .add_option(
          "--size", options.style.width_px,
          "Width of PNG pictures in pixels, 400 to 8000 (default 2000); the height follows from the content")
      ->check(CLI::Range(least_width, most_width))
      ->type_name("PIXELS");
  command.add_flag("--no-pictures", options.none, "Draw no pictures");
}

}  // namespace gapstrain::cases
