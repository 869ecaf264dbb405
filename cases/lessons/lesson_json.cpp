#include "cases/lessons/lesson_json.h"

#include "cases/lessons/goal_words.h"
#include "cases/lessons/marked_text.h"

#include <algorithm>

namespace gapstrain::cases {

namespace {

Json state_json(const SceneState& state) {
  return {{"changes", state.page.changes}, {"variant", state.page.variant}};
}

class SceneWriter {
 public:
  SceneWriter(const Lesson& lesson, const std::vector<SolvedScene>& solved, std::size_t number)
      : scene_(&lesson.scenes[number]), solved_(&solved), number_(number) {}

  Json write() const {
    const SolvedScene& solved = (*solved_)[number_];
    Json json{{"title", scene_->title}, {"text", filled(scene_->text)}, {"state", state_json(scene_->own)},
              {"load", scene_->load},   {"head", solved.own["head"]},   {"look", Json::array()},
              {"figures", figures()}};
    for (const auto& part : scene_->parts) json["look"].push_back({{"label", part.label}, {"id", part.id}});
    if (scene_->beside)
      json["beside"] = {{"title", scene_->beside->title},
                        {"state", state_json(scene_->beside->state)},
                        {"head", solved.beside["head"]}};
    if (scene_->question) json["question"] = question();
    if (scene_->answer) json["answer"] = {{"text", filled(scene_->answer->text)}};
    if (scene_->answer && scene_->answer->state) {
      json["answer"]["state"] = state_json(*scene_->answer->state);
      json["answer"]["head"] = solved.answer["head"];
    }
    return json;
  }

 private:
  std::vector<std::string> filled(const std::vector<std::string>& texts) const {
    std::vector<std::string> all;
    for (const auto& text : texts)
      all.push_back(
          fill_marks(text, [&](const std::string& mark) { return *text_of_reference(mark, *solved_, number_); }));
    return all;
  }

  static Json named(const std::string& finding) {
    const FigureReference reference = read_reference(finding);
    Json json{{"name", reference.figure}, {"label", label_of(finding)}};
    if (reference.load) json["load"] = *reference.load;
    return json;
  }

  // Those to look at and those of the goal, each once.
  Json figures() const {
    std::vector<std::string> names = scene_->figures;
    if (scene_->question)
      for (const auto& goal : scene_->question->goals)
        if (std::find(names.begin(), names.end(), goal.finding) == names.end()) names.push_back(goal.finding);
    const SolvedScene& solved = (*solved_)[number_];
    Json all = Json::array();
    for (const auto& name : names) {
      Json json = named(name);
      for (const auto& [key, answer] :
           {std::pair{"own", &solved.own}, {"beside", &solved.beside}, {"answer", &solved.answer}})
        if (const Json* figure = answer->is_null() ? nullptr : find_figure_in(*answer, read_reference(name)))
          json[key] = shown_text(*figure);
      all.push_back(json);
    }
    return all;
  }

  Json question() const {
    const SceneQuestion& question = *scene_->question;
    Json json{{"text", filled(question.text)}};
    if (!question.answers.empty()) {
      json["answers"] = filled(question.answers);
      json["right"] = question.right;
      return json;
    }
    json["goals"] = Json::array();
    for (const auto& goal : question.goals) {
      Json one = named(goal.finding);
      if (goal.least) one["least"] = *goal.least;
      if (goal.most) one["most"] = *goal.most;
      one["words"] = bounds_as_read(goal);
      json["goals"].push_back(one);
    }
    return json;
  }

  const Scene* scene_;
  const std::vector<SolvedScene>* solved_;
  std::size_t number_;
};

}  // namespace

Json lesson_json(const Lesson& lesson, const std::vector<SolvedScene>& solved) {
  Json json{{"name", lesson.name}, {"text", lesson.text}, {"scenes", Json::array()}};
  for (std::size_t k = 0; k < lesson.scenes.size(); ++k)
    json["scenes"].push_back(SceneWriter(lesson, solved, k).write());
  return json;
}

}  // namespace gapstrain::cases
