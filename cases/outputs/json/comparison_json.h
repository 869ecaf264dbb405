// The findings.json of a comparison: the constructs, their figures side by side, the races, the verdict.
#pragma once

#include "cases/outputs/sentences/comparison_report.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

std::string comparison_json(const std::vector<ComparedCase>& cases, const models::Comparison& comparison,
                            const models::Preference& preference, const std::vector<std::string>& files);

}  // namespace gapstrain::cases
