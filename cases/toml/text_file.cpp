#include "cases/toml/text_file.h"

#include "cases/toml/problems.h"
#include "cases/toml/toml_limits.h"

#include <fmt/format.h>

#include <fstream>
#include <iterator>

namespace gapstrain::cases {

std::string read_text(const std::filesystem::path& path, const std::string& kind) {
  constexpr std::uintmax_t largest_file = 1 << 20;  // such files are a page or two; keeps out a wrong one
  const auto fail = [&](const std::string& message) { throw CaseError(path.string(), {{Place{}, "", message}}); };
  std::error_code fault;
  if (!std::filesystem::exists(path, fault)) fail("there is no such file");
  if (!std::filesystem::is_regular_file(path, fault))
    fail(fmt::format("this is no ordinary file; a {} file is a TOML text", kind));
  if (std::filesystem::file_size(path, fault) > largest_file)
    fail(fmt::format("this file is larger than 1 MB; a {} file is a TOML text of a page or two", kind));
  std::ifstream stream(path, std::ios::binary);
  std::string text{std::istreambuf_iterator<char>(stream), {}};
  if (!stream) fail("this file cannot be read; check its permissions");
  return text;
}

Table parse_file(const std::string& file, const std::string& text) {
  if (const auto fault = find_limit_fault(text))
    throw CaseError(file, {{fault->place, fault->key, fault->message}});
  try {
    return parse_toml(text);
  } catch (const SyntaxError& error) {
    throw CaseError(file,
                    {{error.place, "",
                      fmt::format("this is no TOML: {}; texts and quantities stand in double quotes, such as "
                                  "gap = \"2.5 mm\"",
                                  error.what())}});
  }
}

}  // namespace gapstrain::cases
