// A single file: complete or not there at all.
#pragma once

#include "cases/files/output_target.h"

#include <filesystem>
#include <string>

namespace gapstrain::cases {

// Refuses at once what cannot be written: a folder, a folder that is not there or closed, and a file that is there
// already unless it may be replaced. `option`: what the file was named with.
// @throw OutputError
void refuse_unusable_file(const std::filesystem::path& file, bool may_replace,
                          const std::string& option = "--out");

// Written beside, then renamed.
// @throw OutputError; what was there is then still in place
void write_file_whole(const std::filesystem::path& file, const std::string& text);

}  // namespace gapstrain::cases
