// run.json: which study, and which part of it, a folder holds.
#pragma once

#include "cases/study/parts.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

inline constexpr const char* run_file_name = "run.json";

struct Study {
  std::string command;      // "sweep"
  std::string fingerprint;  // of all that its rows depend on: inputs, options, the program's version
  std::size_t rows = 0;     // of all parts together
  Part part;
  std::vector<std::string> estimated{};  // keys of the case that were not measured
  bool operator==(const Study&) const = default;
};

std::string run_text(const Study& study);

// None if the folder has no such file or gapstrain did not write it.
std::optional<Study> read_run(const std::filesystem::path& folder);

}  // namespace gapstrain::cases
