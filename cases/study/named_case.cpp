#include "cases/study/named_case.h"

#include "cases/reader/base_case.h"
#include "cases/toml/text_file.h"

#include <fmt/format.h>

namespace gapstrain::cases {

std::optional<NamedCase> read_named_case(const Section& section, const std::filesystem::path& folder) {
  const auto named = section.text("case");
  if (!named) return std::nullopt;
  const std::filesystem::path path = (folder / *named).lexically_normal();
  try {
    const WholeCase whole = whole_case(path.string(), read_text(path, "case"));
    return NamedCase{path, read_case_tree(path.string(), whole.text, whole.tree), whole.tree};
  } catch (const CaseError& error) {
    for (const auto& problem : error.problems) {
      const std::string line = format_problems(path.string(), {problem});
      section.complain("case", fmt::format("in the case file: {}", line.substr(0, line.size() - 1)));
    }
    return std::nullopt;
  }
}

}  // namespace gapstrain::cases
