#include "cases/lessons/solved_lesson.h"

#include "cases/lessons/goal_words.h"
#include "cases/lessons/marked_text.h"
#include "cases/text/digits.h"
#include "models/findings/model_error.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace gapstrain::cases {

namespace {

// "scene 2", "scene 2, beside".
std::string name_of(std::size_t scene, ScenePart part) {
  return fmt::format("scene {}{}", scene + 1,
                     part == ScenePart::own      ? ""
                     : part == ScenePart::beside ? ", beside it"
                                                 : ", its answer");
}

[[noreturn]] void fail(const Lesson& lesson, const SceneState& state, const std::string& name, const Json& error) {
  const std::string text = error["text"];
  if (error["kind"] == "model") throw models::ModelError(fmt::format("{}: {}", name, text));
  const std::string mend = error["kind"] == "not_prepared"
                               ? "; what needs other bodies is a [[variant]] with what differs, and the scene "
                                 "names it: variant = \"...\""
                               : "";
  throw CaseError(lesson.file, {{lesson.places.find(state.path).place, state.path, text + mend, false}});
}

bool keeps(double value, const Limit& limit) {
  return (!limit.least || value >= *limit.least) && (!limit.most || value <= *limit.most);
}

class Faults {
 public:
  Faults(const Lesson& lesson, const std::vector<SolvedScene>& solved) : lesson_(&lesson), solved_(&solved) {}

  std::vector<CaseProblem> all() {
    for (std::size_t k = 0; k < lesson_->scenes.size(); ++k) {
      const Scene& scene = lesson_->scenes[k];
      claims(scene, k);
      marks(fmt::format("scene[{}].text", k), scene.text, k);
      for (const auto& figure : scene.figures)
        if (!value_of(figure, *solved_, k))
          complain(fmt::format("scene[{}].look_at", k), fmt::format("this state has no \"{}\"", figure));
      if (!scene.question) continue;
      marks(fmt::format("scene[{}].question.text", k), scene.question->text, k);
      marks(fmt::format("scene[{}].question.answers", k), scene.question->answers, k);
      marks(fmt::format("scene[{}].answer.text", k), scene.answer->text, k);
      if (!scene.question->goals.empty()) goals(scene, k);
    }
    return std::move(problems_);
  }

 private:
  void complain(const std::string& key, const std::string& message) {
    problems_.push_back({lesson_->places.find(key).place, key, message, false});
  }

  void claims(const Scene& scene, std::size_t k) {
    for (std::size_t l = 0; l < scene.limits.size(); ++l) {
      const Limit& limit = scene.limits[l];
      const auto value = value_of(limit.finding, *solved_, k);
      const std::string path = fmt::format("scene[{}].limit[{}]", k, l);
      if (!value)
        complain(path, fmt::format("the solved state has no {}", limit.finding));
      else if (!keeps(*value, limit))
        complain(path,
                 fmt::format(
                     "{} is {:.4g}{}{} once solved, and {} is said; mend the text and the limit, or the state",
                     limit.finding, *value, limit.unit.empty() ? "" : " ", limit.unit, bounds_as_entered(limit)));
    }
  }

  void marks(const std::string& path, const std::vector<std::string>& texts, std::size_t k) {
    for (std::size_t t = 0; t < texts.size(); ++t)
      for (const auto& mark : marks_of(texts[t]))
        if (!text_of_reference(mark, *solved_, k))
          complain(fmt::format("{}[{}]", path, t),
                   fmt::format("{{{}}}: {}", mark,
                               value_of(mark, *solved_, k) ? "this change is none that a share tells"
                                                           : "the solved state has no such figure"));
  }

  // A goal that is reached before anybody has tried, or that the lesson's own answer misses, teaches nothing.
  void goals(const Scene& scene, std::size_t k) {
    const auto reached = [&](const Json& answer) {
      return std::all_of(scene.question->goals.begin(), scene.question->goals.end(), [&](const Limit& goal) {
        const Json* figure = find_figure_in(answer, read_reference(goal.finding));
        return figure != nullptr && keeps((*figure)["value"], goal);
      });
    };
    const std::string path = fmt::format("scene[{}].question.limit", k);
    if (reached((*solved_)[k].own)) complain(path, "the scene's own state reaches this goal already");
    if (scene.answer->state && !reached((*solved_)[k].answer))
      complain(path, fmt::format("the state of the answer does not reach this goal: {}",
                                 goals_as_found(scene.question->goals, (*solved_)[k].answer)));
  }

  const Lesson* lesson_;
  const std::vector<SolvedScene>* solved_;
  std::vector<CaseProblem> problems_;
};

}  // namespace

std::vector<SolvedScene> solve_scenes(const Lesson& lesson, PageSession& session, const models::Progress& progress,
                                      const WithSolved& with_solved) {
  std::vector<SolvedScene> solved(lesson.scenes.size());
  for (std::size_t k = 0; k < solved.size(); ++k) {
    const auto solve = [&](const SceneState& state, ScenePart part) {
      const std::string name = name_of(k, part);
      if (progress) progress(fmt::format("solving scenes: {}", name));
      const Json request{{"changes", state.page.changes}, {"variant", state.page.variant}, {"detail", "verdict"}};
      const Answer answer = session.ask(request.dump());
      Json found = Json::parse(answer.text);
      if (answer.is_fault) fail(lesson, state, name, found["error"]);
      with_solved(k, part, session.last());
      return found;
    };
    const Scene& scene = lesson.scenes[k];
    solved[k].own = solve(scene.own, ScenePart::own);
    if (scene.beside) solved[k].beside = solve(scene.beside->state, ScenePart::beside);
    if (scene.answer && scene.answer->state) solved[k].answer = solve(*scene.answer->state, ScenePart::answer);
  }
  return solved;
}

const Json* find_answer(const std::vector<SolvedScene>& solved, std::size_t scene,
                        const StateReference& reference) {
  const std::size_t number = reference.scene ? static_cast<std::size_t>(*reference.scene) - 1 : scene;
  if (number >= solved.size()) return nullptr;
  const SolvedScene& chosen = solved[number];
  const Json& answer = reference.part == ScenePart::own      ? chosen.own
                       : reference.part == ScenePart::beside ? chosen.beside
                                                             : chosen.answer;
  return answer.is_null() ? nullptr : &answer;
}

const Json* find_figure_in(const Json& answer, const FigureReference& reference) {
  for (const auto& figure : answer["figures"])
    if (figure["name"] == reference.figure && figure.contains("load") == reference.load.has_value() &&
        (!reference.load || figure["load"] == *reference.load))
      return &figure;
  return nullptr;
}

namespace {

const Json* figure_of(const FigureReference& reference, const StateReference& state,
                      const std::vector<SolvedScene>& solved, std::size_t scene) {
  const Json* answer = find_answer(solved, scene, state);
  return answer == nullptr ? nullptr : find_figure_in(*answer, reference);
}

}  // namespace

std::optional<double> value_of(const std::string& text, const std::vector<SolvedScene>& solved,
                               std::size_t scene) {
  const FigureReference reference = read_reference(text);
  const Json* figure = figure_of(reference, reference.of.value_or(StateReference{}), solved, scene);
  if (figure == nullptr) return std::nullopt;
  const double value = (*figure)["value"];
  if (!reference.over) return value;
  const Json* other = figure_of(reference, *reference.over, solved, scene);
  if (other == nullptr) return std::nullopt;
  return value / (*other)["value"].get<double>();
}

std::optional<std::string> text_of_reference(const std::string& text, const std::vector<SolvedScene>& solved,
                                             std::size_t scene) {
  const auto value = value_of(text, solved, scene);
  if (!value) return std::nullopt;
  const FigureReference reference = read_reference(text);
  if (reference.over) {
    if (!(*value > 0.0) || *value > most_times) return std::nullopt;
    return fmt::format("{} %", two_digits_signed(100.0 * (*value - 1.0)));
  }
  return shown_text(*figure_of(reference, reference.of.value_or(StateReference{}), solved, scene));
}

std::vector<CaseProblem> faults_of_solved(const Lesson& lesson, const std::vector<SolvedScene>& solved) {
  return Faults(lesson, solved).all();
}

}  // namespace gapstrain::cases
