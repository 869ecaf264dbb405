// What a study asks of its rows' findings: bounds to keep, curves to draw.
#pragma once

#include "cases/toml/section.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

// A column that a row's analysis fills.
struct StudyFinding {
  std::string name;
  std::string unit;  // "MPa"; empty for counts and ratios
};

// Bounds in the finding's unit; at least one of them.
struct Limit {
  std::string finding;
  std::string unit;
  std::optional<double> least, most;
};

struct Chart {
  std::string x;                      // a variable's name or a finding
  std::vector<std::string> y;         // findings, one panel each
  std::optional<std::string> series;  // a variable's name
};

// All [[limit]] of a section; those with a fault are reported.
std::vector<Limit> read_limits(const Section& parent, const std::vector<StudyFinding>& findings);

// Likewise [[chart]]; their names are held against all [[vary]], also those that have a fault.
std::vector<Chart> read_charts(const std::vector<Section>& sections, const std::vector<Section>& varies,
                               const std::vector<StudyFinding>& findings);

}  // namespace gapstrain::cases
