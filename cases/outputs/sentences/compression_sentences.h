// What the steps did, in sentences for the summary.
#pragma once

#include "models/findings/findings.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// What the better order gives; none when the order does no harm.
std::vector<std::string> order_sentences(const models::Findings& findings);

// Force across the fracture step by step, what each load leaves of it, and the prebend that spreads its pressure
// evenly enough; none when nothing presses. Steps are left out of the middle until the first takes `most_columns`.
std::vector<std::string> compression_sentences(const models::Findings& findings, std::size_t most_columns);

}  // namespace gapstrain::cases
