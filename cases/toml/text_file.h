// A TOML file on the disk as text, and the text as a tree.
#pragma once

#include "cases/toml/document.h"

#include <filesystem>
#include <string>

namespace gapstrain::cases {

// `kind` is what to call the file: "case".
// @throw CaseError for a file that is not there, is no file, too large or closed to the reader
std::string read_text(const std::filesystem::path& path, const std::string& kind);

// @throw CaseError naming the file, where the text is no TOML, or one beyond all limits
Table parse_file(const std::string& file, const std::string& text);

}  // namespace gapstrain::cases
