// Preloaded into the program (LD_PRELOAD): of rows.csv.part no byte from the HOLD_ROWS_ATth on is written before
// the file HOLD_ROWS_UNTIL is there. So a test can end a study within its rows, or within one of them, however
// fast or slow the machine is.
#include <sys/syscall.h>
#include <sys/types.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string_view>

namespace {

bool is_rows_under_way(int file) {
  std::array<char, 4096> path{};
  const std::string_view prefix = "/proc/self/fd/";
  std::array<char, 32> link{};
  auto* end = std::copy(prefix.begin(), prefix.end(), link.begin());
  for (int unit = 1'000'000; unit > 0; unit /= 10)
    if (file >= unit || unit == 1) *end++ = static_cast<char>('0' + file / unit % 10);
  const ssize_t length = readlink(link.data(), path.data(), path.size());
  return length > 0 && std::string_view(path.data(), static_cast<std::size_t>(length)).ends_with("/rows.csv.part");
}

}  // namespace

extern "C" __attribute__((visibility("default"))) ssize_t pwrite(int file, const void* bytes, std::size_t count,
                                                                 off_t offset) {
  static const char* const at = std::getenv("HOLD_ROWS_AT");
  static const char* const until = std::getenv("HOLD_ROWS_UNTIL");
  if (at != nullptr && until != nullptr && is_rows_under_way(file) && access(until, F_OK) != 0) {
    const off_t held = std::atoll(at);
    if (offset < held)
      count = std::min(count, static_cast<std::size_t>(held - offset));
    else
      while (access(until, F_OK) != 0) usleep(1'000);
  }
  return syscall(SYS_pwrite64, file, bytes, count, offset);
}
