// What commands of many rows have in common on the command line.
#pragma once

#include "cases/study/parts.h"
#include "cases/study/ranks.h"
#include "cases/study/run_file.h"

#include <string>

namespace CLI {
class App;
}

namespace gapstrain::cases {

struct StudyOptions {
  std::string out, part;
  std::size_t threads = 0;
  bool no_pictures = false, quiet = false;
};

void add_study_options(CLI::App& command, StudyOptions& options, const std::string& default_folder);

// The part that --part names, or the whole. @throw OutputError
Part part_of(const StudyOptions& options);

// The folder's name, with that of a part: "radius-layouts", "radius-layouts-3-of-8".
std::string folder_of(const StudyOptions& options, const std::string& default_folder);

// What to say and to return when rows are not all there, or are those of a part.
void tell_interrupted(const std::string& folder);
void tell_part(const std::string& folder, const Part& part);

}  // namespace gapstrain::cases
