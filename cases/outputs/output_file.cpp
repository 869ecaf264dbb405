#include "cases/outputs/output_file.h"

#include <fmt/format.h>
#include <unistd.h>

#include <fstream>

namespace gapstrain::cases {

namespace fs = std::filesystem;

void refuse_unusable_file(const fs::path& file, bool may_replace) try {
  const fs::path folder = fs::absolute(file).parent_path();
  if (!file.has_filename() || fs::is_directory(file))
    throw OutputError(fmt::format("{} is a folder; --out needs the name of a file", file.string()));
  if (!fs::is_directory(folder))
    throw OutputError(
        fmt::format("there is no folder {}; make it or choose another file with --out", folder.string()));
  if (access(folder.c_str(), W_OK | X_OK) != 0)
    throw OutputError(
        fmt::format("the folder {} is not writable; choose another file with --out", folder.string()));
  if (fs::exists(fs::symlink_status(file)) && !may_replace)
    throw OutputError(fmt::format(
        "{} is there already; choose another file with --out, or replace it with --force", file.string()));
  if (fs::exists(file) && !fs::is_regular_file(file))
    throw OutputError(fmt::format("{} is no ordinary file; choose another with --out", file.string()));
} catch (const fs::filesystem_error& error) {
  throw OutputError(fmt::format("{} cannot be written: {}; choose another file with --out", file.string(),
                                error.code().message()));
}

void write_file_whole(const fs::path& file, const std::string& text) {
  const fs::path target = fs::absolute(file);
  const fs::path beside = target.parent_path() / fmt::format(".{}.{}", target.filename().string(), getpid());
  std::ofstream stream(beside, std::ios::binary);
  stream << text;
  stream.close();
  std::error_code fault;
  if (stream) fs::rename(beside, target, fault);
  if (stream && !fault) return;
  std::error_code ignored;
  fs::remove(beside, ignored);
  throw OutputError(fmt::format("{} cannot be written{}; is the disk full?", file.string(),
                                fault ? ": " + fault.message() : ""));
}

}  // namespace gapstrain::cases
