#include "cases/files/output_target.h"

#include <fmt/format.h>
#include <unistd.h>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

void refuse_unwritable_parent(const fs::path& target) {
  fs::path parent = target.parent_path();
  while (!parent.empty() && !fs::exists(parent) && parent != parent.parent_path()) parent = parent.parent_path();
  if (!fs::is_directory(parent))
    throw OutputError(
        fmt::format("the folder {} cannot be made because {} is not a folder; choose another with --out",
                    target.string(), parent.string()));
  if (access(parent.c_str(), W_OK | X_OK) != 0)
    throw OutputError(
        fmt::format("the folder {} cannot be made because {} is not writable; choose another with --out",
                    target.string(), parent.string()));
}

}  // namespace

fs::path usable_target(const fs::path& target) try {
  if (target.empty()) throw OutputError("--out needs the name of a folder");
  fs::path usable = fs::absolute(target).lexically_normal();
  if (!usable.has_filename()) usable = usable.parent_path();  // a slash at the end
  if (usable == usable.root_path())
    throw OutputError("the root folder cannot be the output folder; choose another with --out");
  refuse_unwritable_parent(usable);
  if (fs::is_symlink(usable) || (fs::exists(usable) && !fs::is_directory(usable)))
    throw OutputError(fmt::format("{} is not a folder; choose another with --out", usable.string()));
  return usable;
} catch (const fs::filesystem_error& error) {
  throw OutputError(fmt::format("the folder {} cannot be used: {}; choose another with --out", target.string(),
                                error.code().message()));
}

}  // namespace gapstrain::cases
