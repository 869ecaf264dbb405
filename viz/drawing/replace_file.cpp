#include "viz/drawing/replace_file.h"

#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <fstream>
#include <system_error>

namespace gapstrain::viz {

void replace_file(const std::filesystem::path& path, std::string_view contents) {
  const std::filesystem::path beside = path.string() + fmt::format(".{}.part", ::getpid());
  errno = 0;
  std::ofstream file(beside, std::ios::binary | std::ios::trunc);
  file.write(contents.data(), static_cast<std::streamsize>(contents.size()));
  file.close();
  if (!file) {
    const std::error_code reason(errno == 0 ? EIO : errno, std::generic_category());
    std::error_code ignored;
    std::filesystem::remove(beside, ignored);
    throw std::filesystem::filesystem_error("cannot write the file", path, reason);
  }
  try {
    std::filesystem::rename(beside, path);
  } catch (const std::filesystem::filesystem_error&) {
    std::error_code ignored;
    std::filesystem::remove(beside, ignored);
    throw;
  }
}

}  // namespace gapstrain::viz
