// Where a command may put its folder: asked before any long work.
#pragma once

#include <filesystem>
#include <stdexcept>

namespace gapstrain::cases {

// The folder cannot be used or a file cannot be written; the sentence names it and says how to mend it.
struct OutputError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// The folder's absolute name without a slash at the end. Creates nothing.
// @throw OutputError if it is no folder and cannot become one
std::filesystem::path usable_target(const std::filesystem::path& target);

}  // namespace gapstrain::cases
