#include "cases/lessons/make_lesson.h"

#include "cases/lessons/lesson_json.h"
#include "cases/lessons/solved_lesson.h"
#include "cases/lessons/still_scenes.h"
#include "cases/page/make_page.h"
#include "cases/page/still_pictures.h"
#include "cases/progress/analysis_plan.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

constexpr double seconds_a_state = 1.0;  // an estimate, as in analysis_plan.h

void add_doubts(std::vector<std::string>& doubts, const Json& answer, const std::string& name) {
  if (answer.is_null()) return;
  for (const auto& line : answer["head"])
    if (line["kind"] == "not_trusted" || line["kind"] == "fails")
      doubts.push_back(fmt::format("{}: {}", name, line["text"].get<std::string>()));
}

bool is_doubtful(const Json& answer) {
  if (answer.is_null()) return false;
  const Json& head = answer["head"];
  return std::any_of(head.begin(), head.end(), [](const Json& line) { return line["kind"] == "not_trusted"; });
}

}  // namespace

std::vector<Stage> lesson_plan(const Lesson& lesson, bool with_pictures) {
  return page_plan(lesson.page, with_pictures) +
         std::vector<Stage>{{"solving scenes", seconds_a_state * 2.0 * static_cast<double>(lesson.scenes.size())}};
}

LessonPage make_lesson(const Lesson& lesson, bool with_pictures, const std::string& date,
                       const models::Progress& progress) {
  LessonPage page;
  PageContent& content = page.content;
  content = make_page(lesson.page, false, date, progress);
  content.title = lesson.name;

  PageSession session(content.pack);
  std::vector<StillPicture> pictures;
  const auto solved =
      solve_scenes(lesson, session, progress, [&](std::size_t k, ScenePart part, const SolvedState& state) {
        if (!with_pictures || content.pictures_missing || part == ScenePart::answer) return;
        const bool is_own = part == ScenePart::own;
        // Beside it the same load is seen, where there is one.
        const std::size_t load = std::min(lesson.scenes[k].load, state.construct().loads.size() - 1);
        draw_scene_picture(content, pictures, state, load, scene_picture_id(k, is_own ? "own" : "beside"),
                           fmt::format("Scene {}{}", k + 1, is_own ? "" : ", beside it"));
      });
  const auto faults = faults_of_solved(lesson, solved);
  if (!faults.empty()) throw CaseError(lesson.file, faults);

  for (std::size_t k = 0; k < solved.size(); ++k) {
    const std::string name = fmt::format("scene {}", k + 1);
    add_doubts(page.doubts, solved[k].own, name);
    add_doubts(page.doubts, solved[k].beside, name + ", beside it");
    add_doubts(page.doubts, solved[k].answer, name + ", its answer");
    for (const Json* answer : {&solved[k].own, &solved[k].beside, &solved[k].answer})
      if (is_doubtful(*answer)) content.is_trusted = false;
  }
  const Json json = lesson_json(lesson, solved);
  content.lesson = json.dump(-1, ' ', false, Json::error_handler_t::replace);
  content.scenes = still_scenes(json, pictures);
  return page;
}

}  // namespace gapstrain::cases
