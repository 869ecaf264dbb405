// Writes a whole file or leaves the former one as it was.
#pragma once

#include <filesystem>
#include <string_view>

namespace gapstrain::viz {

// Writes beside the target under a name of its own, then renames: a reader never meets half a file.
// @throw std::filesystem::filesystem_error with the path.
void replace_file(const std::filesystem::path& path, std::string_view contents);

}  // namespace gapstrain::viz
