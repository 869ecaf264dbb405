// A lesson as it is read where scripts are off: every scene with its picture, figures, question and answer.
#pragma once

#include "cases/files/json_value.h"
#include "cases/page/page_file.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// `lesson`: as lesson_json.h; pictures have the ids that `scene_picture_id` gives. HTML.
std::string still_scenes(const Json& lesson, const std::vector<StillPicture>& pictures);

std::string scene_picture_id(std::size_t scene, const char* part);

}  // namespace gapstrain::cases
