#include "cases/study/rows_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <system_error>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

// As much as there is from `offset` on, up to the buffer's size; errno says why it is less than nothing.
ssize_t read_at(int file, std::string& buffer, std::size_t offset) {
  ssize_t got = 0;
  do got = pread(file, buffer.data(), buffer.size(), static_cast<off_t>(offset));
  while (got < 0 && errno == EINTR);
  return got;
}

}  // namespace

RowsFile::RowsFile(const fs::path& path, const std::string& heading) : path_(path) {
  file_ = open(path_.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
  if (file_ < 0) fail("cannot be opened", errno);
  try {
    lock();
    open_whole_lines(heading + '\n');
  } catch (...) {
    close(file_);
    throw;
  }
}

RowsFile::~RowsFile() { close(file_); }

void RowsFile::lock() {
  const bool locked = flock(file_, LOCK_EX | LOCK_NB) == 0;
  if (!locked && errno != EWOULDBLOCK) fail("cannot be locked", errno);
  struct stat opened = {};
  struct stat named = {};
  // Between opening and locking, the run that held it may have given it its final name.
  const bool same = fstat(file_, &opened) == 0 && stat(path_.c_str(), &named) == 0 &&
                    opened.st_ino == named.st_ino && opened.st_dev == named.st_dev;
  if (!locked || !same)
    throw OutputError(
        fmt::format("{} is being written by another run; wait for it, or choose another --out", path_.string()));
}

void RowsFile::open_whole_lines(const std::string& heading) {
  std::string buffer(std::max<std::size_t>(heading.size(), 1 << 20), '\0');
  const ssize_t got = read_at(file_, buffer, 0);
  if (got < 0) fail("cannot be read", errno);
  const std::size_t common = std::min(static_cast<std::size_t>(got), heading.size());
  if (buffer.compare(0, common, heading, 0, common) != 0)
    throw OutputError(fmt::format(
        "{} holds rows under another heading; choose another --out, or remove its folder", path_.string()));
  if (common < heading.size()) {
    cut(0);
    append(heading, 0);
    return;
  }
  size_ = heading.size();
  std::size_t read = size_;
  for (bool end = false; !end;) {
    const ssize_t more = read_at(file_, buffer, read);
    if (more < 0) fail("cannot be read", errno);
    const std::string_view text(buffer.data(), static_cast<std::size_t>(more));
    const std::string_view sound = text.substr(0, text.find('\0'));
    rows_ += static_cast<std::size_t>(std::count(sound.begin(), sound.end(), '\n'));
    if (const auto last = sound.rfind('\n'); last != std::string_view::npos) size_ = read + last + 1;
    read += text.size();
    end = more == 0 || sound.size() < text.size();
  }
  if (read > size_) cut(size_);
}

void RowsFile::append(std::string_view whole_lines, std::size_t rows) {
  std::size_t written = 0;
  while (written < whole_lines.size()) {
    const ssize_t more = pwrite(file_, whole_lines.data() + written, whole_lines.size() - written,
                                static_cast<off_t>(size_ + written));
    if (more < 0 && errno == EINTR) continue;
    if (more <= 0) {
      const int reason = more < 0 ? errno : ENOSPC;
      cut(size_);
      fail("cannot be written", reason);
    }
    written += static_cast<std::size_t>(more);
  }
  size_ += whole_lines.size();
  rows_ += rows;
}

void RowsFile::finish(const fs::path& final_name) {
  if (fsync(file_) != 0) fail("cannot be written", errno);
  if (rename(path_.c_str(), final_name.c_str()) != 0) fail("cannot be renamed", errno);
  path_ = final_name;
}

void RowsFile::cut(std::size_t size) {
  if (ftruncate(file_, static_cast<off_t>(size)) != 0) fail("cannot be cut back to its last whole line", errno);
}

void RowsFile::fail(const char* what, int reason) const {
  const bool room = reason == ENOSPC || reason == EDQUOT || reason == EFBIG;
  throw OutputError(fmt::format("{} {}: {}{}", path_.string(), what, std::generic_category().message(reason),
                                room ? "; is there room on the disk? Its rows are whole: started again, the run "
                                       "goes on from them"
                                     : ""));
}

}  // namespace gapstrain::cases
