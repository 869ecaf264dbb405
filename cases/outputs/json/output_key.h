// Keys of findings.json, of an analysis and of a comparison: what each means, written into the file itself.
#pragma once

#include "cases/files/json_value.h"

#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

struct OutputKey {
  std::string path;  // "loads[].gap.largest_motion_mm"
  std::string meaning;
  std::string figure{};  // the catalogue's name of it, as rows.csv, limits and rankings have it; empty: no figure

  // Of its number, as the path ends: "mm"; empty for ratios, counts and texts.
  std::string unit() const;
};
using OutputKeys = std::vector<OutputKey>;

// A key that is a figure of the catalogue, whose unit and meaning are the catalogue's. `stem`: its path without
// the unit; `more`: what this file adds, such as when it is left out. @throw std::out_of_range for an unknown
// figure
OutputKey figure_key(const std::string& stem, std::string_view figure, const std::string& more = "");

// Adds keys below a prefix: "loads[].", "constructs[].state."
void append(OutputKeys& keys, const std::string& prefix, const OutputKeys& more);

// By path: meaning, unit and figure, the last two where there are some.
Json keys_json(const OutputKeys& keys);

}  // namespace gapstrain::cases
