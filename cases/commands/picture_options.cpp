#include "cases/commands/picture_options.h"

#include <CLI/CLI.hpp>

#include <map>
#include <string>

namespace gapstrain::cases {

void add_picture_options(CLI::App& command, PictureOptions& options) {
  const std::map<std::string, viz::PictureFormat> formats{
      {"png", viz::PictureFormat::png}, {"svg", viz::PictureFormat::svg}, {"pdf", viz::PictureFormat::pdf}};
  constexpr int least_width = 400, most_width = 8000;
  command.add_option("--format", options.style.format, "Of pictures: png (default), svg or pdf")
      ->transform(CLI::CheckedTransformer(formats))
      ->type_name("FORMAT");
  command
      .add_option(
          "--size", options.style.width_px,
          "Width of PNG pictures in pixels, 400 to 8000 (default 2000); the height follows from the content")
      ->check(CLI::Range(least_width, most_width))
      ->type_name("PIXELS");
  command.add_flag("--no-pictures", options.none, "Draw no pictures");
}

}  // namespace gapstrain::cases
