// A lesson's page: bodies, scenes solved once, pictures.
#pragma once

#include "cases/lessons/lesson_file.h"
#include "cases/page/page_file.h"
#include "cases/progress/time_left.h"
#include "models/measures/analyse.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

struct LessonPage {
  PageContent content;
  std::vector<std::string> doubts;  // what a scene's state fails, or why it is not to be trusted: sentences
};

std::vector<Stage> lesson_plan(const Lesson& lesson, bool with_pictures);

// `date`: of the run. @throw CaseError for what texts, limits and goals say and the solved scenes do not bear out;
// models::ModelError, what models::prepare_bodies throws
LessonPage make_lesson(const Lesson& lesson, bool with_pictures, const std::string& date,
                       const models::Progress& progress);

}  // namespace gapstrain::cases
