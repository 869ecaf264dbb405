#include "cases/files/output_file.h"

#include "cases/files/leftovers.h"
#include "viz/drawing/replace_file.h"

#include <fmt/format.h>
#include <unistd.h>

#include <cstdlib>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

// Found by trying: permissions alone say nothing to root, nor of a file system that takes no files.
bool can_hold_a_file(const fs::path& folder) {
  std::string name = (folder / ".gapstrain-XXXXXX").string();
  const int file = mkstemp(name.data());
  if (file < 0) return false;
  close(file);
  return unlink(name.c_str()) == 0;
}

}  // namespace

void refuse_unusable_file(const fs::path& file, bool may_replace, const std::string& option) try {
  const auto refuse = [&](const std::string& what) {
    throw OutputError(fmt::format("{}; choose another file with {}", what, option));
  };
  const fs::path folder = fs::absolute(file).parent_path();
  if (!file.has_filename() || fs::is_directory(file))
    throw OutputError(fmt::format("\"{}\" is a folder; {} needs the name of a file", file.string(), option));
  if (!fs::is_directory(folder))
    throw OutputError(
        fmt::format("there is no folder {}; make it or choose another file with {}", folder.string(), option));
  if (fs::exists(fs::symlink_status(file)) && !may_replace)
    throw OutputError(fmt::format("{} is there already; choose another file with {}, or replace it with --force",
                                  file.string(), option));
  if (fs::exists(file) && !fs::is_regular_file(file)) refuse(fmt::format("{} is no ordinary file", file.string()));
  if (!can_hold_a_file(folder)) refuse(fmt::format("the folder {} is not writable", folder.string()));
} catch (const fs::filesystem_error& error) {
  throw OutputError(fmt::format("{} cannot be written: {}; choose another file with {}", file.string(),
                                error.code().message(), option));
}

void write_file_whole(const fs::path& file, const std::string& text) try {
  clear_leftovers_of_file(file);
  viz::replace_file(file, text);
} catch (const fs::filesystem_error& error) {
  throw OutputError(
      fmt::format("{} cannot be written: {}; is the disk full?", file.string(), error.code().message()));
}

}  // namespace gapstrain::cases
