// The pictures that a page shows where scripts are off.
#pragma once

#include "cases/answers/solved_state.h"
#include "cases/page/page_file.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// Into `content.pictures`; why some are missing into `content.pictures_missing`. @pre the state was analysed whole
void draw_still_pictures(PageContent& content, const SolvedState& state, const std::vector<std::string>& alarms);

// One picture of the construct under a load, as a lesson's scenes have them; `of` begins its title. Why it is
// missing into `content`. @pre the state was assessed
void draw_scene_picture(PageContent& content, std::vector<StillPicture>& pictures, const SolvedState& state,
                        std::size_t load, const std::string& id, const std::string& of);

}  // namespace gapstrain::cases
