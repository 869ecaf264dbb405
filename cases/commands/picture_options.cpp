#include "cases/commands/picture_options.h"

#include "cases/commands/choice.h"

#include <CLI/CLI.hpp>

#include <map>
#include <string>
#include <vector>

namespace gapstrain::cases {

namespace {

const std::map<std::string, viz::PictureFormat> formats{
    {"png", viz::PictureFormat::png}, {"svg", viz::PictureFormat::svg}, {"pdf", viz::PictureFormat::pdf}};

}  // namespace

void add_picture_options(CLI::App& command, PictureOptions& options) {
  constexpr int least_width = 400, most_width = 8000;
  std::vector<std::string> words;
  for (const auto& [word, format] : formats) words.push_back(word);
  take_one_of(*command.add_option_function<std::string>(
                  "--format", [&options](const std::string& word) { options.style.format = formats.at(word); },
                  "Of pictures; png by default"),
              words);
  command
      .add_option(
          "--size", options.style.width_px,
          "Width of PNG pictures in pixels, 400 to 8000 (default 2000); the height follows from the content")
      ->check(CLI::Range(least_width, most_width))
      ->type_name("PIXELS");
  command.add_flag("--no-pictures", options.none, "Draw no pictures");
}

}  // namespace gapstrain::cases
