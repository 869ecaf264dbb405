// The case that a study or a lesson names.
#pragma once

#include "cases/reader/read_case.h"
#include "cases/toml/section.h"

#include <filesystem>
#include <optional>

namespace gapstrain::cases {

struct NamedCase {
  std::filesystem::path path;
  CaseFile file;
  Table tree;  // of the whole case
};

// Under the key `case`, seen from `folder`. Its faults are reported there, with their own places; nothing then.
std::optional<NamedCase> read_named_case(const Section& section, const std::filesystem::path& folder);

}  // namespace gapstrain::cases
