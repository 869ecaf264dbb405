// Limits that were passed, in plain sentences.
#pragma once

#include "models/findings/findings.h"

#include <string>
#include <vector>

namespace gapstrain::models {

std::string limit_sentence(const PassedLimit& limit);
std::vector<std::string> limit_sentences(const std::vector<PassedLimit>& limits);

}  // namespace gapstrain::models
