#include "cases/commands/stages.h"

#include <fmt/format.h>
#include <unistd.h>

#include <chrono>

namespace gapstrain::cases {

models::Progress tell_stages(bool quiet) {
  if (quiet || isatty(STDERR_FILENO) == 0) return {};
  return [start = std::chrono::steady_clock::now()](const std::string& stage) {
    const std::chrono::duration<double> passed = std::chrono::steady_clock::now() - start;
    fmt::print(stderr, "{:6.1f} s  {}\n", passed.count(), stage);
  };
}

}  // namespace gapstrain::cases
