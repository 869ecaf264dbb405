// A drafted case as a commented TOML text: what was measured, what was estimated, what rule chose each part.
#pragma once

#include "cases/new_case/new_request.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

std::string new_case_text(const NewRequest& request, const models::Draft& draft);

// The same with what its analysis found at the top, paragraphs.
std::string new_case_text(const NewRequest& request, const models::Draft& draft,
                          const std::vector<std::string>& found);

}  // namespace gapstrain::cases
