// The pictures that a page shows where scripts are off.
#pragma once

#include "cases/answers/solved_state.h"
#include "cases/page/page_file.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// Into `content.pictures`; why some are missing into `content.pictures_missing`. @pre the state was analysed whole
void draw_still_pictures(PageContent& content, const SolvedState& state, const std::vector<std::string>& alarms);

}  // namespace gapstrain::cases
