#include "cases/outputs/sentences/result_head.h"

#include "cases/outputs/sentences/state_lines.h"
#include "cases/text/columns.h"
#include "cases/version.h"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <ctime>

namespace gapstrain::cases {

std::string result_head(const models::ResultState& state, const std::string& construct, const CaseOrigin& origin,
                        std::size_t width) {
  std::string text = state_head(state, width);
  const std::string made = fmt::format("Case file: {}. {}{}.", origin.file, program_and_version(),
                                       origin.date.empty() ? "" : ", " + origin.date);
  for (const auto& said : {construct, made})
    for (const auto& line : wrap(said, width, 2)) text += line + "\n";
  return text + "\n";
}

std::string today() { return fmt::format("{:%Y-%m-%d}", fmt::localtime(std::time(nullptr))); }

}  // namespace gapstrain::cases
