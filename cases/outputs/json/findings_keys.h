// The meaning of every key of findings.json, written into the file itself and printed by `gapstrain keys
// --findings`.
#pragma once

#include <string>
#include <vector>

namespace gapstrain::cases {

struct FindingsKey {
  std::string path;  // "loads[].gap.largest_motion_mm"
  std::string meaning;
};

// In the order of the file.
std::vector<FindingsKey> findings_keys();

std::string describe_findings_keys();

}  // namespace gapstrain::cases
