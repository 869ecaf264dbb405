// What commands of many rows have in common on the command line.
#pragma once

#include "cases/commands/picture_options.h"

#include <string>

namespace CLI {
class App;
}

namespace gapstrain::cases {

struct StudyOptions {
  std::string out, part;
  std::size_t threads = 0;
  PictureOptions pictures;
  bool page = false, quiet = false;
};

void add_study_options(CLI::App& command, StudyOptions& options, const std::string& default_folder);

}  // namespace gapstrain::cases
